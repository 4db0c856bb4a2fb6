using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Advice;

/// <summary>What a title gains from a card beside what is owned.</summary>
public sealed record TitleGain(LibraryEntry Entry, ScoreInterval Gain, string Owned, string With);

/// <summary>A board with the same chip.</summary>
/// <param name="Card">The board.</param>
/// <param name="IsOwned">True where one is owned.</param>
/// <param name="Gain">Score that it adds, in the card's place, to what else is owned.</param>
/// <param name="Price">What boards like it go for; null where no price is on record.</param>
public sealed record BoardValue(Card Card, bool IsOwned, ScoreInterval Gain, PriceRange? Price);

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

    /// <summary>The cheapest other card that adds at least as much in every completion; null where none with a price does.</summary>
    public required Card? Substitute { get; init; }

    /// <summary>Other boards with its chip, by name.</summary>
    public required IReadOnlyList<BoardValue> Boards { get; init; }

    /// <summary>
    /// The most to pay: no more than boards like it go for, nor than the substitute does; both ends of the range are that amount. Null where
    /// there is no price to go by.
    /// </summary>
    public PriceRange? Most => new[] { Weighing.PriceOf(Card), Substitute is { } other ? Weighing.PriceOf(other) : null }
        .OfType<PriceRange>().OrderBy(price => price.High).Select(price => price with { Low = price.High }).FirstOrDefault();

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
            Boards = weighing.Decisions.Catalog.Cards.Where(other => other != card && other.Chip == card.Chip)
                .Select(other => new BoardValue(other, weighing.Owned.Contains(other), InItsPlace(weighing, other, card), weighing.PriceOf(other))).ToList(),
            Substitute = weighing.Decisions.Catalog.Cards
                .Where(other => other != card && !owned.Contains(other) && weighing.PriceOf(other) is not null)
                .Where(other => gain.High > 0 && HoldingOf(weighing, [.. owned, other]).Over(after).Low >= 0)
                .OrderBy(other => weighing.PriceOf(other)!.High).ThenBy(other => other.Id, StringComparer.Ordinal).FirstOrDefault(),
        };
    }

    /// <summary>True where one is owned already.</summary>
    public bool IsOwned => Weighing.Owned.Contains(Card);

    /// <summary>What it adds and the most to pay.</summary>
    public string Headline
    {
        get
        {
            if (IsOwned)
                return $"You own a {Card.Name} already. {(Gain.High <= 0 ? "It adds nothing" : $"It adds {DecisionWording.Interval(Gain)}")} to your other cards, and a second one adds nothing: pay nothing for it.";
            if (Gain.High <= 0)
                return $"{Card.Name} adds nothing to what you own for {Names.InMiddle(Weighing.Library.Name)}: pay nothing for it.";
            var covered = NewlyCovered.Count == 0 ? "" : $" and covers {Names.List(NewlyCovered.Select(entry => entry.Title.Name).ToList())}";
            var price = Weighing.PriceOf(Card);
            var goesFor = price is null ? "" : $"boards like it go for {DecisionWording.Price(price)}";
            var limit = Most is { } most ? $"do not pay more than {DecisionWording.Amount(most)}" : "no price is on record";
            var advice = (price, Substitute) switch
            {
                (null, null) => $"no other card on record does as much, and {limit}",
                (_, null) => $"no other card on record does as much; {goesFor}, so {limit}",
                (null, { } other) => $"{other.Name}, which does at least as much, goes for {DecisionWording.Price(Weighing.PriceOf(other))}: {limit}",
                (_, { } other) => $"{goesFor}, and {other.Name}, which does at least as much, for {DecisionWording.Price(Weighing.PriceOf(other))}: {limit}",
            };
            return $"{Card.Name} adds {DecisionWording.Interval(Gain)} to what you own{covered}; {advice}.";
        }
    }

    /// <summary>The whole report: one page to take along.</summary>
    public DecisionReport ToReport() => new(
        $"What {Card.Name} would add", Headline, Weighing.PolicyText, Card.Cautions,
        [
            new Table(
                "Titles that gain", OwnedText,
                [new("Title"), new("Gain"), new("Owned cards"), new("This card")],
                Titles.Select(title => (IReadOnlyList<TableCell>)
                [
                    new TableCell(title.Entry.Title.Name), new TableCell(DecisionWording.Interval(title.Gain)), new TableCell(title.Owned), new TableCell(title.With),
                ]).ToList())
            {
                WhenEmpty = $"{OwnedText} No title gains by this one.",
            },
            .. Boards.Count == 0 ? (Table[])[] : [BoardTable()],
        ]);

    private string OwnedText
    {
        get
        {
            var owned = Weighing.Owned.Where(card => card != Card).Select(card => card.Name).ToList();
            return owned.Count == 0
                ? $"You own no {(IsOwned ? "other " : "")}card; a specimen with 'owned: yes' would say so."
                : $"You own {Names.List(owned)}{(IsOwned ? " beside it" : "")}.";
        }
    }

    private Table BoardTable() => new(
        "Other boards with its chip", $"All carry {Card.Chip.Name}; memory, bus and drivers may differ. Each in the place of this one.",
        [new("Board"), new("Owned"), new("Adds"), new("Goes for")],
        Boards.Select(board => (IReadOnlyList<TableCell>)
        [
            new TableCell(board.Card.Name), new TableCell(board.IsOwned ? "yes" : "no"), new TableCell(DecisionWording.Interval(board.Gain)),
            new TableCell(DecisionWording.Price(board.Price)),
        ]).ToList());

    /// <summary>Cards side by side, for every format.</summary>
    public static Table TableOf(IReadOnlyList<CardValueReport> reports) => new(
        "What each card would add", "Beside what is owned without it. Gain is weight × worth.",
        [new("Card"), new("Owned"), new("Adds"), new("Newly covered"), new("Goes for"), new("Most to pay"), new("As good and cheapest")],
        reports.Select(report => (IReadOnlyList<TableCell>)
        [
            new TableCell(report.Card.Name), new TableCell(report.IsOwned ? "yes" : "no"),
            new TableCell(DecisionWording.Interval(report.Gain)), new TableCell(Names.List(report.NewlyCovered.Select(entry => entry.Title.Name).ToList())),
            new TableCell(DecisionWording.Price(report.Weighing.PriceOf(report.Card))), new TableCell(report.MostText),
            new TableCell(report.Substitute?.Name ?? ""),
        ]).ToList());

    /// <summary>The most to pay in two or three words.</summary>
    public string MostText => IsOwned ? "nothing, you own one" : Gain.High <= 0 ? "nothing" : Most is { } most ? DecisionWording.Amount(most) : "not known, no price is on record";

    private static ScoreInterval InItsPlace(Weighing weighing, Card other, Card card)
    {
        var owned = weighing.Owned.Where(one => one != card && one != other).ToList();
        return HoldingOf(weighing, [.. owned, other]).Over(HoldingOf(weighing, owned));
    }

    private static Holding HoldingOf(Weighing weighing, IReadOnlyList<Card> cards) =>
        Holding.Of(weighing.Library, entry => cards.Select(card => weighing.Decisions.On(entry.Title, card)));

    private static string BestText(Weighing weighing, Title title, IReadOnlyList<Card> cards)
    {
        var verdicts = cards.Select(card => weighing.Decisions.On(title, card)).ToList();
        if (verdicts.Count == 0)
            return "no card owned";
        var best = verdicts.Order(Comparer<Resolving.Verdict>.Create((one, other) => Resolving.OutcomeRange.Compare(one.Overall, other.Overall))).First();
        return LabelWording.RangeText(best.Overall);
    }
}
