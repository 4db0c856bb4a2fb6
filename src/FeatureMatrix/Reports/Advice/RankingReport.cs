using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Advice;

/// <summary>Any number of cards ranked for a library.</summary>
public sealed record RankingReport(Weighing Weighing, IReadOnlyList<RankedCard> Ranked)
{
    /// <summary>Ranks cards; all of the collection where none is named.</summary>
    public static RankingReport Of(Weighing weighing, IReadOnlyList<Card>? cards = null) =>
        new(weighing, Ranking.Of(weighing.Picture, weighing.Decisions.Resolver, weighing.Decisions.TermsFor, cards ?? weighing.Decisions.Catalog.Cards));

    /// <summary>Who is first, or who may be.</summary>
    public string Headline
    {
        get
        {
            var contenders = Ranked.Where(card => card.Best == 1).ToList();
            var names = Names.List(contenders.Select(card => card.Card.Name).ToList());
            if (contenders.Count == 0)
                return "No card to rank.";
            if (contenders.Count == 1)
                return $"{names} comes first for {Names.InMiddle(Weighing.Library.Name)}, whatever is still open.";
            return contenders.TrueForAll(card => card.UndecidedWith.Count == 0)
                ? $"{names} share the first place for {Names.InMiddle(Weighing.Library.Name)}."
                : $"The first place for {Names.InMiddle(Weighing.Library.Name)} is undecided between {names}.";
        }
    }

    private string Note => string.Join(' ', new[]
    {
        "A card has a place for certain where it beats, equals or loses to each other card in every completion of what is open.",
        Ranked.All(card => card.ScoreIsExact) ? "" : "Within: no completion leads outside, but the ends need not be reached.",
        Ranked.All(card => card.PerhapsDecided.Count == 0) ? "" : "Perhaps: too much hangs together to show that nobody can say.",
    }.Where(text => text.Length > 0));

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"Cards for {Names.InMiddle(Weighing.Library.Name)}", Headline, Weighing.PolicyText, [],
        [
            new Table(
                "Ranking", Note,
                [new("Place"), new("Card"), new("Score"), new("Must-haves"), new("Sells for"), new("Equal to"), new("Undecided with")],
                Ranked.Select(card => (IReadOnlyList<TableCell>)
                [
                    new TableCell(card.Best == card.Worst ? $"{card.Best}" : $"{card.Best} to {card.Worst}"), new TableCell(card.Card.Name),
                    new TableCell(card.ScoreIsExact ? DecisionWording.Interval(card.Score) : $"within {DecisionWording.Interval(card.Score)}"), new TableCell(DecisionWording.MustHaves(card.MustHaves)),
                    new TableCell(DecisionWording.Price(Weighing.PriceOf(card.Card))),
                    new TableCell(Names.List(card.EqualTo.Select(other => other.Name).ToList())),
                    new TableCell(Undecided(card)),
                ]).ToList()),
        ]);

    private static string Undecided(RankedCard card)
    {
        var shown = card.UndecidedWith.Except(card.PerhapsDecided).Select(other => other.Name).ToList();
        var perhaps = card.PerhapsDecided.Select(other => other.Name).ToList();
        return string.Join("; ", new[] { Names.List(shown), perhaps.Count > 0 ? $"perhaps {Names.List(perhaps)}" : "" }.Where(text => text.Length > 0));
    }
}
