using ClosedXML.Excel;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// One row for each cell of the coverage by card, with its explanation in full. Cell comments would say the same, but a workbook
/// with comments that was saved in LibreOffice cannot be read back by ClosedXML 0.95.4.
/// </summary>
internal static class WhySheet
{
    private const int HeadingRow = 4;
    private static readonly string[] Headings = ["Title", "Card", "Verdict", "Evidence", "Why"];

    /// <summary>Adds the sheet, with links from each cell of the coverage sheet to its row and back.</summary>
    public static void Add(Book book, CoverageReport report, IXLWorksheet coverage, IReadOnlyList<IXLWorksheet> cards)
    {
        var sheet = book.AddSheet("Why");
        Look.Title(Book.Text(sheet.Cell(1, 1), "Why each cell says what it says"));
        Book.Text(sheet.Cell(2, 1), "A click on a verdict in Coverage leads to its row here; a click on the title here leads back.");
        for (var column = 0; column < Headings.Length; column++)
            Book.Text(sheet.Cell(HeadingRow, column + 1), Headings[column]);
        var row = HeadingRow;
        for (var title = 0; title < report.Rows.Count; title++)
        {
            for (var card = 0; card < report.Columns.Count; card++)
            {
                var from = coverage.Cell(CoverageSheet.HeadingRow + 1 + title, CoverageSheet.FirstCardColumn + card);
                Row(book, sheet, ++row, report.Rows[title].Cells[card], coverage, from, cards[card]);
            }
        }

        Finish(book, sheet, report, row);
    }

    private static void Row(Book book, IXLWorksheet sheet, int row, Reports.Cell cell, IXLWorksheet coverage, IXLCell from, IXLWorksheet card)
    {
        Book.Link(Book.Text(sheet.Cell(row, 1), cell.Title.Name), coverage, from.Address.ToString()!);
        Book.Link(Book.Text(sheet.Cell(row, 2), cell.Card.Name), card);
        var verdict = Book.Text(sheet.Cell(row, 3), cell.Label);
        Look.Tone(verdict, cell.Tone);
        Book.Text(sheet.Cell(row, 4), CellWording.Of(cell.Evidence));
        Book.Text(sheet.Cell(row, 5), cell.Explain().ToText());
        book.Mirror(from, verdict);
    }

    private static void Finish(Book book, IXLWorksheet sheet, CoverageReport report, int lastRow)
    {
        Book.Width(sheet, 1, report.Rows.Select(row => row.Title.Name), most: 28);
        Book.Width(sheet, 2, report.Columns.Select(column => column.Card.Name), most: 28);
        sheet.Column(3).Width = 26;
        sheet.Column(4).Width = 13;
        sheet.Column(5).Width = 100;
        Look.Note(sheet.Range(2, 1, 2, 5));
        Look.Heading(sheet.Range(HeadingRow, 1, HeadingRow, Headings.Length));
        if (lastRow > HeadingRow)
        {
            Look.Body(sheet.Range(HeadingRow + 1, 1, lastRow, Headings.Length));
            sheet.Range(HeadingRow, 1, lastRow, Headings.Length).SetAutoFilter();
        }

        book.FitRows(sheet, HeadingRow, lastRow, Headings.Length);
        sheet.SheetView.Freeze(HeadingRow, 2);
        book.PrepareForPrint(sheet, HeadingRow);
    }
}
