using ClosedXML.Excel;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>The policy the edition was decided under, with the two worths as named cells that may be changed.</summary>
internal static class PolicySheet
{
    private const int FirstRow = 4;

    /// <summary>Adds the sheet and the names SpeedFloor, SevereWorth and CosmeticWorth.</summary>
    public static IXLWorksheet Add(Book book, Policy policy)
    {
        var sheet = book.AddSheet("Policy");
        Look.Title(Book.Text(sheet.Cell(1, 1), "Policy"));
        Book.Text(sheet.Cell(2, 1), "What was allowed and how losses weigh. The framed floor and worths may be changed: what the sheet Bench says of speeds, and the scores follow; everything else decides cells, which the program has to decide again.");
        var row = FirstRow;
        foreach (var (name, value) in PolicyWording.Lines(policy).Where(line => !line.Name.StartsWith("worth", StringComparison.Ordinal) && line.Name != "speed floor"))
        {
            Book.Text(sheet.Cell(row, 1), Names.Sentence(name));
            Book.Text(sheet.Cell(row++, 2), value);
        }

        row = Floor(book, sheet, row, policy.FpsFloor);
        row = Worth(book, sheet, row, "Worth kept after a severe loss", "SevereWorth", policy.SevereWorth);
        row = Worth(book, sheet, row, "Worth kept after a cosmetic loss", "CosmeticWorth", policy.CosmeticWorth);
        sheet.Column(1).Width = 42;
        sheet.Column(2).Width = 48;
        Look.Note(sheet.Range(2, 1, 2, 2));
        Look.Body(sheet.Range(FirstRow, 1, row - 1, 2));
        book.FitRows(sheet, FirstRow, row - 1, 2);
        book.PrepareForPrint(sheet, 1);
        return sheet;
    }

    /// <summary>The speed floor, which may be empty.</summary>
    private static int Floor(Book book, IXLWorksheet sheet, int row, double? floor)
    {
        Book.Text(sheet.Cell(row, 1), "Speed floor, frames a second (empty for none)");
        var cell = floor is { } fps ? Book.Number(sheet.Cell(row, 2), fps) : sheet.Cell(row, 2);
        cell.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
        Look.Changeable(cell);
        cell.SetDataValidation().Decimal.EqualOrGreaterThan(0);
        book.Workbook.NamedRanges.Add("SpeedFloor", cell.AsRange());
        return row + 1;
    }

    private static int Worth(Book book, IXLWorksheet sheet, int row, string text, string name, double value)
    {
        Book.Text(sheet.Cell(row, 1), text);
        var cell = Book.Number(sheet.Cell(row, 2), value);
        cell.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
        Look.Changeable(cell);
        var rule = cell.SetDataValidation();
        rule.Decimal.Between(0.01, 0.99);
        rule.InputTitle = "A share";
        rule.InputMessage = "Between 0.01 and 0.99.";
        book.Workbook.NamedRanges.Add(name, cell.AsRange());
        return row + 1;
    }
}
