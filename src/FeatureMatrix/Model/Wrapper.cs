namespace FeatureMatrix.Model;

/// <summary>A layer that offers one API on top of another. Everything that matters is said of its versions.</summary>
public sealed class Wrapper
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>The wrapper's name.</summary>
    public required string Name { get; init; }

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Its versions, oldest first. The list is closed: versions that nobody wrote down do not count.</summary>
    public IReadOnlyList<WrapperVersion> Versions { get; private set; } = [];

    /// <summary>Completes the links. Called once, by the loader.</summary>
    public void Link(IReadOnlyList<WrapperVersion> versions) => Versions = versions;

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>One version of a wrapper (rule R8).</summary>
public sealed class WrapperVersion
{
    /// <summary>Wrapper and version, for example <c>duskglass@1.4</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The wrapper.</summary>
    public required Wrapper Wrapper { get; init; }

    /// <summary>The version, kept as text exactly as its publisher wrote it.</summary>
    public required string Version { get; init; }

    /// <summary>The APIs it offers to titles, each at the highest level it understands.</summary>
    public required IReadOnlyList<Capability> Offers { get; init; }

    /// <summary>The API and level it asks of the card's driver.</summary>
    public required Capability Target { get; init; }

    /// <summary>The runtime it needs of the operating system; the target's own level unless it says otherwise.</summary>
    public required Capability Runtime { get; init; }

    /// <summary>What it supplies by itself, whatever the card. The scope of these facts is not used.</summary>
    public IReadOnlyList<SupplyFact> Supplies { get; init; } = [];

    /// <summary>What it hands through: supplied exactly if card, driver and operating system do at the target API.</summary>
    public IReadOnlyList<Feature> Passes { get; init; } = [];

    /// <summary>True where what is neither supplied nor passed is declared missing rather than unknown.</summary>
    public bool IsComplete { get; init; }

    /// <summary>What it needs of card and driver at the target API; a need not met stops it.</summary>
    public IReadOnlyList<WrapperNeed> Needs { get; init; } = [];

    /// <summary>What is known of the operating systems it runs on. Silence is unknown.</summary>
    public IReadOnlyList<OsSupport> Oses { get; init; } = [];

    /// <summary>Video memory it needs at least, in bytes; 0 where it asks for none.</summary>
    public long VideoMemoryBytes { get; init; }

    /// <summary>What it costs: speed, memory, comfort; for people.</summary>
    public string Costs { get; init; } = "";

    /// <summary>Checksum of the package in lower-case hexadecimal; empty where not recorded.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>Who describes it.</summary>
    public required Evidence Evidence { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>Something a wrapper cannot do without.</summary>
public sealed record WrapperNeed(Capability Capability, Evidence Evidence);
