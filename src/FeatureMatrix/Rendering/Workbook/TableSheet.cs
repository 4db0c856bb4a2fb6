using ClosedXML.Excel;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>Any table of a report as a sheet: title, note, headings with filters, rows, frozen panes, print set-up.</summary>
internal static class TableSheet
{
    /// <summary>The row of the headings on every table sheet.</summary>
    public const int HeadingRow = 4;

    /// <summary>Adds the sheet; the first columns stay in view.</summary>
    public static IXLWorksheet Add(Book book, string name, Table table, int frozenColumns = 1)
    {
        var sheet = book.AddSheet(name);
        var columns = table.Columns.Count;
        Look.Title(Book.Text(sheet.Cell(1, 1), table.Title));
        Book.Text(sheet.Cell(2, 1), table.Note);
        for (var column = 0; column < columns; column++)
            Book.Text(sheet.Cell(HeadingRow, column + 1), table.Columns[column].Heading);
        for (var row = 0; row < table.Rows.Count; row++)
        {
            for (var column = 0; column < columns; column++)
                Fill(sheet.Cell(HeadingRow + 1 + row, column + 1), table.Rows[row][column], table.Columns[column]);
        }

        Finish(book, sheet, table, frozenColumns);
        return sheet;
    }

    private static void Fill(IXLCell cell, TableCell content, TableColumn column)
    {
        if (content.Number is { } number && column.IsNumber)
            Book.Number(cell, number);
        else
            Book.Text(cell, content.Text);
        if (content.Tone is { } tone)
            Look.Tone(cell, tone);
    }

    private static void Finish(Book book, IXLWorksheet sheet, Table table, int frozenColumns)
    {
        var columns = table.Columns.Count;
        for (var column = 0; column < columns; column++)
            Book.Width(sheet, column + 1, table.Rows.Select(row => row[column].Text).Append(table.Columns[column].Heading), most: columns > 8 ? 26 : 46);
        Look.Note(sheet.Range(2, 1, 2, Math.Min(columns, 6)));
        Look.Heading(sheet.Range(HeadingRow, 1, HeadingRow, columns));
        if (table.Rows.Count > 0)
        {
            Look.Body(sheet.Range(HeadingRow + 1, 1, HeadingRow + table.Rows.Count, columns));
            sheet.Range(HeadingRow, 1, HeadingRow + table.Rows.Count, columns).SetAutoFilter();
        }

        for (var column = 0; column < columns; column++)
        {
            if (table.Columns[column].IsNumber)
                Look.Figures(sheet.Range(HeadingRow, column + 1, HeadingRow + table.Rows.Count, column + 1));
        }

        book.FitRows(sheet, HeadingRow, HeadingRow + table.Rows.Count, columns);
        sheet.SheetView.Freeze(HeadingRow, Math.Min(frozenColumns, columns));
        book.PrepareForPrint(sheet, HeadingRow, frozenColumns);
    }
}
