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

    private readonly Dictionary<(string Sheet, string Cell), double> _values = [];
    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase);

    public XLWorkbook Workbook { get; } = new();

    /// <summary>The values of all formulas, by sheet and cell.</summary>
    public IReadOnlyDictionary<(string Sheet, string Cell), double> Values => _values;

    /// <summary>The rows to repeat on each printed page, by sheet: the last row of the headings and the last heading column.</summary>
    public Dictionary<string, (int Rows, int Columns)> PrintTitles { get; } = [];

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
        cell.Style.NumberFormat.Format = format;
        return cell;
    }

    /// <summary>A formula together with its value.</summary>
    public IXLCell Formula(IXLCell cell, string formula, double value, string format = "0.00")
    {
        cell.FormulaA1 = formula;
        cell.Style.NumberFormat.Format = format;
        _values[(cell.Worksheet.Name, cell.Address.ToString()!)] = value;
        return cell;
    }

    /// <summary>A link to the top of another sheet.</summary>
    public static void Link(IXLCell cell, IXLWorksheet target, string address = "A1")
    {
        cell.Hyperlink = new XLHyperlink($"'{target.Name.Replace("'", "''", StringComparison.Ordinal)}'!{address}");
        cell.Style.Font.Underline = XLFontUnderlineValues.Single;
    }

    /// <summary>A width from the longest text, without measuring fonts.</summary>
    public static void Width(IXLWorksheet sheet, int column, IEnumerable<string> texts, double least = 8, double most = 46) =>
        sheet.Column(column).Width = Math.Clamp(texts.Select(text => text.Length).DefaultIfEmpty(0).Max() + 2, least, most);

    /// <summary>Page set-up that every sheet shares: landscape, one page wide, headings repeated, page numbers.</summary>
    public void PrepareForPrint(IXLWorksheet sheet, int headingRows, int headingColumns = 0, bool fitWidth = true)
    {
        sheet.PageSetup.PageOrientation = XLPageOrientation.Landscape;
        sheet.PageSetup.PaperSize = XLPaperSize.A4Paper;
        sheet.PageSetup.Margins.SetLeft(0.4).SetRight(0.4).SetTop(0.5).SetBottom(0.6);
        if (fitWidth)
            sheet.PageSetup.FitToPages(1, 0);
        sheet.PageSetup.Footer.Left.AddText(sheet.Name.Replace("&", "&&", StringComparison.Ordinal));
        sheet.PageSetup.Footer.Right.AddText(XLHFPredefinedText.PageNumber);
        sheet.PageSetup.Footer.Right.AddText(" / ");
        sheet.PageSetup.Footer.Right.AddText(XLHFPredefinedText.NumberOfPages);
        if (sheet.RangeUsed() is { } used)
            sheet.PageSetup.PrintAreas.Add(used.RangeAddress.ToString());
        PrintTitles[sheet.Name] = (headingRows, headingColumns);
    }

    public void Dispose() => Workbook.Dispose();

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
