namespace FeatureMatrix.Model;

/// <summary>A game or program at a stated version.</summary>
public sealed class Title
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>The title's name.</summary>
    public required string Name { get; init; }

    /// <summary>The version the statements are about; empty where not recorded.</summary>
    public string Version { get; init; } = "";

    /// <summary>Year of release; null where not recorded.</summary>
    public int? Year { get; init; }

    /// <summary>The engine it is built on, for grouping; empty where not recorded.</summary>
    public string Engine { get; init; } = "";

    /// <summary>What kind of title it is, in a word, for grouping.</summary>
    public string Genre { get; init; } = "";

    /// <summary>Its graphics paths. The list is closed: paths that nobody wrote down do not count.</summary>
    public IReadOnlyList<Renderer> Renderers { get; private set; } = [];

    /// <summary>What a fast machine does to it (rule R12).</summary>
    public IReadOnlyList<TimingHazard> Hazards { get; init; } = [];

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Who describes it.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>Completes the links. Called once, by the loader.</summary>
    public void Link(IReadOnlyList<Renderer> renderers) => Renderers = renderers;

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>One of a title's graphics paths, with its own needs (rule R5).</summary>
public sealed class Renderer
{
    /// <summary>Unique within the title, for example <c>direct3d</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The title.</summary>
    public required Title Title { get; init; }

    /// <summary>What the title calls it.</summary>
    public string Name { get; init; } = "";

    /// <summary>The API and the level it asks of the driver; null for software rendering.</summary>
    public Capability? Api { get; init; }

    /// <summary>The runtime it needs; the API's own level unless the title says otherwise. Null for software rendering.</summary>
    public Capability? Runtime { get; init; }

    /// <summary>True where the processor draws: shown apart, never the card's support (rule R7).</summary>
    public bool IsSoftware => Api is null;

    /// <summary>The operating systems this path exists on.</summary>
    public required IReadOnlyList<Os> Oses { get; init; }

    /// <summary>What it asks for. The list is closed.</summary>
    public IReadOnlyList<Need> Needs { get; init; } = [];

    /// <summary>Negative facts (rule R6). The list is closed.</summary>
    public IReadOnlyList<Defect> Defects { get; init; } = [];

    /// <summary>How it uses video memory.</summary>
    public MemoryUse Memory { get; init; } = MemoryUse.Usual;

    /// <summary>Title and path, for messages.</summary>
    public override string ToString() => $"{Title.Id}/{Id}";
}

/// <summary>How badly a missing capability shows (DESIGN section 2).</summary>
public enum Strength
{
    /// <summary>Nice to have; missing it is no loss.</summary>
    Bonus,

    /// <summary>Visible, but nobody would stop playing.</summary>
    Cosmetic,

    /// <summary>Seen to run without it, but nobody graded how badly it shows: cosmetic or severe.</summary>
    Ungraded,

    /// <summary>Spoils the picture.</summary>
    Severe,

    /// <summary>The title refuses, crashes or is unusable without it.</summary>
    Must,

    /// <summary>Nobody knows what happens without it: anything from cosmetic to must.</summary>
    Unknown,
}

/// <summary>What a renderer asks of one feature, or of one among several.</summary>
public sealed class Need
{
    /// <summary>
    /// What would do, in the order the title tries them; the first that is not missing is taken (rule R5). One entry is
    /// the ordinary case.
    /// </summary>
    public required IReadOnlyList<Capability> Choices { get; init; }

    /// <summary>True where an emulated supply does not do.</summary>
    public bool HardwareOnly { get; init; }

    /// <summary>How badly it shows when missing.</summary>
    public required Strength Strength { get; init; }

    /// <summary>How badly it shows when claimed but broken; null where nobody recorded that (rule R4).</summary>
    public Strength? WhenBroken { get; init; }

    /// <summary>When it applies; null for always.</summary>
    public NeedCondition? Condition { get; init; }

    /// <summary>What this title looks like without it; empty where the feature's general text has to do.</summary>
    public string Effect { get; init; } = "";

    /// <summary>Who says so.</summary>
    public required Evidence Evidence { get; init; }

    /// <inheritdoc/>
    public override string ToString() => string.Join(" or ", Choices);
}

/// <summary>A condition on a need.</summary>
public abstract record NeedCondition
{
    private NeedCondition()
    {
    }

    /// <summary>Only when the title draws at this colour depth, in bits.</summary>
    public sealed record AtDepth(int Bits) : NeedCondition;

    /// <summary>Only at this texture preset.</summary>
    public sealed record AtPreset(string Preset) : NeedCondition;
}

