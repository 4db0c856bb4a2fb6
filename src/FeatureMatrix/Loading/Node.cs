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

    public override string Shape => "a map of keys";
}

/// <summary>A key and its value.</summary>
internal readonly record struct MappingEntry(Scalar Key, Node Value);
