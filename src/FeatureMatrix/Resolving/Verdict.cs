using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>The outcome half of a label (rule R14).</summary>
public enum OutcomeLabel
{
    /// <summary>Runs with nothing lost, for certain.</summary>
    Works,

    /// <summary>Runs with known losses, for certain.</summary>
    Loses,

    /// <summary>Runs for certain; what is lost is not known.</summary>
    RunsNotKnown,

    /// <summary>Runs in every completion, but no single route does.</summary>
    RunsByOneOf,

    /// <summary>Nobody knows whether it runs; at best it does so with the best outcome.</summary>
    NotKnown,

    /// <summary>Does not run, for certain, by the routes listed.</summary>
    DoesNotRun,
}

/// <summary>The route half of a label (rule R14).</summary>
public enum RouteLabel
{
    /// <summary>Without a wrapper.</summary>
    Natively,

    /// <summary>Through a wrapper, and every native route certainly fails.</summary>
    WrapperOnly,

    /// <summary>Through a wrapper; nobody knows whether a native route runs.</summary>
    NativeNotKnown,

    /// <summary>Through a wrapper; the native routes that may run are not permitted.</summary>
    NativeNotPermitted,

    /// <summary>Through a wrapper; a native route runs, but only with a forced driver.</summary>
    NativeOnlyForced,

    /// <summary>No route runs.</summary>
    None,
}

/// <summary>One route with its outcomes.</summary>
public sealed record RouteFinding(RouteForm Form, OutcomeRange Range)
{
    /// <summary>The route.</summary>
    public Route Route => Form.Route;

    /// <summary>
    /// The weakest grade among the answers that the outcome rests on; null where nothing graded decides. Silent about what
    /// is open.
    /// </summary>
    public Grade? WeakestGrade => Form.Gates.Select(gate => gate.Answer.Grade)
        .Concat(Form.Needs.SelectMany(need => need.Choices.Take(1).Select(choice => choice.Answer.Grade))).Min();

    /// <summary>True where somebody watched this very route.</summary>
    public bool IsObserved => Form.Observations.Count > 0;

    /// <summary>
    /// Negative where the first is to be preferred: better in its worst completion, then in its best, then textures not
    /// reduced, then native, then listed (rules R11 and R16).
    /// </summary>
    public static int Compare(RouteFinding one, RouteFinding other)
    {
        var result = OutcomeRange.Compare(one.Range, other.Range);
        return result != 0 ? result : ComparePreference(one, other);
    }

    /// <summary>As <see cref="Compare"/> for two routes with equally good outcomes.</summary>
    public static int ComparePreference(RouteFinding one, RouteFinding other)
    {
        var result = one.Form.Textures.IsReduced.CompareTo(other.Form.Textures.IsReduced);
        return result != 0 ? result : Route.ComparePreference(one.Route, other.Route);
    }
}

/// <summary>What a cell says first (rule R16).</summary>
public sealed record Headline
{
    /// <summary>The outcome half of the label.</summary>
    public required OutcomeLabel Outcome { get; init; }

    /// <summary>The route half of the label.</summary>
    public required RouteLabel Route { get; init; }

    /// <summary>The outcomes.</summary>
    public required OutcomeRange Range { get; init; }

    /// <summary>The route it goes by; several where one of them runs in each completion; none where nothing runs.</summary>
    public required IReadOnlyList<RouteFinding> By { get; init; }

    /// <summary>The unknowns that decide.</summary>
    public IReadOnlyList<UnknownFact> Deciding => Range.Deciding;

    /// <summary>True where every route it goes by has a forced driver.</summary>
    public bool IsForced => By.Count > 0 && By.All(finding => finding.Route.IsForced);
}

/// <summary>What the resolver decides about a title on one setup, or on all setups of a card.</summary>
public sealed record Verdict
{
    /// <summary>The title.</summary>
    public required Title Title { get; init; }

    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>The operating system, where only one was asked about; null otherwise.</summary>
    public Os? Os { get; init; }

    /// <summary>The setups that were looked at; none where the card has no driver there.</summary>
    public required IReadOnlyList<Setup> Setups { get; init; }

    /// <summary>The terms.</summary>
    public required Terms Terms { get; init; }

    /// <summary>What to say first.</summary>
    public required Headline Headline { get; init; }

    /// <summary>Permitted wrapped or forced routes that are, or may be, milder than the headline; best first.</summary>
    public IReadOnlyList<RouteFinding> Alternatives { get; init; } = [];

    /// <summary>The route to use; null where none runs for certain or perhaps.</summary>
    public RouteFinding? Recommended { get; init; }

    /// <summary>The best permitted route in each completion: what scores and comparisons use.</summary>
    public required OutcomeRange Overall { get; init; }

    /// <summary>Every route that was looked at, permitted or not, in order of preference.</summary>
    public required IReadOnlyList<RouteFinding> Routes { get; init; }

    /// <summary>Routes on drivers that are software themselves, which are not among <see cref="Routes"/> (rule R7).</summary>
    internal IReadOnlyList<RouteFinding> OnSoftwareDrivers { get; init; } = [];

    /// <summary>
    /// Renderers by which the processor draws: software renderers that exist on the setups' operating systems, and those that
    /// certainly run on a driver that is software itself. Shown apart (rule R7).
    /// </summary>
    public IReadOnlyList<Renderer> Software { get; init; } = [];

    /// <summary>True where every accelerated route certainly fails and a software one runs.</summary>
    public bool IsSoftwareOnly => Headline.Outcome == OutcomeLabel.DoesNotRun && Software.Count > 0;

    /// <summary>Observations that contradict the facts on any route looked at.</summary>
    public IEnumerable<Contradiction> Contradictions => Routes.SelectMany(finding => finding.Form.Contradictions).Distinct();
}
