namespace FeatureMatrix.Model;

/// <summary>The silicon that draws. Cards build on it, so that what all of them share is written once.</summary>
public sealed class Chip
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>The chip's name.</summary>
    public required string Name { get; init; }

    /// <summary>Who made it.</summary>
    public string Maker { get; init; } = "";

    /// <summary>Year of the first board; null where not recorded.</summary>
    public int? Year { get; init; }

    /// <summary>Its generation in plain words, for grouping.</summary>
    public string Generation { get; init; } = "";

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>A board: a chip with memory, clocks, a bus and hardware IDs.</summary>
public sealed class Card
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>The board's name.</summary>
    public required string Name { get; init; }

    /// <summary>Who sold it.</summary>
    public string Maker { get; init; } = "";

    /// <summary>Year it was sold first; null where not recorded.</summary>
    public int? Year { get; init; }

    /// <summary>The silicon on it.</summary>
    public required Chip Chip { get; init; }

    /// <summary>Its memory; null where not recorded, which leaves every memory question unknown.</summary>
    public VideoMemory? Memory { get; init; }

    /// <summary>Chip clock in MHz; null where not recorded.</summary>
    public double? CoreMegahertz { get; init; }

    /// <summary>Memory clock in MHz; null where not recorded.</summary>
    public double? MemoryMegahertz { get; init; }

    /// <summary>The bus it plugs into and what its documents say about voltage; null where not recorded.</summary>
    public CardConnector? Connector { get; init; }

    /// <summary>Windows hardware IDs, as <c>PCI\VEN_vvvv&amp;DEV_dddd…</c>.</summary>
    public IReadOnlyList<string> HardwareIds { get; init; } = [];

    /// <summary>True for a 3D-only add-in, which needs a companion 2D card in the same PC.</summary>
    public bool IsAddIn { get; init; }

    /// <summary>The 2D card the collection pairs an add-in with; null where it has none or needs none.</summary>
    public Card? Companion { get; private set; }

    /// <summary>What is known of its support by operating systems beyond driver lists. Silence is unknown.</summary>
    public IReadOnlyList<OsSupport> OsSupport { get; init; } = [];

    /// <summary>Operating systems for which the collection declares that all of the card's drivers are recorded.</summary>
    public IReadOnlySet<Os> DriversCompleteFor { get; init; } = new HashSet<Os>();

    /// <summary>What boards like this one were asked or sold for.</summary>
    public IReadOnlyList<Price> Prices { get; init; } = [];

    /// <summary>Cautions of this board's own, for people.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Who describes the board.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>Completes the link to the companion once all cards exist. Called once, by the loader.</summary>
    public void Link(Card? companion) => Companion = companion;

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>How a board's memory is laid out. All sizes are bytes.</summary>
public abstract record VideoMemory
{
    private VideoMemory()
    {
    }

    /// <summary>True where textures may also lie in main memory over the bus; null where not recorded (rule R11).</summary>
    public bool? TexturesFromSystemMemory { get; init; }

    /// <summary>One pool that frame buffer and textures share.</summary>
    public sealed record Unified(long Bytes) : VideoMemory;

    /// <summary>A frame buffer of its own, and texture memory of its own.</summary>
    /// <param name="FrameBytes">The frame-buffer pool.</param>
    /// <param name="TextureBytes">
    /// Texture memory that one copy of the textures can fill: where each of several units keeps its own copy, one unit's.
    /// </param>
    public sealed record Split(long FrameBytes, long TextureBytes) : VideoMemory;

    /// <summary>The pool that must hold the frame buffer, in bytes.</summary>
    public long FramePool => this switch
    {
        Unified unified => unified.Bytes,
        Split split => split.FrameBytes,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>All memory on the board, in bytes.</summary>
    public long Total => this switch
    {
        Unified unified => unified.Bytes,
        Split split => split.FrameBytes + split.TextureBytes,
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}

/// <summary>What the card's edge and its documents say.</summary>
public sealed record CardConnector
{
    /// <summary>The bus.</summary>
    public required Bus Bus { get; init; }

    /// <summary>Signalling voltages that the board's documents state; empty where no document was seen.</summary>
    public IReadOnlyList<double> DocumentedVolts { get; init; } = [];

    /// <summary>Key notches in the card's edge, by the voltage each stands for; empty where nobody looked.</summary>
    public IReadOnlyList<double> Notches { get; init; } = [];

    /// <summary>Highest transfer mode (AGP 1, 2, 4, 8); null where not recorded or not applicable.</summary>
    public int? Speed { get; init; }

    /// <summary>The power plug it needs, for example <c>drive-power</c>; empty for none, null where not recorded.</summary>
    public string? PowerPlug { get; init; }

    /// <summary>Monitor outputs, for example <c>vga</c>.</summary>
    public IReadOnlyList<string> Outputs { get; init; } = [];
}

/// <summary>A statement that an operating system can or cannot use a card at all.</summary>
public sealed record OsSupport(Os Os, Support Support, Evidence Evidence);

/// <summary>One physical board. Observations and runs name it.</summary>
public sealed class Specimen
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>What it is a specimen of.</summary>
    public required Card Card { get; init; }

    /// <summary>Version of the BIOS it carries; empty where not read.</summary>
    public string Bios { get; init; } = "";

    /// <summary>Condition and repairs, for people.</summary>
    public string Condition { get; init; } = "";

    /// <summary>True where the collection's owner has it.</summary>
    public bool Owned { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>A price that was asked or paid, as a range; both ends are equal where it was one figure.</summary>
/// <param name="Low">Lower end, in <paramref name="Currency"/>.</param>
/// <param name="High">Upper end.</param>
/// <param name="Currency">Three letters, as in ISO 4217.</param>
/// <param name="Sold">True where a sale was seen, false where it was only asked.</param>
/// <param name="Date">When; null where not recorded.</param>
/// <param name="Condition">Of the board, in words.</param>
public sealed record Price(decimal Low, decimal High, string Currency, bool Sold, DateOnly? Date, string Condition);
