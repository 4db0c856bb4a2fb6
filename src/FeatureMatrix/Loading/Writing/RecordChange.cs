using FeatureMatrix.Loading.Faults;

namespace FeatureMatrix.Loading.Writing;

/// <summary>One step on the way from the top of a file to a record.</summary>
public abstract record Step
{
    private Step()
    {
    }

    /// <summary>Into the value under a key.</summary>
    public sealed record Key(string Name) : Step;

    /// <summary>
    /// Into the item of a list that has these keys with these values. A bare text counts as an item whose first key has it.
    /// </summary>
    /// <param name="Identity">Keys and values that tell the item from others.</param>
    /// <param name="AlsoTelling">Keys that an item with this identity must not have, because they make it another one.</param>
    public sealed record Item(IReadOnlyList<(string Key, string Value)> Identity, IReadOnlyList<string> AlsoTelling) : Step;
}

/// <summary>What to do where a key has another value already.</summary>
public enum KeyRule
{
    /// <summary>What stands there is kept and reported: a person may have known better.</summary>
    Keep,

    /// <summary>
    /// The value is replaced where it says no more than what an import writes (a text, or a map of <c>is</c>, <c>level</c>
    /// and <c>reach</c>); one with a grade, source, note or scope of its own is kept and reported: a person put it there.
    /// </summary>
    Replace,

    /// <summary>Lists are joined: what is missing from the list that stands there is added.</summary>
    Join,

    /// <summary>The key is taken out where <see cref="Replace"/> would replace its value, and kept and reported elsewhere.</summary>
    Remove,
}

/// <summary>One key of a record.</summary>
/// <param name="Key">The key.</param>
/// <param name="Value">Its value; with <see cref="KeyRule.Remove"/> not used.</param>
/// <param name="Rule">What to do where it has another value.</param>
public sealed record KeyChange(string Key, YamlValue Value, KeyRule Rule)
{
    /// <summary>A key with a text, kept where something else stands.</summary>
    public static KeyChange Keep(string key, string text) => new(key, new YamlValue.Text(text), KeyRule.Keep);
}

/// <summary>One record that a collection is to hold.</summary>
/// <param name="Place">The way to it; the first step is a top-level key.</param>
/// <param name="NewFile">The file that gets it where no file of the collection has it, below the collection's folder.</param>
/// <param name="Keys">Its keys, in the order in which a new record has them.</param>
public sealed record RecordChange(IReadOnlyList<Step> Place, string NewFile, IReadOnlyList<KeyChange> Keys)
{
    /// <summary>True where a new record is written key by key in lines, because further keys will join it.</summary>
    public bool InLines { get; init; }
}

/// <summary>A value that stays although the import would have another.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">The line of the key, counted from 1; null where the same import brought it.</param>
/// <param name="Key">The key.</param>
/// <param name="Stands">What stands there, in one line.</param>
/// <param name="Imported">What the import has; empty where it has nothing.</param>
public sealed record KeptValue(string File, int? Line, string Key, string Stands, string Imported);

/// <summary>A file before and after.</summary>
/// <param name="Path">Below the collection's folder.</param>
/// <param name="Before">Its text; null for a new file.</param>
/// <param name="After">Its text then.</param>
public sealed record FileChange(string Path, string? Before, string After);

/// <summary>All that an import would change.</summary>
/// <param name="Files">Files that differ, in an order in which each may be written without breaking a reference; empty for none.</param>
/// <param name="Kept">Values that stay although the import would have others.</param>
/// <param name="Result">The whole collection loaded as it would be then; nothing may be written where it has no catalog.</param>
public sealed record CollectionChange(IReadOnlyList<FileChange> Files, IReadOnlyList<KeptValue> Kept, LoadResult Result);
