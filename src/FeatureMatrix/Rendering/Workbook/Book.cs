using ClosedXML.Excel;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// A workbook being built: sheets with valid, distinct names, and the values of formulas, which are written beside them so
/// that a viewer that never calculates shows the same.
/// </summary>
internal sealed class Book : IDisposable
{
    private const int LongestSheetName = 31;
    private static readonly char[] NotInSheetNames = [':', '\\', '/', '?', '*', '[', ']'];

    private readonly Dictionary<(string Sheet, string Cell), FormulaValue> _values = [];
    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase);

    public XLWorkbook Workbook { get; } = new();

    /// <summary>The values of all formulas, by sheet and cell.</summary>
    public IReadOnlyDictionary<(string Sheet, string Cell), FormulaValue> Values => _values;

    /// <summary>The rows to repeat on each printed page, by sheet: the last row of the headings and the last heading column.</summary>
    public Dictionary<string, (int Rows, int Columns)> PrintTitles { get; } = [];

    /// <summary>What the file says of itself. A fixed moment where no edition has a date, so that no clock gets into the file.</summary>
    public static void Describe(XLWorkbook workbook, string title, string subject = "", DateOnly? date = null)
    {
        var moment = (date ?? new DateOnly(2000, 1, 1)).ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        (workbook.Properties.Created, workbook.Properties.Modified) = (moment, moment);
        (workbook.Properties.Title, workbook.Properties.Author, workbook.Properties.LastModifiedBy) = (title, "FeatureMatrix", "FeatureMatrix");
        if (subject.Length > 0)
            workbook.Properties.Subject = subject;
    }

    /// <summary>Rows that go into the file as it is written.</summary>
    public List<BulkRows> Bulk { get; } = [];

    /// <summary>A new sheet; the name is made valid and distinct.</summary>
    public IXLWorksheet AddSheet(string wanted)
    {
        var sheet = Workbook.Worksheets.Add(NameFor(wanted));
        sheet.ShowGridLines = false;
        return sheet;
    }

    /// <summary>Text, never anything that a spreadsheet would guess from it: no number, date or formula.</summary>
    public static IXLCell Text(IXLCell cell, string text)
    {
        const int longest = 32_000;
        cell.SetValue(text.Length > longest ? text[..longest] + "…" : text);
        return cell;
    }

    /// <summary>A number.</summary>
    public static IXLCell Number(IXLCell cell, double number, string format = "0.##")
    {
        cell.SetValue(number);
        Look.Number(cell, format);
        return cell;
    }

    /// <summary>A formula together with its value.</summary>
    public IXLCell Formula(IXLCell cell, string formula, double value, string format = "0.00")
    {
        cell.FormulaA1 = formula;
        Look.Number(cell, format);
        _values[(cell.Worksheet.Name, cell.Address.ToString()!)] = new FormulaValue(value, null);
        return cell;
    }

    /// <summary>A formula that gives text, together with the text.</summary>
    public IXLCell Formula(IXLCell cell, string formula, string value)
    {
        cell.FormulaA1 = formula;
        _values[(cell.Worksheet.Name, cell.Address.ToString()!)] = new FormulaValue(0, value);
        return cell;
    }

    /// <summary>
    /// A cell that shows the text of another one and leads there. A formula and no link of the cell: LibreOffice shows cells with links
    /// in its own colours and on a single line.
    /// </summary>
    public IXLCell Mirror(IXLCell cell, IXLCell shown) => Formula(
        cell, $"HYPERLINK({Quoted("#" + Reference(shown.Worksheet, shown.Address.ToString()!))},{Reference(shown.Worksheet, shown.Address.ToString()!)})", shown.GetString());

    /// <summary>A text inside a formula.</summary>
    public static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    /// <summary>A link to the top of another sheet.</summary>
    public static void Link(IXLCell cell, IXLWorksheet target, string address = "A1")
    {
        cell.Hyperlink = new XLHyperlink(Reference(target, address));
        cell.Style.Font.Underline = XLFontUnderlineValues.Single;
    }

    /// <summary>An address on a sheet, as formulas and links write it.</summary>
    public static string Reference(IXLWorksheet sheet, string address) => $"'{sheet.Name.Replace("'", "''", StringComparison.Ordinal)}'!{address}";

    /// <summary>A width from the longest text, without measuring fonts.</summary>
    public static void Width(IXLWorksheet sheet, int column, IEnumerable<string> texts, double least = 8, double most = 46) =>
        sheet.Column(column).Width = Math.Clamp(texts.Select(text => text.Length).DefaultIfEmpty(0).Max() + 2, least, most);

    /// <summary>Page set-up that every sheet shares: landscape, as few pages wide as can be read, headings repeated, page numbers.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="headingRows">The rows that are repeated on every page.</param>
    /// <param name="headingColumns">The columns that are.</param>
    /// <param name="lastRow">The last row, where it is not on the sheet yet.</param>
    /// <param name="lastColumn">The last column then.</param>
    public void PrepareForPrint(IXLWorksheet sheet, int headingRows, int headingColumns = 0, int lastRow = 0, int lastColumn = 0)
    {
        sheet.PageSetup.PageOrientation = XLPageOrientation.Landscape;
        sheet.PageSetup.PaperSize = XLPaperSize.A4Paper;
        sheet.PageSetup.Margins.SetLeft(0.4).SetRight(0.4).SetTop(0.5).SetBottom(0.6);
        sheet.PageSetup.FitToPages(PagesAcross(sheet), 0);
        sheet.PageSetup.Footer.Left.AddText(sheet.Name.Replace("&", "&&", StringComparison.Ordinal));
        sheet.PageSetup.Footer.Right.AddText(XLHFPredefinedText.PageNumber);
        sheet.PageSetup.Footer.Right.AddText(" / ");
        sheet.PageSetup.Footer.Right.AddText(XLHFPredefinedText.NumberOfPages);
        if (lastRow > 0)
            sheet.PageSetup.PrintAreas.Add(sheet.Range(1, 1, lastRow, lastColumn).RangeAddress.ToString());
        else if (sheet.RangeUsed() is { } used)
            sheet.PageSetup.PrintAreas.Add(used.RangeAddress.ToString());
        PrintTitles[sheet.Name] = (headingRows, headingColumns);
    }

    /// <summary>A sheet with too many columns to be read on one page goes over several, its first columns on each.</summary>
    private static int PagesAcross(IXLWorksheet sheet)
    {
        // Characters that a landscape page of A4 holds at about three quarters of their size.
        const double readable = 180;
        var columns = sheet.LastColumnUsed()?.ColumnNumber() ?? 1;
        return Math.Max(1, (int)Math.Round(Enumerable.Range(1, columns).Sum(column => sheet.Column(column).Width) / readable));
    }

    /// <summary>Makes rows as high as their wrapped texts need, without measuring fonts; ClosedXML cannot, and LibreOffice does not.</summary>
    public void FitRows(IXLWorksheet sheet, int first, int last, int columns)
    {
        var widths = Enumerable.Range(1, columns).Select(column => sheet.Column(column).Width).ToList();
        for (var row = first; row <= last; row++)
        {
            var lines = Enumerable.Range(1, columns).Max(column => LinesIn(sheet.Cell(row, column), widths[column - 1]));
            sheet.Row(row).Height = HeightOf(lines);
        }
    }

    /// <summary>The height of a row with so many lines, in points; no row may be higher than 409.</summary>
    public static double HeightOf(int lines) => Math.Min(409, (lines * 14.4) + 2.6);

    public void Dispose() => Workbook.Dispose();

    private int LinesIn(IXLCell cell, double width) => TextLines.Count(ShownIn(cell), width * (cell.Style.Font.Bold ? 1.0 : 1.1));

    private string ShownIn(IXLCell cell)
    {
        if (!cell.HasFormula)
            return cell.GetString();
        return _values.TryGetValue((cell.Worksheet.Name, cell.Address.ToString()!), out var value) ? value.Text ?? "" : "";
    }

    private string NameFor(string wanted)
    {
        var valid = string.Concat(wanted.Select(c => NotInSheetNames.Contains(c) || char.IsControl(c) ? ' ' : c)).Trim().Trim('\'');
        if (valid.Length == 0)
            valid = "Sheet";
        var name = valid.Length > LongestSheetName ? valid[..LongestSheetName].TrimEnd() : valid;
        for (var number = 2; !_names.Add(name); number++)
        {
            var suffix = $" ({number})";
            name = valid[..Math.Min(valid.Length, LongestSheetName - suffix.Length)].TrimEnd() + suffix;
        }

        return name;
    }
}

/// <summary>What a formula gives: a number, or a text where there is one.</summary>
internal readonly record struct FormulaValue(double Number, string? Text);
