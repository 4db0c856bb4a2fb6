using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>What a title gains from a card beside what is owned.</summary>
public sealed record TitleGain(LibraryEntry Entry, ScoreInterval Gain, string Owned, string With);

/// <summary>What a card adds to what is owned, and the most one should pay for it.</summary>
public sealed record CardValueReport
{
    /// <summary>The decisions it draws on.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>Score added to what is owned.</summary>
    public required ScoreInterval Gain { get; init; }

    /// <summary>The titles that gain or may gain, most first.</summary>
    public required IReadOnlyList<TitleGain> Titles { get; init; }

    /// <summary>Must-haves that only this card covers among what is owned.</summary>
    public required IReadOnlyList<LibraryEntry> NewlyCovered { get; init; }

    /// <summary>The cheapest other card that certainly adds at least as much; null where none with a price does.</summary>
    public required Card? Substitute { get; init; }

    /// <summary>Values a card.</summary>
    public static CardValueReport Of(Weighing weighing, Card card)
    {
        var owned = weighing.Owned.Where(other => other != card).ToList();
        var before = HoldingOf(weighing, owned);
        var after = HoldingOf(weighing, [.. owned, card]);
        var gain = after.Over(before);
        return new CardValueReport
        {
            Weighing = weighing,
            Card = card,
            Gain = gain,
            Titles = weighing.Library.Entries
                .Select((entry, i) => new TitleGain(entry, after.Over(before, i), BestText(weighing, entry.Title, owned), BestText(weighing, entry.Title, [card])))
                .Where(title => title.Gain.High > 0).OrderByDescending(title => title.Gain.High).ThenBy(title => title.Entry.Title.Name, StringComparer.Ordinal).ToList(),
            NewlyCovered = after.Covered.Except(before.Covered).ToList(),
            Substitute = weighing.Decisions.Catalog.Cards
                .Where(other => other != card && !owned.Contains(other) && weighing.PriceOf(other) is not null)
                .Where(other => HoldingOf(weighing, [.. owned, other]).Over(before).Low >= gain.High && gain.High > 0)
                .OrderBy(other => weighing.PriceOf(other)!.High).ThenBy(other => other.Id, StringComparer.Ordinal).FirstOrDefault(),
        };
    }

    /// <summary>What it adds and the most to pay.</summary>
    public string Headline
    {
        get
        {
            if (Gain.High <= 0)
                return $"{Card.Name} adds nothing to what you own for {Weighing.Library.Name}: pay nothing for it.";
            var covered = NewlyCovered.Count == 0 ? "" : $" and covers {Names.List(NewlyCovered.Select(entry => entry.Title.Name).ToList())}";
            var price = Weighing.PriceOf(Card);
            var most = Substitute is { } other
                ? $"do not pay more than {DecisionWording.Amount(Weighing.PriceOf(other)!)}, for which {other.Name} does as much"
                : price is null
                    ? "no other card on record does as much, and no price is on record"
                    : $"no other card on record does as much; boards like it go for {DecisionWording.Price(price)}, so do not pay more than {DecisionWording.Amount(price with { Low = price.High })}";
            return $"{Card.Name} adds {DecisionWording.Interval(Gain)} to what you own{covered}; {most}.";
        }
    }

    /// <summary>The whole report: one page to take along.</summary>
    public DecisionReport ToReport() => new(
        $"What {Card.Name} would add", Headline, Weighing.PolicyText, Card.Cautions,
        [
            new Table(
                "Titles that gain", $"Owned: {Names.List(Weighing.Owned.Where(card => card != Card).Select(card => card.Name).ToList())}.",
                [new("Title"), new("Gain"), new("Owned cards"), new("This card")],
                Titles.Select(title => (IReadOnlyList<TableCell>)
                [
                    new TableCell(title.Entry.Title.Name), new TableCell(DecisionWording.Interval(title.Gain)), new TableCell(title.Owned), new TableCell(title.With),
                ]).ToList()),
        ]);

    private static Holding HoldingOf(Weighing weighing, IReadOnlyList<Card> cards) =>
        Holding.Of(weighing.Library, entry => cards.Select(card => weighing.Decisions.On(entry.Title, card)));

    private static string BestText(Weighing weighing, Title title, IReadOnlyList<Card> cards)
    {
        var verdicts = cards.Select(card => weighing.Decisions.On(title, card)).ToList();
        if (verdicts.Count == 0)
            return "nothing owned";
        var best = verdicts.Order(Comparer<Resolving.Verdict>.Create((one, other) => Resolving.OutcomeRange.Compare(one.Overall, other.Overall))).First();
        return LabelWording.RangeText(best.Overall);
    }
}
