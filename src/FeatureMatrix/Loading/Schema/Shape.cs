namespace FeatureMatrix.Loading.Schema;

/// <summary>What may stand at a place of a collection file, as far as a file by itself can tell.</summary>
internal abstract record Shape
{
    private Shape()
    {
    }

    /// <summary>Any text: a number or a yes is text as well.</summary>
    public sealed record Any : Shape;

    /// <summary>A text of a certain form, as a regular expression of ECMA-262 without its anchors.</summary>
    public sealed record Form(string Pattern) : Shape;

    /// <summary>One of a fixed set of words.</summary>
    public sealed record Word(IReadOnlyList<string> Legal) : Shape;

    /// <summary>A number from <paramref name="Least"/> to <paramref name="Most"/>, both included; whole or with decimals.</summary>
    public sealed record Number(double Least, double Most, bool IsWhole) : Shape;

    /// <summary>A list.</summary>
    public sealed record List(Shape Item) : Shape;

    /// <summary>A map from names to values.</summary>
    /// <param name="Value">What stands under each name.</param>
    /// <param name="NamesAreIds">True where the names are new ids, not references.</param>
    /// <param name="MayBeEmpty">True where a name may stand without a value.</param>
    /// <param name="Known">The definition that lists names of the vocabulary with their meaning; null for none.</param>
    public sealed record Entries(Shape Value, bool NamesAreIds, bool MayBeEmpty = false, string? Known = null) : Shape;

    /// <summary>A map with keys of the format.</summary>
    /// <param name="All">Every legal key.</param>
    public sealed record Map(IReadOnlyList<Key> All) : Shape
    {
        /// <summary>Groups of keys of which exactly one is there, whole; empty for no such rule.</summary>
        public IReadOnlyList<IReadOnlyList<string>> OneGroup { get; init; } = [];

        /// <summary>Keys of which at least one is there; empty for no such rule.</summary>
        public IReadOnlyList<string> AtLeastOne { get; init; } = [];

        /// <summary>What other names may hold; null where no others are legal.</summary>
        public Shape? Others { get; init; }

        /// <summary>The definition that lists known other names; null for none.</summary>
        public string? KnownOthers { get; init; }
    }

    /// <summary>Any of several shapes.</summary>
    public sealed record Either(IReadOnlyList<Shape> Choices) : Shape;

    /// <summary>A shape that stands in the definitions under this name.</summary>
    public sealed record Named(string Name) : Shape;
}

/// <summary>A key of the format with its documentation.</summary>
internal sealed record Key(string Name, Shape Shape, string Meaning)
{
    /// <summary>True where it has to be there with a value.</summary>
    public bool IsRequired { get; init; }

    /// <summary>The same key, obligatory.</summary>
    public Key Required => this with { IsRequired = true };
}
