using ClosedXML.Excel;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>Titles against cards, whole labels in the cells.</summary>
internal static class CoverageSheet
{
    /// <summary>The row of the headings.</summary>
    public const int HeadingRow = 4;

    /// <summary>The first column that holds cells; before it stand number, title and weight.</summary>
    public const int FirstCardColumn = 4;

    /// <summary>Adds the sheet. Weights may be changed.</summary>
    public static IXLWorksheet Add(Book book, string name, CoverageReport report)
    {
        var sheet = book.AddSheet(name);
        Head(sheet, report.Heading, report.PolicyText, [.. report.Columns.Select(column => column.Heading)]);
        for (var row = 0; row < report.Rows.Count; row++)
            Row(sheet, row + 1, report.Rows[row]);
        Finish(book, sheet, report);
        return sheet;
    }

    /// <summary>Title, note and headings.</summary>
    public static void Head(IXLWorksheet sheet, string heading, string note, IReadOnlyList<string> columns)
    {
        Look.Title(Book.Text(sheet.Cell(1, 1), heading));
        Book.Text(sheet.Cell(2, 1), note);
        IReadOnlyList<string> headings = ["No.", "Title", "Weight", .. columns];
        for (var column = 0; column < headings.Count; column++)
            Book.Text(sheet.Cell(HeadingRow, column + 1), headings[column]);
    }

    /// <summary>The widths of all columns.</summary>
    public static void SetWidths(IXLWorksheet sheet, IEnumerable<string> titles, IReadOnlyList<string> columns)
    {
        sheet.Column(1).Width = 5;
        Book.Width(sheet, 2, titles, most: 32);
        sheet.Column(3).Width = 9;
        for (var column = 0; column < columns.Count; column++)
            sheet.Column(FirstCardColumn + column).Width = WidthFor(columns[column]);
    }

    /// <summary>An absolute reference to the weights.</summary>
    public static string Weights(IXLWorksheet sheet, CoverageReport report) => Range(sheet, "C", report);

    /// <summary>An absolute reference to the numbers of the titles, which stay with them when the reader sorts.</summary>
    public static string Numbers(IXLWorksheet sheet, CoverageReport report) => Range(sheet, "A", report);

    /// <summary>An absolute reference to the labels, titles down and cards across.</summary>
    public static string Labels(IXLWorksheet sheet, CoverageReport report)
    {
        var last = sheet.Column(FirstCardColumn - 1 + Math.Max(1, report.Columns.Count)).ColumnLetter();
        return Book.Reference(sheet, $"${sheet.Column(FirstCardColumn).ColumnLetter()}${HeadingRow + 1}:${last}${HeadingRow + Math.Max(1, report.Rows.Count)}");
    }

    private static string Range(IXLWorksheet sheet, string letter, CoverageReport report) =>
        Book.Reference(sheet, $"${letter}${HeadingRow + 1}:${letter}${HeadingRow + Math.Max(1, report.Rows.Count)}");

    private static void Row(IXLWorksheet sheet, int number, CoverageRow row)
    {
        var line = HeadingRow + number;
        Book.Number(sheet.Cell(line, 1), number, "0");
        Book.Text(sheet.Cell(line, 2), row.Title.Name).Style.Font.Bold = true;
        Look.Changeable(Book.Number(sheet.Cell(line, 3), row.Weight));
        for (var i = 0; i < row.Cells.Count; i++)
        {
            var cell = Book.Text(sheet.Cell(line, FirstCardColumn + i), row.Cells[i].Label);
            Look.Tone(cell, row.Cells[i].Tone);
        }
    }

    // LibreOffice shows a heading with a link in one line; those of setups have none and wrap.
    private static double WidthFor(string heading) => heading.Length <= 28 ? Math.Max(20, (heading.Length * 1.15) + 2) : 20;

    private static void Finish(Book book, IXLWorksheet sheet, CoverageReport report)
    {
        var (lastRow, lastColumn) = (HeadingRow + report.Rows.Count, FirstCardColumn - 1 + report.Columns.Count);
        SetWidths(sheet, report.Rows.Select(row => row.Title.Name), [.. report.Columns.Select(column => column.Heading)]);
        Look.Note(sheet.Range(2, 1, 2, Math.Max(3, Math.Min(lastColumn, 8))));
        book.FitRows(sheet, HeadingRow, lastRow, lastColumn);
        Look.Heading(sheet.Range(HeadingRow, 1, HeadingRow, lastColumn));
        if (report.Rows.Count > 0)
        {
            Look.Body(sheet.Range(HeadingRow + 1, 1, lastRow, lastColumn));
            sheet.Range(HeadingRow, 1, lastRow, lastColumn).SetAutoFilter();
            sheet.Range(HeadingRow + 1, 3, lastRow, 3).SetDataValidation().Decimal.EqualOrGreaterThan(0);
        }

        Look.Figures(sheet.Range(HeadingRow, 1, lastRow, 1));
        Look.Figures(sheet.Range(HeadingRow, 3, lastRow, 3));
        for (var row = 0; row < report.Rows.Count; row++)
        {
            for (var column = 0; column < report.Columns.Count; column++)
                Look.Evidence(sheet.Cell(HeadingRow + 1 + row, FirstCardColumn + column), report.Rows[row].Cells[column].Evidence);
        }

        sheet.SheetView.Freeze(HeadingRow, 3);
        book.PrepareForPrint(sheet, HeadingRow, 3);
    }
}
