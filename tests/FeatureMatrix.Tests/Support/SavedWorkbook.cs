using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;

namespace FeatureMatrix.Tests.Support;

/// <summary>A cell of a saved workbook as it stands in the file: its formula, and the value beside it.</summary>
internal sealed record SavedCell(string Formula, string Value, bool IsText);

/// <summary>A saved workbook, read with nothing but the Open XML SDK.</summary>
internal sealed class SavedWorkbook(byte[] bytes)
{
    /// <summary>Every cell that holds anything, by sheet and address.</summary>
    public IReadOnlyDictionary<(string Sheet, string Address), SavedCell> Cells { get; } = Read(bytes);

    /// <summary>The cells that calculate.</summary>
    public IEnumerable<KeyValuePair<(string Sheet, string Address), SavedCell>> Formulas => Cells.Where(cell => cell.Value.Formula.Length > 0);

    /// <summary>The sheets in their order.</summary>
    public IReadOnlyList<string> Sheets
    {
        get
        {
            using var document = Open();
            return document.WorkbookPart!.Workbook.Descendants<Sheet>().Select(sheet => sheet.Name!.Value!).ToList();
        }
    }

    /// <summary>The value of a cell; empty where it holds nothing.</summary>
    public string this[string sheet, string address] => Cells.TryGetValue((sheet, address), out var cell) ? cell.Value : "";

    /// <summary>The first cell of a sheet with this text.</summary>
    public string Find(string sheet, string text) => Cells.First(cell => cell.Key.Sheet == sheet && cell.Value.Value == text).Key.Address;

    /// <summary>The row of that cell.</summary>
    public int RowOf(string sheet, string text) => int.Parse(Find(sheet, text).TrimStart([.. Enumerable.Range('A', 26).Select(letter => (char)letter)]), CultureInfo.InvariantCulture);

    /// <summary>The letters of that cell's column.</summary>
    public string ColumnOf(string sheet, string text) => Find(sheet, text).TrimEnd([.. "0123456789"]);

    /// <summary>What the validator of the Open XML SDK finds for a version of the format.</summary>
    public IReadOnlyList<string> ErrorsFor(FileFormatVersions version)
    {
        using var document = Open();
        return new OpenXmlValidator(version).Validate(document)
            .Select(error => $"{error.Part?.Uri} {error.Path?.XPath}: {error.Description}").ToList();
    }

    /// <summary>The names that the workbook defines, with what they refer to.</summary>
    public IReadOnlyList<(string Name, string RefersTo)> DefinedNames
    {
        get
        {
            using var document = Open();
            return document.WorkbookPart!.Workbook.Descendants<DefinedName>().Select(name => (name.Name!.Value!, name.Text)).ToList();
        }
    }

    /// <summary>The places that links lead to, by the cell they stand in.</summary>
    public IReadOnlyDictionary<(string Sheet, string Address), string> Links
    {
        get
        {
            using var document = Open();
            return Worksheets(document).SelectMany(sheet => sheet.Part.Worksheet.Descendants<Hyperlink>()
                    .Select(link => (Key: (sheet.Name, link.Reference!.Value!), Target: link.Location?.Value
                        ?? sheet.Part.HyperlinkRelationships.Single(one => one.Id == link.Id!.Value).Uri.ToString())))
                .ToDictionary(link => link.Key, link => link.Target);
        }
    }

    /// <summary>The unpacked parts as text, in the order of the archive.</summary>
    public IReadOnlyList<(string Path, string Text)> Parts
    {
        get
        {
            using var zip = new ZipArchive(new MemoryStream(bytes), ZipArchiveMode.Read);
            return zip.Entries.Select(entry =>
            {
                using var reader = new StreamReader(entry.Open());
                return (entry.FullName, reader.ReadToEnd());
            }).ToList();
        }
    }

    /// <summary>A copy in which some numbers were typed over.</summary>
    public byte[] With(params (string Sheet, string Address, double Value)[] changes)
    {
        var stream = new MemoryStream();
        stream.Write(bytes);
        using (var document = SpreadsheetDocument.Open(stream, isEditable: true))
        {
            foreach (var (name, part) in Worksheets(document))
            {
                foreach (var (_, address, value) in changes.Where(change => change.Sheet == name))
                {
                    var cell = part.Worksheet.Descendants<Cell>().Single(one => one.CellReference == address);
                    (cell.DataType, cell.CellValue) = (CellValues.Number, new CellValue(value));
                }

                part.Worksheet.Save();
            }
        }

        return stream.ToArray();
    }

    private static Dictionary<(string Sheet, string Address), SavedCell> Read(byte[] bytes)
    {
        using var document = SpreadsheetDocument.Open(new MemoryStream(bytes), isEditable: false);
        var shared = document.WorkbookPart!.SharedStringTablePart?.SharedStringTable.Elements<SharedStringItem>().Select(item => item.InnerText).ToList() ?? [];
        return Worksheets(document).SelectMany(sheet => sheet.Part.Worksheet.Descendants<Cell>()
                .Where(cell => cell.CellFormula is not null || cell.CellValue is not null || cell.InlineString is not null)
                .Select(cell => (Key: (sheet.Name, cell.CellReference!.Value!), Value: Of(cell, shared))))
            .ToDictionary(cell => cell.Key, cell => cell.Value);
    }

    private static SavedCell Of(Cell cell, List<string> shared)
    {
        var value = cell.CellValue?.Text ?? cell.InlineString?.InnerText ?? "";
        var type = cell.DataType?.Value ?? CellValues.Number;
        if (type == CellValues.SharedString)
            value = shared[int.Parse(value, CultureInfo.InvariantCulture)];
        // ST_Xstring of ECMA-376 part 1, 22.9.2.19: _xHHHH_ stands for a UTF-16 unit, here for halves of characters beyond 16 bits.
        value = Regex.Replace(value, "_x(?<unit>[0-9A-F]{4})_", match => ((char)Convert.ToInt32(match.Groups["unit"].Value, 16)).ToString(), RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        return new SavedCell(cell.CellFormula?.Text ?? "", value, type != CellValues.Number);
    }

    private static IEnumerable<(string Name, WorksheetPart Part)> Worksheets(SpreadsheetDocument document) =>
        document.WorkbookPart!.Workbook.Descendants<Sheet>().Select(sheet => (sheet.Name!.Value!, (WorksheetPart)document.WorkbookPart.GetPartById(sheet.Id!)));

    private SpreadsheetDocument Open() => SpreadsheetDocument.Open(new MemoryStream(bytes), isEditable: false);
}
