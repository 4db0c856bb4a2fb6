namespace FeatureMatrix.Model;

/// <summary>What stands between an operating system and the card.</summary>
public enum DriverKind
{
    /// <summary>A driver package.</summary>
    Package,

    /// <summary>The card's own BIOS, which takes the driver's place in DOS (rule R7).</summary>
    Bios,

    /// <summary>A VBE extension loaded in DOS.</summary>
    VbeExtension,

    /// <summary>The driver that an incomplete list may have left out (rule R6, "what is open").</summary>
    Unrecorded,
}

/// <summary>A line of drivers whose versions have a declared order, oldest first.</summary>
public sealed class DriverBranch
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>The branch's name.</summary>
    public required string Name { get; init; }

    /// <summary>Who published it.</summary>
    public string Maker { get; init; } = "";

    /// <summary>Its versions, oldest first.</summary>
    public IReadOnlyList<Driver> Versions { get; private set; } = [];

    /// <summary>Completes the links. Called once, by the loader.</summary>
    public void Link(IReadOnlyList<Driver> versions) => Versions = versions;

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>One version of a driver, a card's BIOS or a VBE extension.</summary>
public sealed class Driver
{
    /// <summary>Branch and version, for example <c>heron-9x@2.10</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What kind of driver it is.</summary>
    public DriverKind Kind { get; init; }

    /// <summary>The branch it belongs to.</summary>
    public required DriverBranch Branch { get; init; }

    /// <summary>The version, kept as text exactly as its publisher wrote it.</summary>
    public required string Version { get; init; }

    /// <summary>Its place in the branch, the oldest being 0.</summary>
    public required int Order { get; init; }

    /// <summary>The operating systems it installs on.</summary>
    public IReadOnlyList<Os> Oses { get; init; } = [];

    /// <summary>The cards that the package lists. A card of the same chip that is not among them can only be forced.</summary>
    public IReadOnlyList<Card> Lists { get; init; } = [];

    /// <summary>What is known of forcing it onto cards that it does not list (rule R9).</summary>
    public IReadOnlyList<ForcedInstall> Forced { get; init; } = [];

    /// <summary>
    /// True where the processor draws instead of the card, as a report of the driver gives away. Its routes are software
    /// rendering and never count as the card's support (rule R7).
    /// </summary>
    public bool IsSoftware { get; init; }

    /// <summary>When it was published; null where not recorded.</summary>
    public DateOnly? Released { get; init; }

    /// <summary>Checksum of the package in lower-case hexadecimal; empty where not recorded.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>Remarks, Markdown.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Who describes it.</summary>
    public required Evidence Evidence { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>A statement about forcing a driver onto a card that it does not list.</summary>
/// <param name="Card">The card.</param>
/// <param name="Works">Yes or no; <see cref="Support.Unknown"/> where it was tried without a clear result.</param>
/// <param name="Evidence">Who says so.</param>
public sealed record ForcedInstall(Card Card, Support Works, Evidence Evidence);

/// <summary>A run of versions in one branch, both ends included.</summary>
public sealed record DriverRange(DriverBranch Branch, int First, int Last)
{
    /// <summary>The range that holds one version only.</summary>
    public static DriverRange Only(Driver driver) => new(driver.Branch, driver.Order, driver.Order);

    /// <summary>True where the driver is one of these versions.</summary>
    public bool Contains(Driver driver) => driver.Branch == Branch && driver.Order >= First && driver.Order <= Last;

    /// <summary>True where every version of the other range is in this one.</summary>
    public bool Contains(DriverRange other) => other.Branch == Branch && other.First >= First && other.Last <= Last;

    /// <summary>The one operating system that all versions here share and need; null where there are several.</summary>
    public Os? OnlyOs()
    {
        Os? only = null;
        for (var i = First; i <= Last; i++)
        {
            var oses = Branch.Versions[i].Oses;
            if (oses.Count != 1 || (only is not null && only != oses[0]))
                return null;
            only = oses[0];
        }

        return only;
    }
}
