using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// Two cards weighed, alive: below the verdict stands one row for every standing that a title may have on either card in every
/// completion of what both share, so that the lowest and highest difference, and with them the verdict, follow weights and worths.
/// </summary>
internal static class CompareSheet
{
    /// <summary>More comparisons than these are not made in search of an open question.</summary>
    private const int MostTried = 6;

    private const int VerdictRow = 5;
    private const int HeadingRow = 18;

    /// <summary>The pair to show: the card that certainly covers most, and the best one with another chip. Null where there are no two.</summary>
    public static CompareReport? Pair(EditionReport edition)
    {
        var ranked = Ranked(edition);
        if (ranked.Count < 2)
            return null;
        var second = ranked.Skip(1).FirstOrDefault(card => card.Chip != ranked[0].Chip) ?? ranked[1];
        return CompareReport.Of(edition.Weighing, ranked[0], second);
    }

    /// <summary>What to ask next: between the best card and the first of the next ones that it is undecided with; else of the pair that is shown.</summary>
    public static NextTestReport QuestionsOf(EditionReport edition, CompareReport shown)
    {
        var first = shown.Picture.First;
        var open = Ranked(edition).Skip(1).Take(MostTried).FirstOrDefault(card => CompareReport.Of(shown.Weighing, first, card).Picture.Winner == Winner.Undecided);
        return NextTestReport.Of(shown.Weighing, first, open ?? shown.Picture.Second);
    }

    private static List<Card> Ranked(EditionReport edition)
    {
        var worth = Worth.Of(edition.Decisions.Policy);
        return [.. edition.Cards
            .OrderByDescending(card => card.Cells.Sum(cell => edition.Decisions.WeightOf(cell.Title) * worth.Least(cell.Verdict.Overall.Worst)))
            .Select(card => card.Card)];
    }

    /// <summary>Adds the sheet.</summary>
    public static void Add(Book book, CompareReport report, string weights, string titleNumbers, CoverageReport coverage)
    {
        var sheet = book.AddSheet("Compare");
        var comparison = report.Picture;
        var numbers = coverage.Rows.Select((row, i) => (row.Title, i)).ToDictionary(pair => pair.Title, pair => pair.i + 1);
        Look.Title(Book.Text(sheet.Cell(1, 1), $"{comparison.First.Name} or {comparison.Second.Name}"));
        Book.Text(sheet.Cell(2, 1), report.Headline);
        Book.Text(sheet.Cell(3, 1), "Above, as published. Below, on the weights and worths that now stand on the sheets Coverage and Policy. Must-haves do not depend on them.");
        var last = new StandingRows(book, sheet, comparison, weights, titleNumbers, numbers, HeadingRow).Write();
        Verdict(book, sheet, report, last);
        Finish(book, sheet, last);
    }

