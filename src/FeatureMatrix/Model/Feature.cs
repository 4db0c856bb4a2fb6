namespace FeatureMatrix.Model;

/// <summary>
/// A word of the vocabulary: a rendering feature, or an API that a driver or wrapper offers. Either a flag or an ordered
/// ladder of levels; each step of the ladder is one <see cref="Capability"/>.
/// </summary>
public sealed class Feature
{
    /// <summary>Kebab-case and stable, for example <c>fog-table</c> or <c>direct3d</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The trade's name for it.</summary>
    public required string Name { get; init; }

    /// <summary>The group it is shown in, for example <c>fog</c>.</summary>
    public required string Family { get; init; }

    /// <summary>The names of the levels, lowest first; empty for a flag.</summary>
    public IReadOnlyList<string> Levels { get; init; } = [];

    /// <summary>What a level counts, for example <c>px</c>; empty for flags and version numbers.</summary>
    public string Unit { get; init; } = "";

    /// <summary>What it is, in a sentence or two.</summary>
    public string Meaning { get; init; } = "";

    /// <summary>What a viewer sees when it is missing.</summary>
    public string SeenWhenMissing { get; init; } = "";

    /// <summary>How imports find it in what a card, driver or title reports.</summary>
    public Detection Detection { get; init; } = Detection.None;

    /// <summary>True for an interface that titles call (Direct3D, OpenGL, …) rather than something it draws.</summary>
    public bool IsApi { get; init; }

    /// <summary>
    /// True for an API whose runtime the operating system must be able to have (Direct3D, DirectDraw). The other
    /// APIs come with the driver or the board.
    /// </summary>
    public bool NeedsRuntime { get; init; }

    /// <summary>Having this feature (at its first level) means having these as well.</summary>
    public IReadOnlyList<Capability> Implies { get; private set; } = [];

    /// <summary>Who says that the trade or a standard knows this word.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>True for a ladder of levels, false for a flag.</summary>
    public bool HasLevels => Levels.Count > 0;

    /// <summary>The number of capabilities this feature has: its levels, or one for a flag.</summary>
    public int Steps => HasLevels ? Levels.Count : 1;

    /// <summary>The capability at a step of the ladder, counted from 1; a flag has the step 1 only.</summary>
    public Capability At(int step)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(step, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(step, Steps);
        return new Capability(this, step);
    }

    /// <summary>The capability at a named level; null where the ladder has no such level.</summary>
    public Capability? At(string level)
    {
        for (var i = 0; i < Levels.Count; i++)
        {
            if (Levels[i] == level)
                return new Capability(this, i + 1);
        }

        return null;
    }

    /// <summary>Completes the links once all features exist. Called once, by the loader.</summary>
    public void Link(IReadOnlyList<Capability> implies) => Implies = implies;

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>One thing that can be asked of a card: a flag, or one step of a ladder (<c>ps-version 1.4</c>).</summary>
/// <param name="Feature">The feature or API.</param>
/// <param name="Step">1 for a flag; for a ladder the place of the level, the lowest being 1.</param>
public readonly record struct Capability(Feature Feature, int Step)
{
    /// <summary>The level's name, or empty for a flag.</summary>
    public string Level => Feature.HasLevels ? Feature.Levels[Step - 1] : "";

    /// <summary>
    /// True where having this one means having the other: a higher level of the same ladder, or a declared implication,
    /// directly or through others (rule R2).
    /// </summary>
    public bool Implies(Capability other)
    {
        if (Feature == other.Feature)
            return Step >= other.Step;
        for (var i = 0; i < Feature.Implies.Count; i++)
        {
            if (Feature.Implies[i].Implies(other))
                return true;
        }

        return false;
    }

    /// <inheritdoc/>
    public override string ToString() => Feature.HasLevels ? $"{Feature.Id} {Level}" : Feature.Id;
}

/// <summary>How a feature shows in the reports that interfaces give. Any one hit of a list supplies the feature.</summary>
public sealed record Detection
{
    /// <summary>A feature that no interface reports.</summary>
    public static Detection None { get; } = new();

    /// <summary>OpenGL and window-system extension names, each enough by itself.</summary>
    public IReadOnlyList<string> OpenGlExtensions { get; init; } = [];

    /// <summary>The core version of OpenGL that contains the feature, for example <c>1.3</c>; null if none does.</summary>
    public string? OpenGlCore { get; init; }

    /// <summary>The OpenGL limit whose value is the level, for example <c>GL_MAX_TEXTURE_SIZE</c>; null if none.</summary>
    public string? OpenGlLimit { get; init; }

    /// <summary>Direct3D capability bits or formats, each enough by itself.</summary>
    public IReadOnlyList<Direct3DSign> Direct3D { get; init; } = [];
}

/// <summary>One sign of a feature in a Direct3D capability structure or format list.</summary>
/// <param name="Generation">7 (also the older DirectDraw interfaces), 8 or 9.</param>
/// <param name="Field">The structure's field, for example <c>RasterCaps</c>, or <c>formats</c> for a list of formats.</param>
/// <param name="Constant">The public constant's name, or empty where the field's number is the level itself.</param>
/// <param name="Value">The constant's value; 0 where the field's number is the level itself.</param>
/// <param name="Inverted">True for bits that are limits: set means the feature is missing (FACTS trap 1).</param>
public sealed record Direct3DSign(int Generation, string Field, string Constant, uint Value, bool Inverted)
{
    /// <summary>The level that the sign shows, for example 24 for a depth format; empty where it shows the feature as a whole.</summary>
    public string Level { get; init; } = "";

    /// <summary>
    /// For texture formats that Direct3D 7 describes and does not name: bits of red, green, blue and alpha, in this order.
    /// Empty where the constant says it all.
    /// </summary>
    public IReadOnlyList<int> Channels { get; init; } = [];
}
