namespace FeatureMatrix.Loading.Writing;

/// <summary>A value that is to stand in a collection's file. Two values are equal where the format reads them alike.</summary>
public abstract record YamlValue
{
    private YamlValue()
    {
    }

    /// <summary>A text; the writer adds quotes where YAML wants them.</summary>
    public sealed record Text(string Value) : YamlValue;

    /// <summary>A list.</summary>
    public sealed record List(IReadOnlyList<YamlValue> Items) : YamlValue
    {
        /// <inheritdoc/>
        public bool Equals(List? other) => other is not null && Items.SequenceEqual(other.Items);

        /// <inheritdoc/>
        public override int GetHashCode() => Items.Count;
    }

    /// <summary>Keys with values, in the order in which they are to be written; the order does not matter for equality.</summary>
    /// <param name="Entries">The keys.</param>
    /// <param name="InLines">True to write each key in a line of its own however short the map is, because it will grow.</param>
    public sealed record Map(IReadOnlyList<(string Key, YamlValue Value)> Entries, bool InLines = false) : YamlValue
    {
        /// <inheritdoc/>
        public bool Equals(Map? other) =>
            other is not null && Entries.Count == other.Entries.Count
            && Entries.All(entry => other.Entries.Any(theirs => theirs.Key == entry.Key && theirs.Value.Equals(entry.Value)));

        /// <inheritdoc/>
        public override int GetHashCode() => Entries.Count;
    }

    /// <summary>A key without a value.</summary>
    public sealed record Nothing : YamlValue;

    /// <summary>A list of texts.</summary>
    public static YamlValue Words(IEnumerable<string> words) => new List([.. words.Select(word => new Text(word))]);
}
