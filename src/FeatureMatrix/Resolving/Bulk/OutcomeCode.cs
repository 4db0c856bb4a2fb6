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

    /// <summary>
    /// The first two counts of a code: its rank among standings, in which every loss is severe or cosmetic. At the worst end what nobody
    /// graded is severe, at the best end cosmetic.
    /// </summary>
    public static int RankOf(ushort code) => Runs(code) ? code >> 5 : DoesNotRun >> 5;

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

    /// <summary>It hangs on something that nobody knows of the title, whatever the card.</summary>
    OfTitle = 8,

    /// <summary>As <see cref="OfTitle"/>, and perhaps on more than one such thing.</summary>
    OfTitleSeveral = 16,

    /// <summary>It hangs on something that nobody knows of a wrapper or an operating system.</summary>
    Anywhere = 32,

    /// <summary>What is open about it belongs to this card, or hangs on facts about this card, so that cards with the same chip may differ.</summary>
    OfCard = 64,
}

/// <summary>What is at its most hopeful in a completion of everything at once; the rest is missing.</summary>
[Flags]
public enum Hope
{
    /// <summary>Everything is missing.</summary>
    None = 0,

    /// <summary>What belongs to the card or its chip.</summary>
    Own = 1,

    /// <summary>What belongs to the title: losses that nobody graded are cosmetic.</summary>
    Title = 2,

    /// <summary>What belongs to wrappers and operating systems.</summary>
    Anywhere = 4,

    /// <summary>What belongs to no card.</summary>
    Others = Title | Anywhere,

    /// <summary>Everything.</summary>
    All = Own | Others,
}

/// <summary>What one demand costs a route on one setup.</summary>
/// <param name="Worst">At worst, as <see cref="OutcomeCode.AtWorst"/>.</param>
/// <param name="Best">At best, as <see cref="OutcomeCode.AtBest"/>.</param>
/// <param name="Marks">What the codes do not show.</param>
internal readonly record struct Toll(ushort Worst, ushort Best, BulkMarks Marks)
{
    /// <summary>Where only what belongs to the card or its chip is at its most hopeful, and the other mixtures of <see cref="Hope"/>.</summary>
    public ushort Own { get; init; } = Best;

    /// <inheritdoc cref="Own"/>
    public ushort Title { get; init; } = Worst;

    /// <inheritdoc cref="Own"/>
    public ushort OwnAndTitle { get; init; } = Best;

    /// <inheritdoc cref="Own"/>
    public ushort Anywhere { get; init; } = Worst;

    /// <inheritdoc cref="Own"/>
    public ushort OwnAndAnywhere { get; init; } = Best;

    /// <inheritdoc cref="Own"/>
    public ushort Others { get; init; } = Worst;

    /// <summary>
    /// What it costs in a completion of everything at once; ordered as at best where what belongs to the title is at its most hopeful, else
    /// as at worst.
    /// </summary>
    public ushort In(Hope hope) => hope switch
    {
        Hope.None => Worst,
        Hope.Own => Own,
        Hope.Title => Title,
        Hope.Own | Hope.Title => OwnAndTitle,
        Hope.Anywhere => Anywhere,
        Hope.Own | Hope.Anywhere => OwnAndAnywhere,
        Hope.Others => Others,
        _ => Best,
    };
}
