namespace FeatureMatrix.Model;

/// <summary>One measured run. Every run is kept; a discarded one says why (DESIGN section 6).</summary>
public sealed record Run
{
    /// <summary>The title.</summary>
    public required Title Title { get; init; }

    /// <summary>The scene, demo or place that was run; runs are compared within one scene only.</summary>
    public string Scene { get; init; } = "";

    /// <summary>The graphics path; null where not noted.</summary>
    public Renderer? Renderer { get; init; }

    /// <summary>The wrapper version in use; null for none.</summary>
    public WrapperVersion? Wrapper { get; init; }

    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>The physical board; null where not noted.</summary>
    public Specimen? Specimen { get; init; }

    /// <summary>The driver; null where not noted.</summary>
    public Driver? Driver { get; init; }

    /// <summary>The operating system; null where not noted.</summary>
    public Os? Os { get; init; }

    /// <summary>The rig; null where not noted.</summary>
    public Rig? Rig { get; init; }

    /// <summary>The mode; null where not noted.</summary>
    public Mode? Mode { get; init; }

    /// <summary>Colour depth in bits; null where not noted.</summary>
    public int? Depth { get; init; }

    /// <summary>Everything else that was set, by name: samples, filtering, preset, vsync, sound and any factor.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Settings { get; init; } = [];

    /// <summary>Which repetition this is, from 1.</summary>
    public int Number { get; init; } = 1;

    /// <summary>Average frames a second; null for a synthetic score.</summary>
    public double? Fps { get; init; }

    /// <summary>Lowest frames a second; null where not noted.</summary>
    public double? LowestFps { get; init; }

    /// <summary>Speeds that a share of the frames stays under; empty where not noted.</summary>
    public IReadOnlyList<FpsPercentile> Percentiles { get; init; } = [];

    /// <summary>Name of the file that holds the time of every frame; empty where there is none.</summary>
    public string FrameTimes { get; init; } = "";

    /// <summary>A synthetic result; null for a frame rate.</summary>
    public Score? Score { get; init; }

    /// <summary>Why the run does not count; empty where it does.</summary>
    public string Discarded { get; init; } = "";

    /// <summary>When; null where not noted.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Remarks, for people.</summary>
    public string Note { get; init; } = "";

    /// <summary>Who ran it.</summary>
    public required Evidence Evidence { get; init; }
}

/// <summary>A speed that a share of the frames stays under.</summary>
/// <param name="Percent">Of the frames, above 0 and below 100.</param>
/// <param name="Fps">Frames a second, 0 or more.</param>
public readonly record struct FpsPercentile(double Percent, double Fps);

/// <summary>A result that is no frame rate.</summary>
/// <param name="Value">The figure.</param>
/// <param name="Unit">Its unit, as the program prints it.</param>
/// <param name="HigherIsBetter">False for times.</param>
public sealed record Score(double Value, string Unit, bool HigherIsBetter);
