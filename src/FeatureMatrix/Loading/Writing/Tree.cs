namespace FeatureMatrix.Loading.Writing;

/// <summary>
/// A YAML text as a tree that may be changed. Each part that stood in the text knows where, so that <see cref="TextRevision"/> can
/// write the change without touching anything else.
/// </summary>
internal abstract class Tree(PlacedNode? source)
{
    /// <summary>Where it stands in the text; null for what is new.</summary>
    public PlacedNode? Source { get; } = source;

    /// <summary>The item of a list that this new one takes the place of; null for one that comes last.</summary>
    public PlacedNode? InPlaceOf { get; set; }

    /// <summary>The tree of a node; null for no node.</summary>
    public static Tree? Of(PlacedNode? node) => node switch
    {
        null => null,
        PlacedScalar scalar => new TreeText(scalar.Text.Trim(), scalar.IsNothing, scalar),
        PlacedSequence list => new TreeList(list, list.Items.Select(item => Of(item)!)),
        PlacedMapping map => new TreeMap(map, map.Entries.Select(entry => new TreeEntry(entry.Key.Text, Of(entry.Value)!, entry))),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What is new, from a value.</summary>
    public static Tree Of(YamlValue value) => value switch
    {
        YamlValue.Text text => new TreeText(text.Value),
        YamlValue.List list => new TreeList(null, list.Items.Select(Of)),
        YamlValue.Map map => new TreeMap(null, map.Entries.Select(entry => new TreeEntry(entry.Key, Of(entry.Value)))),
        YamlValue.Nothing => new TreeText("", isNothing: true),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What it says, as it would be written anew.</summary>
    public abstract YamlValue ToValue();
}

/// <summary>A text, or the empty place after a key.</summary>
internal sealed class TreeText(string text, bool isNothing = false, PlacedScalar? source = null) : Tree(source)
{
    public string Text { get; } = text;

    public bool IsNothing { get; } = isNothing;

    public override YamlValue ToValue() => IsNothing ? new YamlValue.Nothing() : new YamlValue.Text(Text);
}

/// <summary>A list.</summary>
internal sealed class TreeList(PlacedSequence? source, IEnumerable<Tree> items) : Tree(source)
{
    public List<Tree> Items { get; } = [.. items];

    /// <summary>Puts a new item in the place of one.</summary>
    public void Replace(Tree item, Tree with)
    {
        with.InPlaceOf = item.Source ?? item.InPlaceOf;
        Items[Items.IndexOf(item)] = with;
    }

    public override YamlValue ToValue() => new YamlValue.List([.. Items.Select(item => item.ToValue())]);
}

/// <summary>Keys with values.</summary>
internal sealed class TreeMap(PlacedMapping? source, IEnumerable<TreeEntry> entries) : Tree(source)
{
    public List<TreeEntry> Entries { get; } = [.. entries];

    /// <summary>True where a new map is written key by key in lines, because further keys will join it.</summary>
    public bool InLines { get; init; }

    /// <summary>The entry of a key; null where there is none.</summary>
    public TreeEntry? Entry(string key) => Entries.Find(entry => entry.Key == key);

    /// <summary>The value of a key; null where there is none or nothing stands there.</summary>
    public Tree? this[string key] => Entry(key)?.Value is { } value and not TreeText { IsNothing: true } ? value : null;

    /// <summary>Gives a key a value; the last key where it is new.</summary>
    public void Set(string key, Tree value)
    {
        if (Entry(key) is { } entry)
            entry.Value = value;
        else
            Entries.Add(new TreeEntry(key, value));
    }

    public override YamlValue ToValue() => new YamlValue.Map([.. Entries.Select(entry => (entry.Key, entry.Value.ToValue()))], InLines);
}

/// <summary>A key with its value; both may be changed.</summary>
internal sealed class TreeEntry(string key, Tree value, PlacedEntry? source = null)
{
    public PlacedEntry? Source { get; } = source;

    public string Key { get; set; } = key;

    public Tree Value { get; set; } = value;
}
