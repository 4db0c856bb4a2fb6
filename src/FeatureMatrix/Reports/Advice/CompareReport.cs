using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Advice;

/// <summary>Two cards weighed for a library: the picture, the picture at the speed floor, what flips it, and what it hangs on.</summary>
public sealed record CompareReport
{
    private const int MostFlips = 6;

    /// <summary>The decisions it draws on.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>As far as the picture goes.</summary>
    public required CardComparison Picture { get; init; }

    /// <summary>Where a route under the speed floor counts as not running; null where the library has no floor.</summary>
    public required CardComparison? AtFloor { get; init; }

    /// <summary>
    /// Each card with the one install that serves the library best (rule R17); null where the policy lets drivers change from title
    /// to title, or a card has none on record.
    /// </summary>
    public required OneInstallComparison? OneInstall { get; init; }

    /// <summary>The values of weights and worths that flip the picture, nearest first.</summary>
    public required IReadOnlyList<Flip> Flips { get; init; }

    /// <summary>The titles whose being a must-have, or not being one, makes the winner.</summary>
    public required IReadOnlyList<MustHaveFlip> MustHaveFlips { get; init; }

    /// <summary>The same chips on other boards, each against the card it shares the chip with.</summary>
    public required IReadOnlyList<CardComparison> OtherBoards { get; init; }

    /// <summary>Compares two cards.</summary>
    public static CompareReport Of(Weighing weighing, Card first, Card second)
    {
        var picture = weighing.Compare(first, second);
        return new CompareReport
        {
            Weighing = weighing,
            Picture = picture,
            AtFloor = weighing.AtFloor is { } atFloor ? CardComparison.Of(atFloor, first, second) : null,
            OneInstall = OneInstallComparison.Of(weighing, first, second),
            Flips = Sensitivity.Of(picture).OrderBy(flip => Math.Abs(flip.Value - flip.Current) / Math.Max(flip.Current, 0.01m)).ToList(),
            MustHaveFlips = Sensitivity.OfMustHaves(picture),
            OtherBoards = weighing.Decisions.Catalog.Cards
                .Where(card => card != first && card != second && (card.Chip == first.Chip || card.Chip == second.Chip))
                .Select(card => weighing.Compare(card, card.Chip == first.Chip ? first : second)).ToList(),
        };
    }

    /// <summary>The answer in a sentence or two.</summary>
    public string Headline => CompareWording.Headline(this);

