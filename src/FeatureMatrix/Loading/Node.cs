using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

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
internal sealed class Mapping(Origin origin, IReadOnlyList<MappingEntry> entries) : Node(origin)
{
    public IReadOnlyList<MappingEntry> Entries { get; } = entries;

    /// <summary>The maps that this one was laid together from, each as it stands in its own file; only itself where nothing was.</summary>
    public IReadOnlyList<Mapping> Parts { get; private init; } = [];

    public override string Shape => "a map of keys";

    /// <summary>
    /// This map, and what another says under keys that this one lacks. Where both have a map under a key, these are laid together in the
    /// same way; where they have anything else, this one's value counts.
    /// </summary>
    /// <param name="other">The map below.</param>
    /// <param name="hidden">Takes each pair of keys of which the lower one's value does not count.</param>
    public Mapping Over(Mapping other, Action<Scalar, Scalar> hidden)
    {
        var below = other.Entries.ToDictionary(entry => entry.Key.Text);
        var whole = new List<MappingEntry>();
        foreach (var entry in Entries)
        {
            if (!below.Remove(entry.Key.Text, out var same))
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

        whole.AddRange(other.Entries.Where(entry => below.ContainsKey(entry.Key.Text)));
        return new Mapping(Origin, whole) { Parts = [.. PartsOf(this), .. PartsOf(other)] };
    }

    private static IReadOnlyList<Mapping> PartsOf(Mapping mapping) => mapping.Parts.Count > 0 ? mapping.Parts : [mapping];
}

/// <summary>A key and its value.</summary>
internal readonly record struct MappingEntry(Scalar Key, Node Value);
