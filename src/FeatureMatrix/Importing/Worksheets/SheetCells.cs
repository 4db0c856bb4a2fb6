using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>The filled cells of one sheet of a workbook as text, by row and column, both from 1.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Cells">What the cells show, blanks around it removed; dates as year-month-day. Empty cells are absent.</param>
internal sealed record SheetCells(string Name, IReadOnlyDictionary<(int Row, int Column), string> Cells)
{
    /// <summary>The text of a cell; empty where there is none.</summary>
    public string this[int row, int column] => Cells.GetValueOrDefault((row, column), "");

    /// <summary>The rows that hold anything, in order.</summary>
    public IReadOnlyList<int> Rows => Cells.Keys.Select(key => key.Row).Distinct().Order().ToList();

    /// <summary>A place as people write it: <c>Observations!K5</c>.</summary>
    public string Place(int row, int column) => $"{Name}!{Letters(column)}{row.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>
    /// All sheets of a workbook. Throws what the Open XML SDK throws where the file is none, and
    /// <see cref="WorkbookTooLargeException"/>. Sheets and cells that have no name or no place are passed over.
    /// </summary>
    public static IReadOnlyList<SheetCells> ReadAll(byte[] workbook)
    {
        WorkbookLimits.Check(workbook);
        using var document = SpreadsheetDocument.Open(new MemoryStream(workbook), isEditable: false);
        var part = document.WorkbookPart ?? throw new FileFormatException("The package holds no workbook.");
        var shared = part.SharedStringTablePart?.SharedStringTable.Elements<SharedStringItem>().Select(TextOf).ToList() ?? [];
        var dates = DateStyles(part);
        var (cells, characters) = (0, 0);
        var sheets = new List<SheetCells>();
        foreach (var sheet in part.Workbook.Descendants<Sheet>())
        {
            if (sheet is not { Name.Value: { } name, Id.Value: { } id } || part.GetPartById(id) is not WorksheetPart content)
                continue;
            var texts = new Dictionary<(int Row, int Column), string>();
            foreach (var cell in content.Worksheet.Descendants<Cell>())
            {
                if (Address(cell.CellReference?.Value) is not { } address || TextOf(cell, shared, dates) is not { Length: > 0 } text)
                    continue;
                cells++;
                characters += text.Length;
                if (cells > WorkbookLimits.Cells || characters > WorkbookLimits.Characters)
                    throw new WorkbookTooLargeException();
                texts.TryAdd(address, text);
            }

            sheets.Add(new SheetCells(name, texts));
        }

        return sheets;
    }

    /// <summary>The same; null where the file is no workbook, damaged, protected by a password, or too large.</summary>
    /// <param name="workbook">The file.</param>
    /// <param name="fault">Which of these it is.</param>
    public static IReadOnlyList<SheetCells>? TryReadAll(byte[] workbook, out string fault)
    {
        fault = WorksheetFaultTexts.NoWorkbook;
        try
        {
            return ReadAll(workbook);
        }
        catch (WorkbookTooLargeException)
        {
            fault = WorksheetFaultTexts.TooLarge;
            return null;
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            // The library fails with whatever it runs into where a package is damaged, ten kinds of exception at least.
            return null;
        }
    }

    private static string TextOf(Cell cell, List<string> shared, HashSet<uint> dates)
    {
        var value = cell.CellValue?.Text ?? "";
        switch (cell.DataType?.Value ?? CellValues.Number)
        {
            // A cell that only has a style may still say that it holds a shared text.
            case CellValues.SharedString when value.Length == 0:
                return "";
            case CellValues.SharedString:
                return Digits.Decimal(value) is { } index && index < shared.Count ? shared[index].Trim() : "";
            case CellValues.InlineString:
                return (cell.InlineString?.InnerText ?? "").Trim();
            case CellValues.Boolean:
                return value == "1" ? "yes" : "no";
            case CellValues.Number when double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number):
                return dates.Contains(cell.StyleIndex?.Value ?? 0) && number is > 0 and < 2_958_466
                    ? DateTime.FromOADate(number).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                    : number.ToString("0.###############", CultureInfo.InvariantCulture);
            default:
                return value.Trim();
        }
    }

    // Phonetic readings are no part of the text.
    private static string TextOf(SharedStringItem item) =>
        string.Concat(item.Descendants<Text>().Where(text => text.Parent is not PhoneticRun).Select(text => text.Text));

    private static HashSet<uint> DateStyles(WorkbookPart part)
    {
        var sheet = part.WorkbookStylesPart?.Stylesheet;
        var own = sheet?.NumberingFormats?.Elements<NumberingFormat>()
            .Where(format => format.FormatCode?.Value?.Contains('y', StringComparison.OrdinalIgnoreCase) == true)
            .Select(format => format.NumberFormatId?.Value ?? 0).ToHashSet() ?? [];
        // ECMA-376 part 1, 18.8.30: the built-in formats 14 to 17 and 22 are dates.
        return sheet?.CellFormats?.Elements<CellFormat>().Select((format, i) => (Id: format.NumberFormatId?.Value ?? 0, Index: (uint)i))
            .Where(one => one.Id is (>= 14 and <= 17) or 22 || own.Contains(one.Id)).Select(one => one.Index).ToHashSet() ?? [];
    }

    /// <summary>Row and column of a reference such as <c>AB12</c>; null where it is none, or lies beyond XFD1048576, the last cell there is.</summary>
    private static (int Row, int Column)? Address(string? reference)
    {
        var letters = reference?.TrimEnd([.. "0123456789"]) ?? "";
        if (letters.Length is 0 or > 3 || !letters.All(char.IsAsciiLetterUpper) || Digits.Decimal(reference.AsSpan(letters.Length)) is not (> 0 and <= 1_048_576 and var row))
            return null;
        return (row, letters.Aggregate(0, (number, letter) => (number * 26) + letter - 'A' + 1));
    }

    /// <summary>A column as spreadsheets name it.</summary>
    public static string Letters(int column) => column <= 26 ? ((char)('A' + column - 1)).ToString() : Letters((column - 1) / 26) + Letters(((column - 1) % 26) + 1);
}
