using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>Why an <see cref="Answer"/> is what it is.</summary>
public enum AnswerReason
{
    /// <summary>Nobody recorded anything.</summary>
    Silent,

    /// <summary>Facts state it.</summary>
    Stated,

    /// <summary>Facts of equal scope and grade disagree, or hearsay disagrees with a better fact (rule R1).</summary>
    Conflict,

    /// <summary>Only hearsay speaks, which decides nothing for certain.</summary>
    HearsayOnly,

    /// <summary>The driver's general "yes" hands on what the chip has (rule R3).</summary>
    PassedOn,

    /// <summary>The driver claims it for this hardware although the chip has none: emulated, flagged (rule R3).</summary>
    EmulatedOverChip,

    /// <summary>Something known implies it, or rules it out (rule R2).</summary>
    Implied,

    /// <summary>A wrapper version's complete list does not have it (rule R8).</summary>
    LeftOutOfCompleteList,

    /// <summary>Follows from how the parts are recorded, such as the list of a driver.</summary>
    Structure,

    /// <summary>Follows from arithmetic on recorded sizes (rules R10 and R11).</summary>
    Arithmetic,

    /// <summary>It was seen on this very route (rule R15).</summary>
    Observed,

    /// <summary>Observations of this route disagree with each other, or hearsay disagrees with inference (rule R15).</summary>
    ObservationsDisagree,
}

/// <summary>
/// The answer to one question asked on the way to a verdict, with everything it rests on. Either settled, or open with
/// the states that its completions may take.
/// </summary>
public sealed record Answer
{
    /// <summary>The state; <see cref="Model.Support.Unknown"/> where it is open.</summary>
    public required Support Support { get; init; }

    /// <summary>The unknown that has to be settled; null where the answer is settled.</summary>
    public UnknownFact? Open { get; init; }

    /// <summary>The states an open answer may take, lowest first; empty where it is settled.</summary>
    public IReadOnlyList<Support> Possible { get; init; } = [];

    /// <summary>The grade of what decides; null where nothing graded does.</summary>
    public Grade? Grade { get; init; }

    /// <summary>Why.</summary>
    public required AnswerReason Reason { get; init; }

    /// <summary>The facts that decide, or that disagree.</summary>
    public IReadOnlyList<SupplyFact> Facts { get; init; } = [];

    /// <summary>The facts that were outranked; kept and shown (rule R1).</summary>
    public IReadOnlyList<SupplyFact> Losing { get; init; } = [];

    /// <summary>Evidence that is no supply fact: runtime limits, operating-system support, forced installs, defects.</summary>
    public IReadOnlyList<Evidence> Evidence { get; init; } = [];

    /// <summary>The observations that decide or disagree.</summary>
    public IReadOnlyList<Observation> Observations { get; init; } = [];

    /// <summary>What inference alone would have said, where an observation overrides it; null otherwise.</summary>
    public Answer? Inferred { get; init; }

    /// <summary>True where the state is known.</summary>
    public bool IsSettled => Open is null;

    /// <summary>The states it may have: the settled one, or the possible ones.</summary>
    public IReadOnlyList<Support> States => IsSettled ? [Support] : Possible;

    /// <summary>True where something holds of every state it may have.</summary>
    public bool Always(Func<Support, bool> holds) => IsSettled ? holds(Support) : Possible.All(holds);

    /// <summary>True where every state it may have is at least broken, that is: claimed.</summary>
    public bool IsCertainlyPresent => Always(state => state != Support.No);

    /// <summary>True where it is certainly missing.</summary>
    public bool IsCertainlyMissing => IsSettled && Support == Support.No;

    /// <summary>The same answer with a grade no better than the one given (rule R9: forced drivers).</summary>
    public Answer AtMost(Grade limit) => Grade > limit ? this with { Grade = limit } : this;

    /// <summary>A settled answer that follows from how the parts are recorded.</summary>
    public static Answer Structural(bool holds) =>
        new() { Support = holds ? Support.Yes : Support.No, Reason = AnswerReason.Structure };

    /// <summary>An open answer that may be yes or no.</summary>
    public static Answer YesOrNo(UnknownFact open, AnswerReason reason = AnswerReason.Silent) =>
        new() { Support = Support.Unknown, Open = open, Possible = [Support.No, Support.Yes], Reason = reason };

    /// <summary>
    /// The answer that graded statements without a scope give (rule R1): the best grade counts; where it disagrees with
    /// itself it is a conflict, and hearsay decides nothing for certain. Null where there is no statement.
    /// </summary>
    public static Answer? From(IEnumerable<(Support Stated, Evidence Evidence)> statements, UnknownFact open)
    {
        var best = statements.GroupBy(statement => statement.Evidence.Grade).MaxBy(group => group.Key)?.ToList();
        if (best is null)
            return null;
        var (stated, evidence) = best[0];
        if (evidence.Grade > Model.Grade.Hearsay && stated != Support.Unknown && best.TrueForAll(statement => statement.Stated == stated))
            return new Answer { Support = stated, Grade = evidence.Grade, Reason = AnswerReason.Stated, Evidence = [.. best.Select(statement => statement.Evidence)] };
        var reason = evidence.Grade == Model.Grade.Hearsay ? AnswerReason.HearsayOnly
            : best.Count == 1 ? AnswerReason.Silent
            : AnswerReason.Conflict;
        return YesOrNo(open, reason) with { Evidence = [.. best.Select(statement => statement.Evidence)] };
    }
}
