namespace FeatureMatrix.Model;

/// <summary>
/// Everything that was loaded: the vocabulary and one collection, linked and immutable. Lists are in a fixed order
/// (by id, or as declared where order means something), so that the order of files does not matter.
/// </summary>
public sealed class Catalog
{
    /// <summary>The collection's name, for headings.</summary>
    public string Name { get; init; } = "";

    /// <summary>What its owner says of it, Markdown; empty for nothing.</summary>
    public string Note { get; init; } = "";

    /// <summary>The currency that its owner counts in, three letters as in ISO 4217; empty where not stated.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Features and APIs.</summary>
    public IReadOnlyList<Feature> Features { get; init; } = [];

    /// <summary>Operating systems.</summary>
    public IReadOnlyList<Os> Oses { get; init; } = [];

    /// <summary>Buses.</summary>
    public IReadOnlyList<Bus> Buses { get; init; } = [];

    /// <summary>Chips.</summary>
    public IReadOnlyList<Chip> Chips { get; init; } = [];

    /// <summary>Cards.</summary>
    public IReadOnlyList<Card> Cards { get; init; } = [];

    /// <summary>Specimens.</summary>
    public IReadOnlyList<Specimen> Specimens { get; init; } = [];

    /// <summary>Driver branches, with their versions.</summary>
    public IReadOnlyList<DriverBranch> Branches { get; init; } = [];

    /// <summary>Wrappers, with their versions.</summary>
    public IReadOnlyList<Wrapper> Wrappers { get; init; } = [];

    /// <summary>Titles, with their renderers.</summary>
    public IReadOnlyList<Title> Titles { get; init; } = [];

    /// <summary>Rigs.</summary>
    public IReadOnlyList<Rig> Rigs { get; init; } = [];

    /// <summary>Libraries.</summary>
    public IReadOnlyList<Library> Libraries { get; init; } = [];

    /// <summary>All statements about supply: of chips, cards, drivers and what drivers offer.</summary>
    public IReadOnlyList<SupplyFact> Facts { get; init; } = [];

    /// <summary>What was seen.</summary>
    public IReadOnlyList<Observation> Observations { get; init; } = [];

    /// <summary>Pictures of titles on cards.</summary>
    public IReadOnlyList<Capture> Captures { get; init; } = [];

    /// <summary>What was measured.</summary>
    public IReadOnlyList<Run> Runs { get; init; } = [];

    /// <summary>The sources that statements name.</summary>
    public IReadOnlyList<Source> Sources { get; init; } = [];

    /// <summary>All driver versions of all branches.</summary>
    public IEnumerable<Driver> Drivers => Branches.SelectMany(branch => branch.Versions);

    /// <summary>All versions of all wrappers.</summary>
    public IEnumerable<WrapperVersion> WrapperVersions => Wrappers.SelectMany(wrapper => wrapper.Versions);
}
