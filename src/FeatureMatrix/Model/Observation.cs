namespace FeatureMatrix.Model;

/// <summary>
/// What was seen with one exact route. It outranks inference for the routes whose keys it states, and only for what was
/// looked at (rule R15). Parts left null were not stated.
/// </summary>
public sealed class Observation
{
    /// <summary>The graphics path that was watched.</summary>
    public required Renderer Renderer { get; init; }

    /// <summary>The card; null where only the chip or the driver was noted.</summary>
    public Card? Card { get; init; }

    /// <summary>The physical board; its card is <see cref="Card"/>.</summary>
    public Specimen? Specimen { get; init; }

    /// <summary>The driver; ranges are not allowed.</summary>
    public Driver? Driver { get; init; }

    /// <summary>The operating system.</summary>
    public Os? Os { get; init; }

    /// <summary>What was said about a wrapper.</summary>
    public required ObservedWrapper Wrapper { get; init; }

    /// <summary>The mode; null where not stated.</summary>
    public Mode? Mode { get; init; }

    /// <summary>The colour depth in bits; null where not stated.</summary>
    public int? Depth { get; init; }

    /// <summary>The rig; counts for timing hazards and rig facts only.</summary>
    public Rig? Rig { get; init; }

    /// <summary>Whether the title ran; null where only features were noted.</summary>
    public bool? Runs { get; init; }

    /// <summary>What was looked at, and what was seen of it: yes, broken or no.</summary>
    public IReadOnlyList<SeenFeature> Seen { get; init; } = [];

    /// <summary>When; null where not recorded.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Remarks, for people.</summary>
    public string Note { get; init; } = "";

    /// <summary>Who saw it, and how good the sighting is.</summary>
    public required Evidence Evidence { get; init; }
}

/// <summary>A capability that somebody looked at, and what they saw.</summary>
public sealed record SeenFeature(Capability Capability, Support Seen);

/// <summary>What an observation says about a wrapper.</summary>
public abstract record ObservedWrapper
{
    private ObservedWrapper()
    {
    }

    /// <summary>Nothing: the observation applies to native and wrapped routes alike.</summary>
    public sealed record NotStated : ObservedWrapper
    {
        /// <summary>The only one.</summary>
        public static NotStated Instance { get; } = new();
    }

    /// <summary>No wrapper was in use.</summary>
    public sealed record None : ObservedWrapper
    {
        /// <summary>The only one.</summary>
        public static None Instance { get; } = new();
    }

    /// <summary>This version was in use.</summary>
    public sealed record Version(WrapperVersion Used) : ObservedWrapper;
}
