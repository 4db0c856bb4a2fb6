using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// The first sheet: one line a card with its counts and the bounds of its score, all calculated from the Outcomes sheet, links to the
/// other sheets, and the legend.
/// </summary>
internal static class OverviewSheet
{
    private const int HeadingRow = 5;
    private const int FirstCountColumn = 4;

    /// <summary>Fills the sheet, which was added first so that it stands first.</summary>
    public static void Fill(Book book, IXLWorksheet sheet, EditionReport edition, OutcomeSheet outcomes, IReadOnlyList<IXLWorksheet> cardSheets)
    {
        var tones = Enum.GetValues<CellTone>();
        Look.Title(Book.Text(sheet.Cell(1, 1), edition.Catalog.Name));
        Book.Text(sheet.Cell(2, 1), Subtitle(edition));
        Book.Text(sheet.Cell(3, 1), "Scores are shares of the library's weight, 0 to 1: at worst and at best, over everything that is not known. Framed cells on other sheets may be changed; everything here follows.");
        string[] headings = ["No.", "Card", "What you lose", .. tones.Select(tone => Names.Sentence(CellWording.Of(tone))), "Score at worst", "Score at best"];
        for (var column = 0; column < headings.Length; column++)
            Book.Text(sheet.Cell(HeadingRow, column + 1), headings[column]);
        for (var i = 0; i < edition.Cards.Count; i++)
            Row(book, sheet, HeadingRow + 1 + i, edition, i, tones, outcomes, cardSheets[i]);
        Finish(book, sheet, edition, headings.Length);
        Legend(sheet, HeadingRow + edition.Cards.Count + 3, tones);
        book.PrepareForPrint(sheet, HeadingRow);
    }

    /// <summary>An absolute reference to the names of the cards.</summary>
    public static string CardNames(IXLWorksheet sheet, EditionReport edition) => Range(sheet, edition, 2);

    /// <summary>An absolute reference to the scores at worst.</summary>
    public static string WorstScores(IXLWorksheet sheet, EditionReport edition) => Range(sheet, edition, FirstCountColumn + Enum.GetValues<CellTone>().Length);

    /// <summary>An absolute reference to the scores at best.</summary>
    public static string BestScores(IXLWorksheet sheet, EditionReport edition) => Range(sheet, edition, FirstCountColumn + Enum.GetValues<CellTone>().Length + 1);

    private static string Range(IXLWorksheet sheet, EditionReport edition, int column)
    {
        var letter = sheet.Column(column).ColumnLetter();
        return Book.Reference(sheet, $"${letter}${HeadingRow + 1}:${letter}${HeadingRow + Math.Max(1, edition.Cards.Count)}");
    }

    private static string Subtitle(EditionReport edition)
    {
        var library = edition.Decisions.Library is { } chosen ? $"Library: {chosen.Name}" : "All titles";
        return edition.Date is { } date
            ? $"{library}. Edition of {date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}."
            : $"{library}.";
    }

    private static void Row(
        Book book, IXLWorksheet sheet, int row, EditionReport edition, int index, CellTone[] tones, OutcomeSheet outcomes, IXLWorksheet cardSheet)
    {
        var card = edition.Cards[index];
        Book.Number(sheet.Cell(row, 1), index + 1, "0");
        Book.Link(Book.Text(sheet.Cell(row, 2), card.Card.Name), cardSheet);
        Book.Text(sheet.Cell(row, 3), card.Headline);
        for (var i = 0; i < tones.Length; i++)
        {
            var tone = tones[i];
            book.Formula(
                sheet.Cell(row, FirstCountColumn + i), $"COUNTIFS({outcomes.Column("Card no.")},$A{row},{outcomes.Column("Verdict")},{Book.Quoted(CellWording.Of(tone))})",
                card.Cells.Count(cell => cell.Tone == tone), "0");
        }

        var worth = Worth.Of(edition.Decisions.Policy);
        var total = card.Cells.Sum(cell => edition.Decisions.WeightOf(cell.Title));
        Score(tones.Length, "Weighted, worst", cell => worth.Least(cell.Verdict.Overall.Worst));
        Score(tones.Length + 1, "Weighted, best", cell => worth.Most(cell.Verdict.Overall.Best));

        void Score(int column, string heading, Func<Cell, double> value)
        {
            var sum = card.Cells.Sum(cell => edition.Decisions.WeightOf(cell.Title) * value(cell));
            book.Formula(
                sheet.Cell(row, FirstCountColumn + column),
                $"IF(SUMIFS({outcomes.Column("Weight")},{outcomes.Column("Card no.")},$A{row})=0,0,SUMIFS({outcomes.Column(heading)},{outcomes.Column("Card no.")},$A{row})/SUMIFS({outcomes.Column("Weight")},{outcomes.Column("Card no.")},$A{row}))",
                total == 0 ? 0 : sum / total, "0.000");
        }
    }

    private static void Finish(Book book, IXLWorksheet sheet, EditionReport edition, int columns)
    {
        var lastRow = HeadingRow + edition.Cards.Count;
        sheet.Column(1).Width = 5;
        Book.Width(sheet, 2, edition.Cards.Select(card => card.Card.Name).Append("loses something nobody graded"), most: 34);
        sheet.Column(3).Width = 60;
        sheet.Columns(FirstCountColumn, columns).Width = 10.5;
        Look.Note(sheet.Range(2, 1, 2, 8));
        Look.Note(sheet.Range(3, 1, 3, 8));
        Look.Heading(sheet.Range(HeadingRow, 1, HeadingRow, columns));
        if (edition.Cards.Count > 0)
            Look.Body(sheet.Range(HeadingRow + 1, 1, lastRow, columns));
        Look.Figures(sheet.Range(HeadingRow, 1, lastRow, 1));
        Look.Figures(sheet.Range(HeadingRow, FirstCountColumn, lastRow, columns));
        book.FitRows(sheet, HeadingRow, lastRow, columns);
        sheet.SheetView.Freeze(HeadingRow, 2);
    }

    private static void Legend(IXLWorksheet sheet, int row, CellTone[] tones)
    {
        Look.Heading(sheet.Range(row, 2, row, 3));
        Book.Text(sheet.Cell(row, 2), "Legend");
        foreach (var tone in tones)
        {
            Look.Tone(Book.Text(sheet.Cell(++row, 2), CellWording.Of(tone)), tone);
            Book.Text(sheet.Cell(row, 3), Names.Sentence(CellWording.Meaning(tone)));
        }

        foreach (var evidence in Enum.GetValues<CellEvidence>())
        {
            Look.Evidence(Book.Text(sheet.Cell(++row, 2), $"{Edge(evidence)} lower edge"), evidence);
            Book.Text(sheet.Cell(row, 3), Names.Sentence(CellWording.Meaning(evidence)));
        }

        Look.Changeable(Book.Text(sheet.Cell(++row, 2), "framed in blue"));
        Book.Text(sheet.Cell(row, 3), "Yours to change: weights, worths, prices, the speed floor, the two cards to compare. Everything that depends on them recalculates.");
    }

    private static string Edge(CellEvidence evidence) => evidence switch
    {
        CellEvidence.Seen => "thick",
        CellEvidence.Documented => "thin",
        CellEvidence.Inferred => "dashed",
        CellEvidence.NotKnown => "dotted",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
