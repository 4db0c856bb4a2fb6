using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Readers;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>The catalog while it is being made: a shelf for each kind, and what was wrong so far.</summary>
internal sealed class Draft
{
    public Draft(FaultList faults)
    {
        Faults = faults;
        Sources = new SourceReader(this);
        References = new References(this);
        Supply = new SupplyReader(this);
    }

    public FaultList Faults { get; }

    public SourceReader Sources { get; }

    public References References { get; }

    public SupplyReader Supply { get; }

    public Shelf<Source> SourceShelf { get; } = new("source");

    public Shelf<Person> People { get; } = new("person");

    /// <summary>Features and APIs: both are words of the vocabulary, so they share their ids.</summary>
    public Shelf<Feature> Features { get; } = new("feature");

    public Shelf<Os> Oses { get; } = new("operating system");

    public Shelf<Bus> Buses { get; } = new("bus");

    public Shelf<Chip> Chips { get; } = new("chip");

    public Shelf<Card> Cards { get; } = new("card");

    public Shelf<Specimen> Specimens { get; } = new("specimen");

    public Shelf<DriverBranch> Branches { get; } = new("driver");

    public Shelf<Wrapper> Wrappers { get; } = new("wrapper");

    public Shelf<Engine> Engines { get; } = new("engine");

    public Shelf<Title> Titles { get; } = new("title");

    public Shelf<Rig> Rigs { get; } = new("rig");

    public Shelf<Library> Libraries { get; } = new("library");

    public Shelf<Capture> Captures { get; } = new("capture");

    /// <summary>Entries of the list <c>observations</c>, in the order of files and lines.</summary>
    public List<Node> ObservationNodes { get; } = [];

    /// <summary>Entries of the list <c>facts</c>, in the order of files and lines.</summary>
    public List<Node> FactNodes { get; } = [];

    /// <summary>The map <c>collection</c>; null until it was met.</summary>
    public Fields? Collection { get; set; }

    /// <summary>The BIOS branches that cards bring along, beside those on the shelf.</summary>
    public List<DriverBranch> BiosBranches { get; } = [];

    public List<SupplyFact> Facts { get; } = [];

    /// <summary>The layer of each file, by its path.</summary>
    public Dictionary<string, int> Layers { get; } = new(StringComparer.Ordinal);
}
