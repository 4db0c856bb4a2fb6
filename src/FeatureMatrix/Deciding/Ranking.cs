using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>A card among others.</summary>
/// <param name="Card">The card.</param>
/// <param name="Best">The best place it may take: 1 + the cards that beat it in every completion.</param>
/// <param name="Worst">The worst place it may take, cards equal to it sharing a place.</param>
/// <param name="Score">Its score.</param>
/// <param name="MustHaves">Its must-haves.</param>
/// <param name="EqualTo">Cards that are equal to it in every completion.</param>
/// <param name="UndecidedWith">Cards against which nobody can say yet.</param>
public sealed record RankedCard(
    Card Card, int Best, int Worst, ScoreInterval Score, IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> MustHaves,
    IReadOnlyList<Card> EqualTo, IReadOnlyList<Card> UndecidedWith);

/// <summary>Any number of cards ranked by comparing each with each; ties and open questions stay visible.</summary>
public static class Ranking
{
    /// <summary>Ranks cards, the surest first.</summary>
    public static IReadOnlyList<RankedCard> Of(Prospects prospects, IReadOnlyList<Card> cards)
    {
        var scale = WorthScale.Of(prospects.Policy);
        var winners = new Dictionary<(Card, Card), Winner>();
        var tallies = cards.ToDictionary(card => card, card => SharedGroup.Of(prospects.Stakes(card))
            .Select(group => Tally.Of(group, scale, prospects.Policy)).Aggregate(Tally.Zero, (one, other) => one.And(other)));
        for (var i = 0; i < cards.Count; i++)
        {
            for (var j = i + 1; j < cards.Count; j++)
                winners[(cards[i], cards[j])] = WinnerOf(prospects, cards[i], cards[j], tallies);
        }

        return cards.Select(card => Place(card, cards, winners, Score(tallies[card]), MustHaves(prospects, card)))
            .OrderBy(ranked => ranked.Best).ThenBy(ranked => ranked.Worst).ThenByDescending(ranked => ranked.Score.Low)
            .ThenByDescending(ranked => ranked.Score.High).ThenBy(ranked => ranked.Card.Id, StringComparer.Ordinal).ToList();
    }

    /// <summary>
    /// Each card by itself says enough where nothing that they share could change it; only the other pairs are put together.
    /// </summary>
    private static Winner WinnerOf(Prospects prospects, Card first, Card second, Dictionary<Card, Tally> tallies)
    {
        var apart = CardComparison.WinnersIn(tallies[first].And(tallies[second].Mirrored())).Distinct().ToList();
        return apart.Count == 1 ? apart[0] : CardComparison.Of(prospects, first, second).Winner;
    }

    private static ScoreInterval Score(Tally tally) => new(decimal.Round(tally.Overall.Low, 18), decimal.Round(tally.Overall.High, 18));

    private static List<(LibraryEntry Entry, Coverage Coverage)> MustHaves(Prospects prospects, Card card) => prospects.Stakes(card)
        .Where(stake => stake.Entry.IsMustHave).Select(stake => (stake.Entry, stake.CoverageUnder(prospects.Policy))).ToList();

    private static RankedCard Place(
        Card card, IReadOnlyList<Card> cards, Dictionary<(Card, Card), Winner> winners, ScoreInterval score,
        IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> mustHaves)
    {
        var others = cards.Where(other => other != card).ToLookup(Against);
        var best = others[Winner.Second].Count() + 1;
        return new RankedCard(
            card, best, best + others[Winner.Undecided].Count(), score, mustHaves, others[Winner.Equal].ToList(), others[Winner.Undecided].ToList());

        Winner Against(Card other) => winners.TryGetValue((card, other), out var winner) ? winner : winners[(other, card)] switch
        {
            Winner.First => Winner.Second,
            Winner.Second => Winner.First,
            var same => same,
        };
    }
}
