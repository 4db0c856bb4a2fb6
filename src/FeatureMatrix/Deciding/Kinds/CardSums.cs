using FeatureMatrix.Model;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>What a card comes to in one completion.</summary>
/// <param name="Score">Between which ends its score lies; a point where they are known.</param>
/// <param name="Misses">Whether it misses a must-have; null where that is not known.</param>
internal readonly record struct CardState(ScoreInterval Score, bool? Misses);

/// <summary>The sums of a library's titles on one card.</summary>
internal sealed class CardSums
{
    private readonly Dictionary<Hope, CardState> _states = [];

    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>Weight × worth of each group of titles, over all completions.</summary>
    public required IReadOnlyList<ScoreInterval> Worths { get; init; }

    /// <summary>Its score over all completions; both ends are reached where <see cref="IsExact"/>.</summary>
    public required ScoreInterval Score { get; init; }

    /// <summary>False where some title is loose, so that the ends of the score are bounds.</summary>
    public required bool IsExact { get; init; }

    /// <summary>True where some completion may miss a must-have.</summary>
    public required bool MayMiss { get; init; }

    /// <summary>True where some completion may cover all must-haves.</summary>
    public required bool MayCover { get; init; }

    /// <summary>The must-haves with what is known of each.</summary>
    public required IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> MustHaves { get; init; }

    /// <summary>What it comes to in a completion: of none, all, the card's own or the others.</summary>
    public CardState In(Hope hope) => _states[hope];

    /// <summary>Sums up a library on a card.</summary>
    public static CardSums Of(KindTable kinds, Prospects prospects, Card card, WorthTable worths)
    {
        var groups = kinds.Groups;
        var all = groups.Select((_, i) => kinds.Ends(card, i)).ToList();
        var mustHaves = groups.Zip(all, (group, ends) => (group.Entry, Ends: ends)).Where(one => one.Entry.IsMustHave).ToList();
        var coverages = mustHaves.Select(one => CoverageOf(one.Entry, one.Ends.Worst, one.Ends.Best)).ToList();
        var sums = new CardSums
        {
            Card = card,
            Worths = groups.Zip(all, (group, ends) => Worth(group, ends.Worst, ends.Best)).ToList(),
            Score = Sum(ends => (ends.Worst, ends.Best)),
            IsExact = !all.Exists(ends => ends.IsLoose),
            MayMiss = coverages.Exists(coverage => coverage != Coverage.Covered),
            MayCover = !coverages.Contains(Coverage.Missed),
            // Between loose ends lies more than their own two: only the title itself tells.
            MustHaves = mustHaves.Zip(coverages, (one, found) => (one.Entry, one.Ends.IsLoose ? prospects.Stake(one.Entry, card).CoverageUnder(prospects.Policy) : found)).ToList(),
        };
        foreach (var hope in (Hope[])[Hope.None, Hope.All, Hope.Own, Hope.Others])
            sums._states[hope] = new CardState(Sum(ends => EndsIn(hope, ends)), MissesIn(hope));
        return sums;

        ScoreInterval Worth(TitleGroup group, Standing worst, Standing best) => new(group.Weight * worths.Of(worst), group.Weight * worths.Of(best));

        ScoreInterval Sum(Func<CellEnds, (Standing Worst, Standing Best)> endsOf)
        {
            var total = new ScoreInterval(0, 0);
            for (var i = 0; i < groups.Count; i++)
            {
                var (worst, best) = endsOf(all[i]);
                total += Worth(groups[i], worst, best);
            }

            return total;
        }

        bool? MissesIn(Hope hope)
        {
            var found = mustHaves.Select(one => EndsIn(hope, one.Ends) is var (worst, best) ? CoverageOf(one.Entry, worst, best) : default).ToList();
            if (found.Contains(Coverage.Missed))
                return true;
            return found.Contains(Coverage.Pending) ? null : false;
        }

        Coverage CoverageOf(LibraryEntry entry, Standing worst, Standing best)
        {
            var softwareRuns = prospects.Policy.AllowSoftware && prospects.Stake(entry, card).SoftwareRuns;
            if (Stake.Covers(entry, worst, prospects.Policy, softwareRuns))
                return Coverage.Covered;
            return Stake.Covers(entry, best, prospects.Policy, softwareRuns) ? Coverage.Pending : Coverage.Missed;
        }
    }

    private static (Standing Worst, Standing Best) EndsIn(Hope hope, CellEnds ends)
    {
        if (ends.IsLoose)
            return (ends.Worst, ends.Best);
        return hope switch
        {
            Hope.None => (ends.Worst, ends.Worst),
            Hope.All => (ends.Best, ends.Best),
            Hope.Own => (ends.OwnBest, ends.OwnBest),
            Hope.Others => (ends.OthersBest, ends.OthersBest),
            _ => throw new ArgumentOutOfRangeException(nameof(hope), hope, null),
        };
    }
}
