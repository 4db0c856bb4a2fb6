namespace FeatureMatrix.Model;

/// <summary>An operating system of the period, with what it can have and its limits.</summary>
public sealed class Os
{
    /// <summary>Kebab-case, for example <c>windows-98se</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The name in full.</summary>
    public required string Name { get; init; }

    /// <summary>True where the card's BIOS and a loaded VBE extension stand in the driver's place (rule R7).</summary>
    public bool IsDos { get; init; }

    /// <summary>What is known of the runtimes it can have. Silence is unknown.</summary>
    public IReadOnlyList<RuntimeLimit> Runtimes { get; init; } = [];

    /// <summary>Documented limits on memory, processors and disks, for people to read and for the fit check.</summary>
    public IReadOnlyList<OsLimit> Limits { get; init; } = [];

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>The highest runtime of an API that an operating system can have.</summary>
/// <param name="Api">An API with <see cref="Feature.NeedsRuntime"/>.</param>
/// <param name="Highest">The highest level's step; 0 where it can have none at all.</param>
/// <param name="Evidence">Who says so.</param>
public sealed record RuntimeLimit(Feature Api, int Highest, Evidence Evidence);

/// <summary>A limit of an operating system.</summary>
/// <param name="Kind">What is limited.</param>
/// <param name="Amount">MiB for memory, a count for processors, decimal gigabytes for disks; null where only the text is known.</param>
/// <param name="Text">The limit in words, with its conditions.</param>
/// <param name="Evidence">Who says so.</param>
public sealed record OsLimit(OsLimitKind Kind, long? Amount, string Text, Evidence Evidence);

/// <summary>What an <see cref="OsLimit"/> is about.</summary>
public enum OsLimitKind
{
    /// <summary>Main memory, MiB.</summary>
    Memory,

    /// <summary>Processors it uses.</summary>
    Processors,

    /// <summary>Disk size, decimal gigabytes.</summary>
    Disk,
}

/// <summary>A kind of slot or bus, for the fit check and the card pages.</summary>
public sealed class Bus
{
    /// <summary>Kebab-case, for example <c>agp-1.0</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The name in full.</summary>
    public required string Name { get; init; }

    /// <summary>What to know about it: width, clock, signalling, keying.</summary>
    public string Meaning { get; init; } = "";

    /// <summary>Peak transfer in MB/s (10^6 bytes); null where no single figure is documented.</summary>
    public double? PeakMegabytesPerSecond { get; init; }

    /// <summary>Who says so.</summary>
    public required Evidence Evidence { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Id;
}
