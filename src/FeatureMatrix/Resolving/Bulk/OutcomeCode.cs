namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// Outcomes as numbers: the smaller the better, and losses add up by adding their codes. A code holds three counts of five bits
/// each, the one that matters most in front; the highest bit stands for "does not run".
/// </summary>
/// <example>One severe and two cosmetic losses, at worst: 1 grave, 2 cosmetic, 1 of the grave severe: 1·1024 + 2·32 + 1.</example>
public static class OutcomeCode
{
    /// <summary>The code of a route that does not run; a sum of codes at or above it does not run either.</summary>
    public const ushort DoesNotRun = 0x8000;

    /// <summary>The most losses of one route that a code can count.</summary>
    public const int MostLosses = 31;

    /// <summary>Ordered as <see cref="Outcome.CompareWorst"/>: severe and ungraded losses, cosmetic ones, severe ones.</summary>
    public static ushort AtWorst(Outcome outcome) => Code(outcome, outcome.Severe + outcome.Ungraded, outcome.Cosmetic, outcome.Severe);

    /// <summary>Ordered as <see cref="Outcome.CompareBest"/>: severe losses, cosmetic and ungraded ones, ungraded ones.</summary>
    public static ushort AtBest(Outcome outcome) => Code(outcome, outcome.Severe, outcome.Cosmetic + outcome.Ungraded, outcome.Ungraded);

    /// <summary>True where the code is that of something that runs.</summary>
    public static bool Runs(ushort code) => code < DoesNotRun;

    /// <summary>True where nothing is lost.</summary>
    public static bool IsComplete(ushort code) => code == 0;

    private static ushort Code(Outcome outcome, int first, int second, int third) =>
        outcome.Runs ? (ushort)((first << 10) | (second << 5) | third) : DoesNotRun;
}

/// <summary>What a bulk answer has to be told apart by, beside its ends.</summary>
[Flags]
public enum BulkMarks : ushort
{
    /// <summary>The ends are exact.</summary>
    None = 0,

    /// <summary>Unknowns play together in a way that codes do not show: the ends are sound bounds, and the resolver decides.</summary>
    Entangled = 1,

    /// <summary>A defect hangs on an unknown: entangled where something else of the title asks for the same.</summary>
    OpenVeto = 2,

    /// <summary>The texture preset is reduced, which breaks ties (rule R11).</summary>
    Reduced = 4,
}

/// <summary>What one demand costs a route on one setup.</summary>
/// <param name="Worst">At worst, as <see cref="OutcomeCode.AtWorst"/>.</param>
/// <param name="Best">At best, as <see cref="OutcomeCode.AtBest"/>.</param>
/// <param name="Marks">What the codes do not show.</param>
internal readonly record struct Toll(ushort Worst, ushort Best, BulkMarks Marks);
