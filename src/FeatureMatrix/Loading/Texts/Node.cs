using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Texts;

/// <summary>A piece of YAML with its place. Scalars are text and nothing else: <c>1.20</c>, <c>007</c> and <c>no</c> stay as written.</summary>
internal abstract class Node(Origin origin)
{
    public Origin Origin { get; } = origin;

    /// <summary>What it is, for messages.</summary>
    public abstract string Shape { get; }

    /// <summary>True for an empty value, which counts as a key that was not written.</summary>
    public virtual bool IsNothing => false;
}

/// <summary>A text.</summary>
internal sealed class Scalar(Origin origin, string text, bool isPlain) : Node(origin)
{
    public string Text { get; } = text;

    public override bool IsNothing => isPlain && Text is "" or "null" or "~";

    public override string Shape => "a text";

    public override string ToString() => Text;
}

/// <summary>A list.</summary>
internal sealed class Sequence(Origin origin, IReadOnlyList<Node> items) : Node(origin)
{
    public IReadOnlyList<Node> Items { get; } = items;

    public override string Shape => "a list";
}

/// <summary>Keys with values, in the order of the file; no key occurs twice.</summary>
internal sealed class Mapping : Node
{
    /// <summary>Up to so many keys are looked through one by one, which is quicker than an index of them.</summary>
    private const int Few = 12;

    private readonly List<MappingEntry> _entries;
    private readonly Dictionary<string, MappingEntry>? _index;

    private Mapping(Origin origin, int count)
        : base(origin)
    {
        _entries = new List<MappingEntry>(count);
        _index = count > Few ? new Dictionary<string, MappingEntry>(count) : null;
    }

    public IReadOnlyList<MappingEntry> Entries => _entries;

    /// <summary>The maps that this one was laid together from, each as it stands in its own file; only itself where nothing was.</summary>
    public IReadOnlyList<Mapping> Parts { get; private init; } = [];

    public override string Shape => "a map of keys";

    /// <summary>A map of the entries whose key does not stand further up already.</summary>
    /// <param name="origin">Where it begins.</param>
    /// <param name="entries">All entries.</param>
    /// <param name="repeated">Takes each key that is left out, and the first of its name.</param>
    public static Mapping Of(Origin origin, IReadOnlyList<MappingEntry> entries, Action<Scalar, Scalar> repeated)
    {
        var mapping = new Mapping(origin, entries.Count);
        foreach (var entry in entries)
        {
            if (mapping.Find(entry.Key.Text) is { } first)
                repeated(entry.Key, first.Key);
            else
                mapping.Add(entry);
        }

        return mapping;
    }

    /// <summary>The entry of a key; null where there is none.</summary>
    public MappingEntry? Find(string key)
    {
        if (_index is not null)
            return _index.TryGetValue(key, out var indexed) ? indexed : null;
        foreach (var entry in _entries)
        {
            if (entry.Key.Text == key)
                return entry;
        }

        return null;
    }

    private void Add(MappingEntry entry)
    {
        _entries.Add(entry);
        _index?.Add(entry.Key.Text, entry);
    }

    /// <summary>
    /// This map, and what another says under keys that this one lacks. Where both have a map under a key, these are laid together in the
    /// same way; where they have anything else, this one's value counts.
    /// </summary>
    /// <param name="other">The map below.</param>
    /// <param name="hidden">Takes each pair of keys of which the lower one's value does not count.</param>
    public Mapping Over(Mapping other, Action<Scalar, Scalar> hidden)
    {
        var whole = new Mapping(Origin, Entries.Count + other.Entries.Count) { Parts = [.. PartsOf(this), .. PartsOf(other)] };
        foreach (var entry in Entries)
        {
            if (other.Find(entry.Key.Text) is not { } same)
                whole.Add(entry);
            else if (entry.Value.IsNothing)
                whole.Add(same);
            else if (entry.Value is Mapping upper && same.Value is Mapping lower)
                whole.Add(entry with { Value = upper.Over(lower, hidden) });
            else
            {
                hidden(entry.Key, same.Key);
                whole.Add(entry);
            }
        }

        foreach (var entry in other.Entries.Where(entry => Find(entry.Key.Text) is null))
            whole.Add(entry);
        return whole;
    }

    private static IReadOnlyList<Mapping> PartsOf(Mapping mapping) => mapping.Parts.Count > 0 ? mapping.Parts : [mapping];
}

/// <summary>A key and its value.</summary>
internal readonly record struct MappingEntry(Scalar Key, Node Value);
