using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.Schema;

/// <summary>
/// The schema and the loader agree on each single slip: every place of the examples in data/README.md, which use every key of the
/// format, is spoilt in several ways, and both have to say the same. Only what one file cannot tell is the loader's alone.
/// </summary>
public sealed partial class Schema_and_loader_on_a_spoilt_collection
{
    private static readonly string[] StructuralCodes = ["FM101", "FM102", "FM105", "FM106", "FM107", "FM109", "FM110"];

    /// <summary>Exclusions (FM111) that one map shows by itself.</summary>
    private static readonly string[] StructuralExclusions =
        ["'memory' is one pool", "a price is either", "a need names one feature", "'when' names a"];

    /// <summary>Faults with a structural code that yet need what stands elsewhere.</summary>
    private static readonly string[] LoadersAlone = ["needs the key 'renderer'", "needs the key 'engine'", "needs the key 'baseline'"];

    private static readonly string Document = File.ReadAllText(Repository.PathTo("data", "README.md")).ReplaceLineEndings("\n");

    /// <summary>The words of the vocabulary that the examples use; the rest would only cost time.</summary>
    private static readonly SourceText Vocabulary = UsedVocabulary();

    [Fact]
    public void Agree()
    {
        var whole = Whole();
        Assert.Equal("", Faults(whole));
        Assert.True(SchemaFile.Accepts(whole));
        var seen = new HashSet<string>();
        var disagreements = new List<string>();
        var (count, refused) = (0, 0);
        foreach (var (where, spoil) in Places(whole, "", root => root).Where(place => seen.Add(place.Where)).ToList())
        {
            var spoilt = whole.DeepClone().AsObject();
            spoil(spoilt);
            var faults = Faults(spoilt);
            var accepted = SchemaFile.Accepts(SectionOf(where, spoilt));
            (count, refused) = (count + 1, refused + (accepted ? 0 : 1));
            if (accepted != (faults.Length == 0))
                disagreements.Add($"{where}: schema {(accepted ? "accepts" : "refuses")}, loader: {faults}");
        }

        if (disagreements.Count > 0)
            Assert.Fail($"{disagreements.Count} disagreements:\n{string.Join('\n', disagreements)}");
        Assert.True(count > 900 && refused > 600, $"{count} places, {refused} refused");
    }

    /// <summary>The one section that was spoilt: the schema looks at each by itself.</summary>
    private static JsonObject SectionOf(string where, JsonObject spoilt)
    {
        var section = where.Split('/', ':') is [_, var name, ..] ? name : "";
        return spoilt.ContainsKey(section) ? new JsonObject { [section] = spoilt[section]?.DeepClone() } : spoilt;
    }

    /// <summary>All examples as one tree in which every scalar is a text.</summary>
    private static JsonObject Whole()
    {
        var whole = new JsonObject();
        foreach (Match match in YamlBlock().Matches(Document))
        {
            foreach (var (section, value) in SchemaFile.Read(match.Groups["yaml"].Value)!.AsObject())
                whole[section] = Texts(value);
        }

        return whole;
    }

    private static SourceText UsedVocabulary()
    {
        var used = new JsonObject();
        foreach (var file in SchemaFile.VocabularyFiles)
        {
            foreach (var (section, entries) in SchemaFile.Read(file.Text)!.AsObject())
            {
                if (!used.ContainsKey(section))
                    used[section] = new JsonObject();
                foreach (var (id, value) in entries!.AsObject().Where(entry => section == "sources" || Document.Contains(entry.Key, StringComparison.Ordinal)))
                    used[section]![id] = Texts(value);
            }
        }

        return new SourceText("vocabulary.yaml", used.ToJsonString());
    }

    private static JsonNode? Texts(JsonNode? node) => node switch
    {
        JsonObject map => new JsonObject(map.Select(pair => KeyValuePair.Create(pair.Key, Texts(pair.Value)))),
        JsonArray list => new JsonArray([.. list.Select(Texts)]),
        null => null,
        _ => node.ToString(),
    };

    /// <summary>Every place with what is done to it. Places that differ in ids and positions only count once.</summary>
    private static IEnumerable<(string Where, Action<JsonObject> Spoil)> Places(JsonNode? node, string path, Func<JsonNode, JsonNode> find)
    {
        if (node is JsonObject map)
        {
            yield return ($"{path}: a key nobody knows", root => find(root).AsObject()["Zzz Qqq"] = "x");
            foreach (var (key, value) in map)
            {
                var name = path.Count(c => c == '/') == 1 || path.EndsWith("renderers", StringComparison.Ordinal) ? "*" : key;
                var here = $"{path}/{name}";
                yield return ($"{here}: missing", root => find(root).AsObject().Remove(key));
                yield return ($"{here}: empty", root => find(root).AsObject()[key] = null);
                yield return ($"{here}: a list of lists", root => find(root).AsObject()[key] = new JsonArray(new JsonArray("x")));
                yield return ($"{here}: a map", root => find(root).AsObject()[key] = new JsonObject { ["Zzz Qqq"] = "x" });
                yield return ($"{here}: a word", root => find(root).AsObject()[key] = "Zzz qqq");
                foreach (var inner in Places(value, here, root => find(root)[key]!))
                    yield return inner;
            }
        }
        else if (node is JsonArray list)
        {
            for (var i = 0; i < list.Count; i++)
            {
                var at = i;
                foreach (var inner in Places(list[i], path + "/[]", root => find(root)[at]!))
                    yield return inner;
            }
        }
    }

    private static bool IsStructural(Fault fault) =>
        (StructuralCodes.Contains(fault.Code) && !Holds(LoadersAlone, fault) && !IsOsFromElsewhere(fault)) || (fault.Code == "FM111" && Holds(StructuralExclusions, fault));

    /// <summary>A renderer may have its systems from the title, a version of a driver from its branch; a capture has its own.</summary>
    private static bool IsOsFromElsewhere(Fault fault) =>
        !fault.Message.StartsWith("capture ", StringComparison.Ordinal) && fault.Message.EndsWith("needs the key 'os'", StringComparison.Ordinal);

    private static bool Holds(string[] texts, Fault fault) => texts.Any(text => fault.Message.Contains(text, StringComparison.Ordinal));

    private static string Faults(JsonObject whole)
    {
        var result = CollectionLoader.Load([Vocabulary, new SourceText("whole.yaml", whole.ToJsonString())]);
        return string.Join('\n', result.Faults
            .Where(fault => fault.Severity == Severity.Error && IsStructural(fault))
            .Select(fault => fault.Code + " " + fault.Message));
    }

    [GeneratedRegex("```yaml\n(?<yaml>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex YamlBlock();
}