    private static void Verdict(Book book, IXLWorksheet sheet, CompareReport report, int last)
    {
        var comparison = report.Picture;
        Sum(VerdictRow, "Lowest difference", StandingRows.LowestDifference, comparison.Difference.Low);
        Sum(VerdictRow + 1, "Highest difference", StandingRows.HighestDifference, comparison.Difference.High);
        var (first, second) = (Book.Quoted(comparison.First.Name), Book.Quoted(comparison.Second.Name));
        var (low, high) = ($"$D${VerdictRow}", $"$D${VerdictRow + 1}");
        Name(sheet, VerdictRow + 2, "The score says");
        book.Formula(
            sheet.Cell(VerdictRow + 2, 4), $"IF({low}>0,{first},IF({high}<0,{second},IF(AND({low}=0,{high}=0),\"equal\",\"undecided\")))",
            DecisionWording.Of(comparison.ScoreWinner, comparison.First, comparison.Second)).Style.Font.Bold = true;
        Text(VerdictRow + 3, $"Must-haves, {comparison.First.Name}", DecisionWording.MustHaves(comparison.MustHaves(Side.First)));
        Text(VerdictRow + 4, $"Must-haves, {comparison.Second.Name}", DecisionWording.MustHaves(comparison.MustHaves(Side.Second)));
        Text(VerdictRow + 5, "Without weights", DecisionWording.Of(comparison.Dominance, comparison.First, comparison.Second));
        Sum(VerdictRow + 6, $"Score at worst, {comparison.First.Name}", StandingRows.FirstLowest, comparison.FirstScore.Low);
        Sum(VerdictRow + 7, $"Score at best, {comparison.First.Name}", StandingRows.FirstHighest, comparison.FirstScore.High);
        Sum(VerdictRow + 8, $"Score at worst, {comparison.Second.Name}", StandingRows.SecondLowest, comparison.SecondScore.Low);
        Sum(VerdictRow + 9, $"Score at best, {comparison.Second.Name}", StandingRows.SecondHighest, comparison.SecondScore.High);
        if (report.Weighing.PriceOf(comparison.Second) is { } price && PriceRange.BreakEven(comparison.FirstScore, comparison.SecondScore, price) is { } even)
            Prices(book, sheet, comparison, price, even);

        void Sum(int row, string name, string column, decimal value)
        {
            Name(sheet, row, name);
            book.Formula(sheet.Cell(row, 4), $"ROUND(SUM({column}{HeadingRow + 1}:{column}{last}),9)", Math.Round((double)value, 9), "0.000");
        }

        void Text(int row, string name, string text)
        {
            Name(sheet, row, name);
            Book.Text(sheet.Cell(row, 4), text);
        }
    }

    private static void Prices(Book book, IXLWorksheet sheet, CardComparison comparison, PriceRange price, PriceRange even)
    {
        const int row = VerdictRow + 10;
        Name(sheet, row, $"Price of {comparison.Second.Name} in {price.Currency}, from and to");
        Look.Changeable(Book.Number(sheet.Cell(row, 4), (double)price.Low));
        Look.Changeable(Book.Number(sheet.Cell(row, 5), (double)price.High));
        Name(sheet, row + 1, $"Then {comparison.First.Name} breaks even from and to");
        var (firstLow, firstHigh, secondLow, secondHigh) = ($"D{VerdictRow + 6}", $"D{VerdictRow + 7}", $"D{VerdictRow + 8}", $"D{VerdictRow + 9}");
        book.Formula(sheet.Cell(row + 1, 4), $"IF({secondHigh}=0,0,D{row}*{firstLow}/{secondHigh})", (double)even.Low);
        book.Formula(sheet.Cell(row + 1, 5), $"IF({secondLow}=0,0,E{row}*{firstHigh}/{secondLow})", (double)even.High);
    }

    private static void Name(IXLWorksheet sheet, int row, string name)
    {
        Book.Text(sheet.Cell(row, 1), name);
        sheet.Range(row, 1, row, 3).Merge();
        sheet.Cell(row, 4).Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
    }

    private static void Finish(Book book, IXLWorksheet sheet, int last)
    {
        sheet.Columns(1, 2).Width = 8;
        sheet.Columns(3, 4).Width = 26;
        sheet.Columns(5, StandingRows.Headings.Count).Width = 10;
        Look.Note(sheet.Range(2, 1, 2, 8));
        sheet.Cell(2, 1).Style.Font.Bold = true;
        Look.Note(sheet.Range(3, 1, 3, 8));
        Look.Heading(sheet.Range(HeadingRow, 1, HeadingRow, StandingRows.Headings.Count));
        if (last > HeadingRow)
            Look.Body(sheet.Range(HeadingRow + 1, 1, last, StandingRows.Headings.Count));
        Look.Figures(sheet.Range(HeadingRow, 1, last, 2));
        Look.Figures(sheet.Range(HeadingRow, 5, last, StandingRows.Headings.Count));
        book.FitRows(sheet, HeadingRow, last, StandingRows.Headings.Count);
        book.PrepareForPrint(sheet, 1);
    }
}