    /// <summary>The titles on which the cards differ or may differ, those that swing most first.</summary>
    public IReadOnlyList<TitleComparison> SwingTitles => Picture.Titles.Where(title => !title.IsEqual)
        .OrderByDescending(title => Math.Max(Math.Abs(title.Difference.Low), Math.Abs(title.Difference.High)))
        .ThenBy(title => title.Entry.Title.Name, StringComparer.Ordinal).ToList();

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"{Picture.First.Name} or {Picture.Second.Name}", Headline, Weighing.PolicyText, [],
        [VerdictTable(), SwingTable(), FlipTable(), BoardTable()]);

    /// <summary>The two verdicts side by side.</summary>
    public Table VerdictTable()
    {
        var comparisons = AtFloor is { } floor ? new[] { Picture, floor } : [Picture];
        return new Table(
            "Verdicts", Picture.IsExact ? "" : "Too many unknowns to walk them all: intervals are bounds, no completion lies outside them.",
            [new(""), new("The picture"), .. AtFloor is null ? (TableColumn[])[] : [new("The picture at the speed floor")]],
            [
                Row("Verdict", comparison => DecisionWording.Of(comparison.Winner, comparison.First, comparison.Second)),
                Row($"Must-haves, {Picture.First.Name}", comparison => DecisionWording.MustHaves(comparison.MustHaves(Side.First))),
                Row($"Must-haves, {Picture.Second.Name}", comparison => DecisionWording.MustHaves(comparison.MustHaves(Side.Second))),
                Row("Without weights", comparison => DecisionWording.Of(comparison.Dominance, comparison.First, comparison.Second)),
                Row($"Score, {Picture.First.Name}", comparison => DecisionWording.Interval(comparison.FirstScore)),
                Row($"Score, {Picture.Second.Name}", comparison => DecisionWording.Interval(comparison.SecondScore)),
                Row("Difference", comparison => DecisionWording.Difference(comparison.Difference)),
            ]);

        IReadOnlyList<TableCell> Row(string name, Func<CardComparison, string> text) =>
            [new TableCell(name), .. comparisons.Select(comparison => new TableCell(text(comparison)))];
    }

    /// <summary>The titles that make the difference, with reasons.</summary>
    public Table SwingTable() => new Table(
        "Titles that make the difference", "Weight × worth on the first card less the same on the second.",
        [new("Title"), new("Weight", true), new(Picture.First.Name), new(Picture.Second.Name), new("Difference"), new("Why")],
        SwingTitles.Select(title => (IReadOnlyList<TableCell>)
        [
            new TableCell(title.Entry.Title.Name), new TableCell(DecisionWording.Number((decimal)title.Entry.Weight), title.Entry.Weight),
            CellOf(title.Entry, Picture.First), CellOf(title.Entry, Picture.Second),
            new TableCell(DecisionWording.Difference(title.Difference)), new TableCell(CompareWording.Why(this, title)),
        ]).ToList())
    {
        WhenEmpty = "Both do alike on every title, whatever is still open.",
    };

    private const string MustHavesDecide = "Must-haves decide, so weights and loss worths change nothing";
    private const string Forbidden = "What the policy forbids is not tried here: the explanation of a cell says what allowing it would bring.";

    /// <summary>What would flip the verdict: must-haves first, then weights and worths.</summary>
    public Table FlipTable() => new Table(
        "What would change it", $"{(Picture.Ground == Ground.MustHaves ? MustHavesDecide + "." : "One thing changed, everything else as it is.")} {Forbidden}",
        [new("What"), new("Now", true), new("Changes at", true), new("Then")],
        [
            .. MustHaveFlips.Take(MostFlips).Select(flip => (IReadOnlyList<TableCell>)
            [
                new TableCell($"{flip.Entry.Title.Name} as a must-have"), new TableCell(flip.Entry.IsMustHave ? "yes" : "no"), new TableCell(flip.Entry.IsMustHave ? "no" : "yes"),
                new TableCell(DecisionWording.Of(flip.Beyond, Picture.First, Picture.Second)),
            ]),
            .. Flips.Take(MostFlips).Select(flip => (IReadOnlyList<TableCell>)
            [
                new TableCell(DecisionWording.Of(flip.Parameter)), new TableCell(DecisionWording.Number(flip.Current), (double)flip.Current),
                new TableCell($"{(flip.Upwards ? "above" : "below")} {DecisionWording.Apart(flip.Value, flip.Current)}", (double)flip.Value),
                new TableCell(DecisionWording.Of(flip.Beyond, Picture.First, Picture.Second)),
            ]),
        ])
    {
        WhenEmpty = Picture.Ground == Ground.MustHaves
            ? $"{MustHavesDecide}; and the answer stays without any one of the must-haves. {Forbidden}"
            : $"No single must-have, weight or loss worth changes it. {Forbidden}",
    };

    /// <summary>Prices, break-even, and other boards of the same chips.</summary>
    public Table BoardTable()
    {
        var rows = new List<IReadOnlyList<TableCell>>
        {
            BoardRow(Picture.First, Picture.FirstScore, Picture.Second, Picture.SecondScore, ""),
            BoardRow(Picture.Second, Picture.SecondScore, Picture.First, Picture.FirstScore, ""),
        };
        rows.AddRange(OtherBoards.Select(board => BoardRow(
            board.First, board.FirstScore, board.Second, board.SecondScore,
            $"same chip as {board.Second.Name}: {CompareWording.Against(board)}")));
        return new Table(
            "Price last", "Break-even: at this price the board gives as much score for the money as the board it is held against.",
            [new("Board"), new("Score"), new("Sells for"), new("Held against"), new("Break-even"), new("Remark")], rows);
    }

    private IReadOnlyList<TableCell> BoardRow(Card card, ScoreInterval score, Card other, ScoreInterval otherScore, string remark)
    {
        var breakEven = Weighing.PriceOf(other) is { } price ? PriceRange.BreakEven(score, otherScore, price) : null;
        return
        [
            new TableCell(card.Name), new TableCell(DecisionWording.Interval(score)), new TableCell(DecisionWording.Price(Weighing.PriceOf(card))),
            new TableCell(other.Name), breakEven is null ? new TableCell("not known") : new TableCell(DecisionWording.Amount(breakEven)), new TableCell(remark),
        ];
    }

    private TableCell CellOf(LibraryEntry entry, Card card)
    {
        var cell = Weighing.Decisions.CellOn(entry.Title, card);
        return new TableCell(cell.Label, null, cell.Tone);
    }
}

/// <summary>Two cards, each with its best single install.</summary>
/// <param name="First">The first card's.</param>
/// <param name="Second">The second card's.</param>
/// <param name="Difference">First less second, over joint completions.</param>
public sealed record OneInstallComparison(DriverOption First, DriverOption Second, ScoreInterval Difference)
{
    /// <summary>For a library whose policy is one driver for each operating system.</summary>
    internal static OneInstallComparison? Of(Weighing weighing, Card first, Card second)
    {
        if (!weighing.Library.Policy.OneDriverPerOs)
            return null;
        var one = weighing.InstallsOf(first);
        var two = weighing.InstallsOf(second);
        return one.Count == 0 || two.Count == 0 ? null : new OneInstallComparison(one[0], two[0], one[0].Holding.Over(two[0].Holding));
    }
}
