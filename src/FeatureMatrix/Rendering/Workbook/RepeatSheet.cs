using ClosedXML.Excel;
using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>One result on one printable page: what it is, what was used, what was measured, and what to do.</summary>
internal static class RepeatSheet
{
    /// <summary>Adds the sheet.</summary>
    public static void Add(Book book, RepeatReport report)
    {
        var sheet = book.AddSheet("Repeat");
        sheet.Column(1).Width = 20;
        sheet.Column(2).Width = 78;
        Look.Title(Book.Text(sheet.Cell(1, 1), report.Heading));
        Book.Text(sheet.Cell(2, 1), $"Published result: {report.Result}");
        Look.Note(sheet.Range(2, 1, 2, 2));
        sheet.Cell(2, 1).Style.Font.Bold = true;
        var row = Block(book, sheet, 4, "What was used", report.Setup);
        if (report.Measured.Count > 0)
            row = Block(book, sheet, row + 1, "What was measured", [.. report.Measured.Select((line, i) => ($"Series {Number(i)}", line))]);
        Block(book, sheet, row + 1, "What to do", [.. report.Steps.Select((step, i) => (Number(i), step))]);
        book.PrepareForPrint(sheet, 1);
        sheet.PageSetup.PageOrientation = XLPageOrientation.Portrait;
    }

    private static int Block(Book book, IXLWorksheet sheet, int row, string heading, IReadOnlyList<(string Name, string Value)> lines)
    {
        Book.Text(sheet.Cell(row, 1), heading);
        Look.Heading(sheet.Range(row, 1, row, 2));
        for (var i = 0; i < lines.Count; i++)
        {
            Book.Text(sheet.Cell(row + 1 + i, 1), lines[i].Name);
            Book.Text(sheet.Cell(row + 1 + i, 2), lines[i].Value);
        }

        var last = row + lines.Count;
        Look.Body(sheet.Range(row + 1, 1, last, 2));
        book.FitRows(sheet, row + 1, last, 2);
        return last + 1;
    }

    private static string Number(int index) => (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
