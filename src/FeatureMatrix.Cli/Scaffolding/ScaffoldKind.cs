namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>Something that <c>new</c> starts a file for, and the folder its files usually lie in.</summary>
internal enum ScaffoldKind
{
    Chip,
    Card,
    Specimen,
    Driver,
    Wrapper,
    Engine,
    Title,
    Rig,
    Library,
    Observation,
}

/// <summary>What a scaffold is filled with. Empty where nobody said anything.</summary>
internal sealed record ScaffoldAnswers
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>The chip of a card, or the chip that a new chip is like.</summary>
    public string Chip { get; init; } = "";

    /// <summary>The engine of a title.</summary>
    public string Engine { get; init; } = "";

    /// <summary>What a title asks of the driver or a wrapper offers to titles, such as <c>direct3d 6</c>.</summary>
    public string Api { get; init; } = "";

    /// <summary>What a wrapper stands on.</summary>
    public string On { get; init; } = "";

    public IReadOnlyList<string> Oses { get; init; } = [];

    /// <summary>The cards that a driver lists.</summary>
    public IReadOnlyList<string> Cards { get; init; } = [];

    /// <summary>The card of a specimen, or on which something was seen.</summary>
    public string Card { get; init; } = "";

    /// <summary>The title that was seen.</summary>
    public string Title { get; init; } = "";

    /// <summary>Its renderer; empty where it has one only.</summary>
    public string Renderer { get; init; } = "";

    /// <summary>The driver with its version, such as <c>ox-9x 1.02</c>.</summary>
    public string Driver { get; init; } = "";

    /// <summary><c>none</c>, or a wrapper with its version, such as <c>duskglass@1.4</c>.</summary>
    public string Wrapper { get; init; } = "";

    /// <summary>Whether it ran: <c>yes</c> or <c>no</c>.</summary>
    public string Runs { get; init; } = "";

    /// <summary>The titles of a library.</summary>
    public IReadOnlyList<string> Titles { get; init; } = [];

    /// <summary>The value of <c>source</c>, in YAML.</summary>
    public required string Source { get; init; }

    /// <summary>What a chip or an engine already brings, one remark a line.</summary>
    public IReadOnlyList<string> Inherited { get; init; } = [];
}
