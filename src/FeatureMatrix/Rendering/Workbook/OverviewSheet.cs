using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// The first sheet: one line a card with its counts and the bounds of its score, all calculated from the Outcomes sheet, links to the
/// other sheets, and the legend.
/// </summary>
internal static class OverviewSheet
{
    private const int HeadingRow = 5;
    private const int FirstCountColumn = 3;

    /// <summary>Fills the sheet, which was added first so that it stands first.</summary>
    public static void Fill(Book book, IXLWorksheet sheet, EditionReport edition, OutcomeSheet outcomes, IReadOnlyList<IXLWorksheet> cardSheets)
    {
        var tones = Enum.GetValues<CellTone>();
        Look.Title(Book.Text(sheet.Cell(1, 1), edition.Catalog.Name));
        Book.Text(sheet.Cell(2, 1), Subtitle(edition));
        Book.Text(sheet.Cell(3, 1), "Scores are shares of the library's weight, 0 to 1: at worst and at best, over everything that is not known. Framed cells on other sheets may be changed; everything here follows.");
        string[] headings = ["Card", "What you lose", .. tones.Select(Look.ToneText), "Score at worst", "Score at best"];
        for (var column = 0; column < headings.Length; column++)
            Book.Text(sheet.Cell(HeadingRow, column + 1), headings[column]);
        for (var i = 0; i < edition.Cards.Count; i++)
            Row(book, sheet, HeadingRow + 1 + i, edition, i, tones, outcomes, cardSheets[i]);
        Finish(book, sheet, edition, headings.Length);
        Legend(sheet, HeadingRow + edition.Cards.Count + 3, tones);
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
        Book.Link(Book.Text(sheet.Cell(row, 1), card.Card.Name), cardSheet);
        Book.Text(sheet.Cell(row, 2), card.Headline);
        for (var i = 0; i < tones.Length; i++)
        {
            var tone = tones[i];
            book.Formula(
                sheet.Cell(row, FirstCountColumn + i), $"COUNTIFS({outcomes.Column("Card")},$A{row},{outcomes.Column("Verdict")},\"{tone}\")",
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
                $"IF(SUMIFS({outcomes.Column("Weight")},{outcomes.Column("Card")},$A{row})=0,0,SUMIFS({outcomes.Column(heading)},{outcomes.Column("Card")},$A{row})/SUMIFS({outcomes.Column("Weight")},{outcomes.Column("Card")},$A{row}))",
                total == 0 ? 0 : sum / total, "0.000");
        }
    }

    private static void Finish(Book book, IXLWorksheet sheet, EditionReport edition, int columns)
    {
        var lastRow = HeadingRow + edition.Cards.Count;
        Book.Width(sheet, 1, edition.Cards.Select(card => card.Card.Name));
        sheet.Column(2).Width = 56;
        sheet.Columns(FirstCountColumn, columns).Width = 12;
        Look.Note(sheet.Range(2, 1, 2, 8));
        sheet.Row(2).Height = 18;
        Look.Note(sheet.Range(3, 1, 3, 8));
        Look.Heading(sheet.Range(HeadingRow, 1, HeadingRow, columns));
        if (edition.Cards.Count > 0)
            Look.Body(sheet.Range(HeadingRow + 1, 1, lastRow, columns));
        sheet.SheetView.Freeze(HeadingRow, 1);
        book.PrepareForPrint(sheet, HeadingRow, 1);
    }

    private static void Legend(IXLWorksheet sheet, int row, CellTone[] tones)
    {
        Look.Heading(sheet.Range(row, 1, row, 2));
        Book.Text(sheet.Cell(row, 1), "Legend");
        foreach (var tone in tones)
        {
            var cell = Book.Text(sheet.Cell(++row, 1), Look.ToneText(tone));
            Look.Tone(cell, tone);
        }

        foreach (var (evidence, text) in new[]
        {
            (CellEvidence.Seen, "thick lower edge: somebody watched this very route"),
            (CellEvidence.Documented, "thin lower edge: measured or documented throughout"),
            (CellEvidence.Inferred, "dashed lower edge: something is inferred"),
            (CellEvidence.NotKnown, "dotted lower edge: something that decides is not known"),
        })
        {
            Look.Evidence(Book.Text(sheet.Cell(++row, 1), text), evidence);
        }
    }
}
