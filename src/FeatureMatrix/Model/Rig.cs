namespace FeatureMatrix.Model;

/// <summary>The PC that the card goes into.</summary>
public sealed class Rig
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>What its owner calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Processor family, for timing thresholds; empty where not recorded.</summary>
    public string ProcessorFamily { get; init; } = "";

    /// <summary>Processor clock in MHz; null where not recorded.</summary>
    public double? Megahertz { get; init; }

    /// <summary>Processor cores that the operating systems see; null where not recorded.</summary>
    public int? Cores { get; init; }

    /// <summary>Main memory in MiB; null where not recorded.</summary>
    public int? MemoryMebibytes { get; init; }

    /// <summary>Chipset; empty where not recorded.</summary>
    public string Chipset { get; init; } = "";

    /// <summary>Sound card; empty where not recorded.</summary>
    public string Sound { get; init; } = "";

    /// <summary>Slots for graphics cards, with what the board's documents say of them.</summary>
    public IReadOnlyList<RigSlot> Slots { get; init; } = [];

    /// <summary>The monitor and its documented limits; null where not recorded.</summary>
    public Monitor? Monitor { get; init; }

    /// <summary>Power plugs that are free, for example <c>drive-power</c>; null where not recorded.</summary>
    public IReadOnlyList<string>? PowerPlugs { get; init; }

    /// <summary>The operating systems installed on it.</summary>
    public IReadOnlyList<Os> Oses { get; init; } = [];

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>A slot of a rig.</summary>
public sealed record RigSlot
{
    /// <summary>The bus.</summary>
    public required Bus Bus { get; init; }

    /// <summary>Signalling voltages that the board's documents state; empty where no document was seen.</summary>
    public IReadOnlyList<double> DocumentedVolts { get; init; } = [];

    /// <summary>Highest transfer mode (AGP 1, 2, 4, 8); null where not recorded or not applicable.</summary>
    public int? Speed { get; init; }

    /// <summary>The voltage the slot's key stands for; null for an open slot or where nobody looked.</summary>
    public double? Key { get; init; }
}

/// <summary>A monitor's documented limits. Timings beyond them can damage an old one.</summary>
/// <param name="Name">The monitor.</param>
/// <param name="Highest">The highest mode its documents allow; null where not recorded.</param>
/// <param name="RefreshHertz">The refresh the owner uses, in Hz; null where not recorded.</param>
/// <param name="Inputs">Its inputs, for example <c>vga</c>.</param>
public sealed record Monitor(string Name, Mode? Highest, double? RefreshHertz, IReadOnlyList<string> Inputs);
