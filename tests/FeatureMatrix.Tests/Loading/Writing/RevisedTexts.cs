using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.Writing;

/// <summary>Whatever is changed in the tree of a file, the revised text says it, and lines without a change stay as they are.</summary>
public sealed class A_revised_text
{
    private const int Rounds = 12;

    public static TheoryData<string> Files => [.. Demo.Select(file => file.Path)];

    private static IReadOnlyList<SourceText> Demo { get; } =
        [.. CollectionFolder.Read(Repository.PathTo("data", "demo"), null).Files.Where(file => file.Path.EndsWith(".yaml", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Files))]
    public void Says_what_the_changed_tree_says(string path)
    {
        foreach (var lineEnd in new[] { "\n", "\r\n" })
        {
            var text = Demo.Single(file => file.Path == path).Text.ReplaceLineEndings(lineEnd);
            for (var seed = 1; seed <= Rounds; seed++)
            {
                var random = new Random(seed);
                var root = (TreeMap)Tree.Of(PlacedNode.Parse(text))!;
                for (var change = 0; change < 1 + (seed % 4); change++)
                    Change(root, random);

                var revised = TextRevision.Of(text, root);

                var faults = new FaultList();
                NodeParser.Parse(new SourceText(path, revised), faults);
                Assert.True(faults.Sorted().Count == 0, $"seed {seed}: {string.Join('\n', faults.Sorted())}\n{revised}");
                Assert.True(Plain(root.ToValue()) == Plain(Tree.Of(PlacedNode.Parse(revised))!.ToValue()), $"seed {seed}\n{revised}");
                Assert.Equal(lineEnd == "\r\n", !revised.Replace("\r\n", "", StringComparison.Ordinal).Contains('\n', StringComparison.Ordinal));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Is_the_same_text_where_nothing_changed(string path)
    {
        var text = Demo.Single(file => file.Path == path).Text;
        Assert.Equal(text, TextRevision.Of(text, (TreeMap)Tree.Of(PlacedNode.Parse(text))!));
    }

    private static void Change(TreeMap root, Random random)
    {
        Tree at = root;
        for (var depth = 0; depth < 6; depth++)
        {
            var deeper = (at switch
            {
                TreeMap map => map.Entries.Select(entry => entry.Value),
                TreeList list => list.Items,
                _ => [],
            }).Where(one => one is TreeMap { Entries.Count: > 0 } or TreeList { Items.Count: > 0 }).ToList();
            if (deeper.Count == 0 || (depth > 0 && random.Next(4) == 0))
                break;
            at = deeper[random.Next(deeper.Count)];
        }

        YamlValue value = random.Next(3) switch
        {
            0 => new YamlValue.Text("new: text # with signs"),
            1 => new YamlValue.Map([("one", new YamlValue.Text("1")), ("two", YamlValue.Words(["a", "b, c"]))]),
            _ => new YamlValue.List([new YamlValue.Map([("need", new YamlValue.Text("fog-table")), ("effect", new YamlValue.Text(new string('w', 120)))])]),
        };
        switch (at, random.Next(4))
        {
            case (TreeMap map, 0):
                map.Set($"new-{random.Next(3)}", Tree.Of(value));
                break;
            case (TreeMap map, 1):
                map.Entries.RemoveAt(random.Next(map.Entries.Count));
                break;
            case (TreeMap map, 2):
                map.Entries[random.Next(map.Entries.Count)].Value = Tree.Of(value);
                break;
            case (TreeMap map, _):
                map.Entries[random.Next(map.Entries.Count)].Key = $"renamed-{random.Next(1000)}";
                break;
            case (TreeList list, 0 or 1):
                list.Items.Add(Tree.Of(value));
                break;
            case (TreeList list, 2):
                list.Items.RemoveAt(random.Next(list.Items.Count));
                break;
            case (TreeList list, _):
                list.Replace(list.Items[random.Next(list.Items.Count)], Tree.Of(value));
                break;
            default:
                break;
        }
    }

    /// <summary>A value as text; what is empty counts as nothing, which is how a key whose lines are all gone reads.</summary>
    private static string Plain(YamlValue value) => value switch
    {
        YamlValue.Text text => $"\"{text.Value}\"",
        YamlValue.Nothing or YamlValue.List { Items.Count: 0 } or YamlValue.Map { Entries.Count: 0 } => "-",
        YamlValue.List list => $"[{string.Join(", ", list.Items.Select(Plain))}]",
        YamlValue.Map map => $"{{{string.Join(", ", map.Entries.Select(entry => $"{entry.Key}: {Plain(entry.Value)}"))}}}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
