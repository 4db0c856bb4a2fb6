using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>The ends of a title on a card in four completions of everything at once.</summary>
/// <param name="Worst">Every unknown missing.</param>
/// <param name="Best">Every unknown at its most hopeful.</param>
/// <param name="OwnBest">
/// Only what belongs to the card or its chip at its most hopeful, what any card may ask about missing: it is at least this good then.
/// </param>
/// <param name="OthersBest">The other way about: it is at most this good then.</param>
/// <param name="IsLoose">
/// True where unknowns play together in a way that ends do not show: the outcome lies between worst and best in every completion, but
/// those four need not reach what they name.
/// </param>
internal readonly record struct CellEnds(Standing Worst, Standing Best, Standing OwnBest, Standing OthersBest, bool IsLoose)
{
    /// <summary>Ends between which nothing more is known.</summary>
    public static CellEnds Between(Standing worst, Standing best) => new(worst, best, worst, best, worst != best);

    /// <summary>True where every completion gives the same.</summary>
    public bool IsCertain => Worst == Best;

    /// <summary>The standing behind a code of either order: at the worst end what nobody graded is severe, at the best end cosmetic.</summary>
    public static Standing StandingOf(ushort code) => OutcomeCode.RankOf(code) is var rank && OutcomeCode.Runs(code)
        ? new Standing(true, rank >> 5, rank & OutcomeCode.MostLosses)
        : Standing.DoesNotRun;
}
