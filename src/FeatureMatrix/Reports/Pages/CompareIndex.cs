using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Pages;

/// <summary>A card held against another, in one word.</summary>
/// <param name="FirstId">The pair's first card.</param>
/// <param name="SecondId">The pair's second card.</param>
/// <param name="Word">Ahead, behind, equal or undecided, from the row's side; empty where row and column are one card.</param>
/// <param name="Difference">Row less column.</param>
/// <param name="Kind">The word as an id; <c>self</c> for the card itself.</param>
public sealed record AgainstCell(string FirstId, string SecondId, string Word, string Difference, string Kind);

/// <summary>A card against all others.</summary>
public sealed record AgainstRow(string CardId, string CardName, IReadOnlyList<AgainstCell> Cells);

/// <summary>Every two cards of the edition, and their ranking.</summary>
/// <param name="Ranking">The ranking as the command prints it.</param>
/// <param name="Cards">The cards in the order of pairs: of two, the one that comes first here is the pair's first.</param>
/// <param name="Rows">Each card against each, in the order of the ranking.</param>
/// <param name="Pairs">One page for each pair.</param>
/// <param name="LimitText">Which cards were left out; empty where none was.</param>
public sealed record CompareIndex(
    DecisionReport Ranking, IReadOnlyList<Choosable> Cards, IReadOnlyList<AgainstRow> Rows, IReadOnlyList<ComparePage> Pairs, string LimitText)
{
    /// <summary>How many cards are compared each with each: 780 pages.</summary>
    public const int MostCards = 40;

    /// <summary>The comparisons of an edition: each two of the cards that rank first.</summary>
    public static CompareIndex Of(Weighing weighing, RankingReport ranking)
    {
        var all = weighing.Decisions.Catalog.Cards;
        var ranked = ranking.Ranked.Take(MostCards).Select(one => one.Card).ToList();
        var compared = all.Where(ranked.Contains).ToList();
        var pairs = compared.SelectMany((first, i) => compared.Skip(i + 1).Select(second => ComparePage.Of(weighing, first, second))).ToList();
        return new CompareIndex(
            ranking.ToReport(), compared.ConvertAll(card => new Choosable(card.Id, card.Name)),
            ranked.ConvertAll(card => new AgainstRow(card.Id, card.Name, ranked.ConvertAll(other => Against(pairs, card, other)))), pairs,
            compared.Count == all.Count ? "" : $"The {MostCards} cards that rank first are compared here; the command compares any two.");
    }

    /// <summary>
    /// The pairs that have a page, where all cards are compared, without comparing any yet; null where there are too many cards, so that only
    /// those that rank first are.
    /// </summary>
    public static IEnumerable<(string FirstId, string SecondId)>? PairsOf(IReadOnlyList<Card> cards) => cards.Count > MostCards
        ? null
        : cards.SelectMany((first, i) => cards.Skip(i + 1).Select(second => (first.Id, second.Id)));

    /// <summary>The page of a pair.</summary>
    public ComparePage PairOf(string firstId, string secondId) => Pairs.First(pair => pair.FirstId == firstId && pair.SecondId == secondId);

    private static AgainstCell Against(List<ComparePage> pairs, Card row, Card column)
    {
        if (row == column)
            return new AgainstCell(row.Id, row.Id, "", "", "self");
        var pair = pairs.First(pair => (pair.FirstId == row.Id && pair.SecondId == column.Id) || (pair.FirstId == column.Id && pair.SecondId == row.Id));
        var comparison = pair.Views[0].Comparison;
        var isFirst = pair.FirstId == row.Id;
        var difference = isFirst ? comparison.Difference : new ScoreInterval(-comparison.Difference.High, -comparison.Difference.Low);
        var word = comparison.Winner switch
        {
            Winner.Equal => "equal",
            Winner.Undecided => "undecided",
            Winner.First => isFirst ? "ahead" : "behind",
            Winner.Second => isFirst ? "behind" : "ahead",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return new AgainstCell(pair.FirstId, pair.SecondId, word, DecisionWording.Difference(difference), word);
    }
}