/// <summary>A negative fact: it vetoes a route even when every need is met (rule R6).</summary>
/// <param name="IfPresent">The capability whose presence breaks it; null for a defect that needs no cause.</param>
/// <param name="Scope">Where it happens.</param>
/// <param name="Wrapper">
/// The wrapper version it happens with; null for native routes. A defect that names no wrapper never vetoes a wrapped
/// route.
/// </param>
/// <param name="Effect">What happens, for people.</param>
/// <param name="Evidence">Who says so.</param>
public sealed record Defect(Capability? IfPresent, Scope Scope, WrapperVersion? Wrapper, string Effect, Evidence Evidence);

/// <summary>How a renderer uses video memory (rules R10 and R11).</summary>
public sealed record MemoryUse
{
    /// <summary>Double buffering with a depth buffer as deep as the colours, at 640 × 480 and 16 bit, no known presets.</summary>
    public static MemoryUse Usual { get; } = new();

    /// <summary>The lowest mode it offers.</summary>
    public Mode LowestMode { get; init; } = new(640, 480);

    /// <summary>Colour depths it offers, in bits, lowest first.</summary>
    public IReadOnlyList<int> Depths { get; init; } = [16];

    /// <summary>Back buffers: 1 for double buffering, 2 for triple.</summary>
    public int BackBuffers { get; init; } = 1;

    /// <summary>Depth-buffer bits, stencil included; 0 for none, null for as deep as the colours.</summary>
    public int? DepthBits { get; init; }

    /// <summary>Texture presets, smallest first; empty where nobody estimated them.</summary>
    public IReadOnlyList<TexturePreset> Presets { get; init; } = [];
}

/// <summary>A size in pixels.</summary>
public readonly record struct Mode(int Width, int Height)
{
    /// <summary>Width × height.</summary>
    public long Pixels => (long)Width * Height;

    /// <inheritdoc/>
    public override string ToString() => $"{Width}x{Height}";
}

/// <summary>A texture setting of a title.</summary>
/// <param name="Name">What the title calls it.</param>
/// <param name="Bytes">Texture memory one scene needs, in bytes.</param>
/// <param name="Format">The format these bytes are counted in.</param>
/// <param name="IsMeasured">False for an estimate, which makes nothing certain.</param>
public sealed record TexturePreset(string Name, long Bytes, TextureFormat Format, bool IsMeasured);

/// <summary>How textures are stored, as far as their size depends on it (rule R11).</summary>
public enum TextureFormat
{
    /// <summary>16 bits a texel.</summary>
    Bits16,

    /// <summary>8-bit indices into a palette; losing palettes doubles it, or more at 32 bits.</summary>
    Paletted8,

    /// <summary>32 bits a texel.</summary>
    Bits32,

    /// <summary>Block-compressed, 4 bits a texel; without it four times that at 16 bits.</summary>
    Compressed4,

    /// <summary>Block-compressed, 8 bits a texel; without it twice that at 16 bits.</summary>
    Compressed8,
}

/// <summary>What a fast machine does to a title (rule R12).</summary>
/// <param name="Kind">What goes wrong.</param>
/// <param name="FollowsFrameRate">True where the frame rate, not the processor, sets it off.</param>
/// <param name="HighestFps">The frame rate it bears where it follows the frame rate; null where not recorded.</param>
/// <param name="Effect">What happens, for people.</param>
/// <param name="Remedy">A limiter or patch, for people; empty for none.</param>
/// <param name="Sightings">Where it was seen to work and to fail.</param>
/// <param name="Evidence">Who says so.</param>
public sealed record TimingHazard(
    TimingHazardKind Kind, bool FollowsFrameRate, double? HighestFps, string Effect, string Remedy,
    IReadOnlyList<TimingSighting> Sightings, Evidence Evidence);

/// <summary>The kinds of timing hazard.</summary>
public enum TimingHazardKind
{
    /// <summary>A calibration loop overflows or divides by zero.</summary>
    LoopCalibration,

    /// <summary>The title does a fixed amount of work per frame and so runs too fast.</summary>
    WorkPerFrame,

    /// <summary>A time difference becomes zero.</summary>
    TimerUnderflow,

    /// <summary>Time differs between processor cores.</summary>
    UnsynchronisedCores,
}

/// <summary>A title that was seen to work or fail on a processor.</summary>
/// <param name="ProcessorFamily">The family the threshold belongs to.</param>
/// <param name="Megahertz">Its clock.</param>
/// <param name="Works">Whether it worked.</param>
/// <param name="Evidence">Who saw it.</param>
public sealed record TimingSighting(string ProcessorFamily, double Megahertz, bool Works, Evidence Evidence);
