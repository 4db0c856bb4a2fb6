namespace FeatureMatrix.Deciding.Fit;

/// <summary>A kind of slot that this check has rules for.</summary>
public enum SlotKind
{
    /// <summary>Any other; nothing is decided about it except that it is not one of these.</summary>
    Other,

    /// <summary>ISA.</summary>
    Isa,

    /// <summary>VESA local bus.</summary>
    VesaLocal,

    /// <summary>PCI 2.x.</summary>
    Pci,

    /// <summary>AGP, any revision.</summary>
    Agp,
}

/// <summary>Signalling voltages, as a set.</summary>
[Flags]
public enum Signalling
{
    /// <summary>None; where documents are meant, no document was seen.</summary>
    None = 0,

    /// <summary>0.8 V, AGP 3.0.</summary>
    V08 = 1,

    /// <summary>1.5 V, AGP 2.0.</summary>
    V15 = 2,

    /// <summary>3.3 V, AGP 1.0, and PCI.</summary>
    V33 = 4,

    /// <summary>5 V, PCI and the older buses.</summary>
    V50 = 8,
}

/// <summary>The AGP specification a card was designed to.</summary>
public enum AgpDesign
{
    /// <summary>AGP 1.0: 3.3 V.</summary>
    Agp10,

    /// <summary>AGP 2.0: 1.5 V, and 3.3 V where universal.</summary>
    Agp20,

    /// <summary>AGP 3.0: 0.8 V, and lower revisions where universal.</summary>
    Agp30,
}

/// <summary>A monitor connector, on a card or on a monitor.</summary>
public enum VideoConnector
{
    /// <summary>Any other; what it carries is not known.</summary>
    Other,

    /// <summary>15-pin analogue.</summary>
    Vga,

    /// <summary>DVI of a kind that no document states.</summary>
    Dvi,

    /// <summary>DVI with analogue signals only.</summary>
    DviA,

    /// <summary>DVI with digital signals only.</summary>
    DviD,

    /// <summary>DVI with both.</summary>
    DviI,

    /// <summary>S-Video.</summary>
    SVideo,

    /// <summary>Composite video.</summary>
    Composite,
}

/// <summary>What the card's edge and its documents say. Nothing here is inferred: what no document states is left out.</summary>
public sealed record CardDocuments
{
    /// <summary>The slot it is made for.</summary>
    public required SlotKind Slot { get; init; }

    /// <summary>Signalling voltages that its documents state.</summary>
    public Signalling DocumentedSignalling { get; init; }

    /// <summary>Key notches in its edge, by the voltage each stands for; null where nobody looked.</summary>
    public Signalling? Notches { get; init; }

    /// <summary>The AGP specification it was designed to; null where no document says.</summary>
    public AgpDesign? Design { get; init; }

    /// <summary>Highest AGP transfer mode, 1, 2, 4 or 8; null where no document says.</summary>
    public int? HighestMode { get; init; }

    /// <summary>Highest bus clock in MHz by its trade name (33, 66, 40, …); null where no document says.</summary>
    public int? HighestClock { get; init; }

    /// <summary>The power plug it needs; empty for none, null where no document says.</summary>
    public string? PowerPlug { get; init; }

    /// <summary>Its outputs; null where no document says.</summary>
    public IReadOnlyList<VideoConnector>? Outputs { get; init; }
}

/// <summary>What the board's slot and its documents say.</summary>
public sealed record SlotDocuments
{
    /// <summary>The slot.</summary>
    public required SlotKind Slot { get; init; }

    /// <summary>Signalling voltages that the board's documents state.</summary>
    public Signalling DocumentedSignalling { get; init; }

    /// <summary>The one voltage its key stands for, none for an open slot; null where nobody looked.</summary>
    public Signalling? Key { get; init; }

    /// <summary>Highest AGP transfer mode, 1, 2, 4 or 8; null where no document says.</summary>
    public int? HighestMode { get; init; }

    /// <summary>The bus clock in MHz by its trade name (33, 66, 40, …); null where no document says.</summary>
    public int? Clock { get; init; }
}

/// <summary>The memory that one operating system is documented to bear.</summary>
/// <param name="Os">The system.</param>
/// <param name="Mebibytes">The limit; null where no document gives one.</param>
public sealed record OsMemoryLimit(string Os, long? Mebibytes);

/// <summary>What the rest of the PC and its documents say.</summary>
public sealed record RigDocuments
{
    /// <summary>The slot the card is to go into.</summary>
    public required SlotDocuments Slot { get; init; }

    /// <summary>Power plugs that are free; null where nobody looked.</summary>
    public IReadOnlyList<string>? PowerPlugs { get; init; }

    /// <summary>The monitor's inputs; null where no document says.</summary>
    public IReadOnlyList<VideoConnector>? MonitorInputs { get; init; }

    /// <summary>Whether the monitor has a picture tube; null where not recorded, which counts as one.</summary>
    public bool? MonitorHasTube { get; init; }

    /// <summary>Main memory in MiB; null where not recorded.</summary>
    public long? MemoryMebibytes { get; init; }

    /// <summary>The systems to be run, with their documented limits.</summary>
    public IReadOnlyList<OsMemoryLimit> Oses { get; init; } = [];

    /// <summary>True where a driver is to be forced onto the card.</summary>
    public bool DriverForced { get; init; }
}
