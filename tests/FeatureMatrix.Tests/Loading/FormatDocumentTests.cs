using System.Text.Json;
using System.Text.RegularExpressions;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Loading.Schema;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>data/README.md says what the loader does.</summary>
public sealed partial class The_documentation_of_the_format
{
    private static readonly string Document = File.ReadAllText(Repository.PathTo("data", "README.md")).ReplaceLineEndings("\n");

    [Fact]
    public void Holds_examples_that_load_together_without_a_fault()
    {
        var examples = YamlBlock().Matches(Document).Select((match, i) => new SourceText($"example{i + 1:00}.yaml", match.Groups["yaml"].Value)).ToList();
        var vocabulary = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null);

        var log = new SourceText("runs/example.csv", CsvBlock().Match(Document).Groups["csv"].Value);

        var result = CollectionLoader.Load([.. vocabulary.Files, .. examples, log]);

        Assert.True(examples.Count > 10);
        Assert.Equal("", string.Join('\n', result.Faults));
        Assert.Equal("The Brackwater bench", result.Catalog!.Name);
        Assert.Equal([41.7, 19.3], result.Catalog.Runs.Select(run => run.Fps!.Value));
    }

    [Fact]
    public void Lists_every_fault_code_and_no_other()
    {
        var source = string.Concat(Directory.GetFiles(Repository.PathTo("src", "FeatureMatrix", "Loading", "Faults"), "FaultTexts*.cs").Select(File.ReadAllText));
        var given = Code().Matches(source).Select(match => match.Value).Distinct().Order(StringComparer.Ordinal);
        var listed = CodeRow().Matches(Document).Select(match => match.Groups["code"].Value);

        Assert.Equal(given, listed);
    }

    [Fact]
    public void Names_every_key_of_the_schema()
    {
        var silent = Keys().Where(key => !Regex.IsMatch(Document, $"(?<![a-z0-9-]){Regex.Escape(key)}(?![a-z0-9-])", RegexOptions.None, TimeSpan.FromSeconds(1)));

        Assert.Equal([], silent);
    }

    [Fact]
    public void Names_no_key_that_the_schema_lacks()
    {
        var known = Keys().Concat(SchemaFile.Vocabulary.Features.Select(feature => feature.Id)).ToHashSet();
        var named = new List<string>();
        var isKeys = false;
        foreach (var line in Document.Split('\n'))
        {
            isKeys = line.StartsWith('|') && (isKeys || line.StartsWith("| key", StringComparison.Ordinal));
            if (isKeys)
                named.AddRange(Quoted().Matches(line.Split(" | ")[0]).SelectMany(match => match.Groups["word"].Value.Split(": ")));
        }

        Assert.True(named.Count > 100);
        Assert.Equal([], named.Where(key => !known.Contains(key)));
    }

    /// <summary>Every key that the schema explains, without the names of the vocabulary.</summary>
    private static IReadOnlySet<string> Keys()
    {
        var keys = new SortedSet<string>(StringComparer.Ordinal);
        Walk(JsonDocument.Parse(SchemaFile.Text).RootElement);
        keys.ExceptWith(SchemaFile.Vocabulary.Features.Select(feature => feature.Id));
        return keys;

        void Walk(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray())
                    Walk(item);
            }

            if (element.ValueKind != JsonValueKind.Object)
                return;
            if (element.TryGetProperty("properties", out var properties) && element.TryGetProperty("additionalProperties", out _))
                keys.UnionWith(properties.EnumerateObject().Select(key => key.Name));
            foreach (var member in element.EnumerateObject())
                Walk(member.Value);
        }
    }

    [GeneratedRegex("`(?<word>[^`]+)`", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Quoted();

    [GeneratedRegex("```yaml\n(?<yaml>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex YamlBlock();

    [GeneratedRegex("```csv\n(?<csv>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex CsvBlock();

    [GeneratedRegex("FM[0-9]{3}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Code();

    [GeneratedRegex("^\\| (?<code>FM[0-9]{3}) \\|", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex CodeRow();
}
