namespace FeatureMatrix.Resolving;

/// <summary>
/// The outcomes that the completions of the unknowns allow (rule R13). Certain only where they are one outcome: the same
/// losses, strengths and kinds.
/// </summary>
public sealed record OutcomeRange
{
    /// <summary>The best outcome of all completions; exact even where the rest are bounds.</summary>
    public required Outcome Best { get; init; }

    /// <summary>The worst outcome; where <see cref="IsExact"/> is false, one that no completion falls below.</summary>
    public required Outcome Worst { get; init; }

    /// <summary>The distinct outcomes, best first; empty where there are too many to list.</summary>
    public IReadOnlyList<Outcome> Outcomes { get; init; } = [];

    /// <summary>False past the limit on completions, where only bounds are given.</summary>
    public bool IsExact { get; init; } = true;

    /// <summary>The unknowns for which some completion of the rest lets the answer change the outcome.</summary>
    public IReadOnlyList<UnknownFact> Deciding { get; init; } = [];

    /// <summary>True where every completion gives the same outcome.</summary>
    public bool IsCertain => IsExact && Outcomes.Count == 1;

    /// <summary>True where it runs in every completion.</summary>
    public bool CertainlyRuns => Worst.Runs;

    /// <summary>True where it runs in no completion.</summary>
    public bool CertainlyFails => !Best.Runs;

    /// <summary>
    /// An outcome that none of these betters where ungraded losses count as severe; <see cref="Best"/> counts them as cosmetic.
    /// Where the outcomes are not listed it is better than any.
    /// </summary>
    internal Outcome Mildest => Outcomes.Order(Comparer<Outcome>.Create(Outcome.CompareWorst)).FirstOrDefault() ?? Outcome.Works;

    /// <summary>A range of one outcome.</summary>
    public static OutcomeRange Certain(Outcome outcome) => new() { Best = outcome, Worst = outcome, Outcomes = [outcome] };

    /// <summary>
    /// Negative where the first is better in its worst completion, then in its best (rule R16).
    /// </summary>
    public static int Compare(OutcomeRange one, OutcomeRange other)
    {
        var result = Outcome.CompareAtWorst(one.Worst, other.Worst);
        return result != 0 ? result : Outcome.CompareAtBest(one.Best, other.Best);
    }
}
