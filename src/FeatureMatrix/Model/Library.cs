namespace FeatureMatrix.Model;

/// <summary>The titles someone cares about, and on what terms.</summary>
public sealed class Library
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>What its owner calls it.</summary>
    public required string Name { get; init; }

    /// <summary>The titles, in the order of the file.</summary>
    public required IReadOnlyList<LibraryEntry> Entries { get; init; }

    /// <summary>What is allowed and how losses weigh.</summary>
    public Policy Policy { get; init; } = Policy.Default;

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>One title of a library.</summary>
public sealed record LibraryEntry
{
    /// <summary>The title.</summary>
    public required Title Title { get; init; }

    /// <summary>How much it counts; at least 0.</summary>
    public double Weight { get; init; } = 1;

    /// <summary>The worst loss a must-have may show and still be covered; null where the title is no must-have.</summary>
    public Strength? MustHaveTolerance { get; init; }

    /// <summary>The texture preset that is wanted; empty for the highest that fits.</summary>
    public string Preset { get; init; } = "";

    /// <summary>True where a certain failure eliminates a card.</summary>
    public bool IsMustHave => MustHaveTolerance is not null;
}

/// <summary>What a library allows, where it wants to play, and what a loss is worth. Printed with every decision.</summary>
public sealed record Policy
{
    /// <summary>Everything allowed except forced drivers and software rendering; worths as in DESIGN section 5.</summary>
    public static Policy Default { get; } = new();

    /// <summary>What its file calls it, or the file; empty for a library's own policy.</summary>
    public string Name { get; init; } = "";

    /// <summary>The operating systems that may be used; null for any.</summary>
    public IReadOnlyList<Os>? Oses { get; init; }

    /// <summary>The wrappers that may be used; null for any, empty for none.</summary>
    public IReadOnlyList<Wrapper>? Wrappers { get; init; }

    /// <summary>True where drivers may be forced onto boards they do not list.</summary>
    public bool AllowForced { get; init; }

    /// <summary>True where software rendering satisfies a must-have.</summary>
    public bool AllowSoftware { get; init; }

    /// <summary>True where nobody changes drivers between titles: one driver for each operating system.</summary>
    public bool OneDriverPerOs { get; init; } = true;

    /// <summary>The mode wanted; null for each renderer's lowest.</summary>
    public Mode? Mode { get; init; }

    /// <summary>The colour depth wanted, in bits; null for each renderer's lowest.</summary>
    public int? Depth { get; init; }

    /// <summary>Samples a pixel; 1 for no multisampling.</summary>
    public int Samples { get; init; } = 1;

    /// <summary>Frames a second below which a title counts as too slow; null for no floor.</summary>
    public double? FpsFloor { get; init; }

    /// <summary>What is left of a title's worth after one severe loss, 0 to 1.</summary>
    public double SevereWorth { get; init; } = 0.5;

    /// <summary>What is left of a title's worth after one cosmetic loss, 0 to 1, before the bound that keeps any number of them above one severe loss.</summary>
    public double CosmeticWorth { get; init; } = 0.8;

    /// <summary>True where the operating system may be used.</summary>
    public bool Allows(Os os) => Oses is null || Oses.Contains(os);

    /// <summary>True where the wrapper may be used.</summary>
    public bool Allows(Wrapper wrapper) => Wrappers is null || Wrappers.Contains(wrapper);
}
