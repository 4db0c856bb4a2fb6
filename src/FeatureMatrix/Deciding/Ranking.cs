using FeatureMatrix.Deciding.Kinds;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>A card among others.</summary>
/// <param name="Card">The card.</param>
/// <param name="Best">The best place it may take: 1 + the cards that beat it in every completion.</param>
/// <param name="Worst">The worst place it may take, cards equal to it sharing a place.</param>
/// <param name="Score">Its score.</param>
/// <param name="ScoreIsExact">False past a limit: then no completion leads outside the score, but its ends need not be reached.</param>
/// <param name="MustHaves">Its must-haves.</param>
/// <param name="EqualTo">Cards that are equal to it in every completion.</param>
/// <param name="UndecidedWith">Cards against which nobody can say yet.</param>
/// <param name="PerhapsDecided">
/// Of these the cards against which, past a limit, nothing shows that nobody can say: one of the two might win in every completion.
/// </param>
public sealed record RankedCard(
    Card Card, int Best, int Worst, ScoreInterval Score, bool ScoreIsExact, IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> MustHaves,
    IReadOnlyList<Card> EqualTo, IReadOnlyList<Card> UndecidedWith, IReadOnlyList<Card> PerhapsDecided);

/// <summary>Any number of cards ranked by comparing each with each; ties and open questions stay visible.</summary>
public static class Ranking
{
    /// <summary>Up to how many titles are put together in every completion where their sums do not tell.</summary>
    public const int MostTitlesTogether = 100;

    /// <summary>Ranks cards, the surest first.</summary>
    /// <param name="prospects">What may come of the titles.</param>
    /// <param name="resolver">The resolver of the collection.</param>
    /// <param name="termsFor">The terms of each title.</param>
    /// <param name="cards">The cards.</param>
    /// <remarks>
    /// Titles that ask for the same are summed up by kinds first. Sums decide between two cards where no completion can say otherwise, and
    /// show them undecided where two completions say different things; only the pairs that are left are put together title by title.
    /// </remarks>
    public static IReadOnlyList<RankedCard> Of(Prospects prospects, Resolver resolver, Func<Title, Terms> termsFor, IReadOnlyList<Card> cards)
    {
        var worths = new WorthTable(WorthScale.Of(prospects.Policy));
        var kinds = KindTable.Of(resolver, prospects, cards, termsFor);
        var sums = cards.Select(card => CardSums.Of(kinds, prospects, card, worths)).ToList();
        var mayWalk = prospects.Library.Entries.Count <= MostTitlesTogether;
        var pairs = new Dictionary<(Card, Card), (Winner Winner, bool IsExact)>();
        for (var i = 0; i < cards.Count; i++)
        {
            for (var j = i + 1; j < cards.Count; j++)
                pairs[(cards[i], cards[j])] = PairOfSums.WinnerOf(kinds, worths, sums[i], sums[j]) is { } winner ? (winner, true) : Together(prospects, cards[i], cards[j], mayWalk);
        }

        return sums.Select(sum => Place(cards, pairs, sum, ScoreOf(prospects, sum, mayWalk)))
            .OrderBy(ranked => ranked.Best).ThenBy(ranked => ranked.Worst).ThenByDescending(ranked => ranked.Score.Low)
            .ThenByDescending(ranked => ranked.Score.High).ThenBy(ranked => ranked.Card.Id, StringComparer.Ordinal).ToList();
    }

    private static (Winner Winner, bool IsExact) Together(Prospects prospects, Card first, Card second, bool mayWalk)
    {
        if (!mayWalk)
            return (Winner.Undecided, false);
        var comparison = CardComparison.Of(prospects, first, second);
        return (comparison.Winner, comparison.Winner != Winner.Undecided || comparison.IsExact);
    }

    private static (ScoreInterval Score, bool IsExact) ScoreOf(Prospects prospects, CardSums sums, bool mayWalk)
    {
        if (sums.IsExact || !mayWalk)
            return (CardComparison.Rounded(sums.Score), sums.IsExact);
        var groups = SharedGroup.Of(prospects.Stakes(sums.Card));
        var scale = WorthScale.Of(prospects.Policy);
        var tally = groups.Select(group => Tally.Of(group, scale, prospects.Policy)).Aggregate(Tally.Zero, (one, other) => one.And(other));
        return (CardComparison.Rounded(tally.Overall), groups.All(group => group.IsExact));
    }

    private static RankedCard Place(
        IReadOnlyList<Card> cards, Dictionary<(Card, Card), (Winner Winner, bool IsExact)> pairs, CardSums sums, (ScoreInterval Interval, bool IsExact) score)
    {
        var found = cards.Where(other => other != sums.Card).Select(other => (Other: other, Pair: Against(other))).ToList();
        var others = found.ToLookup(one => one.Pair.Winner, one => one.Other);
        var best = others[Winner.Second].Count() + 1;
        return new RankedCard(
            sums.Card, best, best + others[Winner.Undecided].Count(), score.Interval, score.IsExact, sums.MustHaves, others[Winner.Equal].ToList(),
            others[Winner.Undecided].ToList(), found.Where(one => !one.Pair.IsExact).Select(one => one.Other).ToList());

        (Winner Winner, bool IsExact) Against(Card other)
        {
            if (pairs.TryGetValue((sums.Card, other), out var pair))
                return pair;
            pair = pairs[(other, sums.Card)];
            return pair.Winner switch
            {
                Winner.First => (Winner.Second, pair.IsExact),
                Winner.Second => (Winner.First, pair.IsExact),
                _ => pair,
            };
        }
    }
}
