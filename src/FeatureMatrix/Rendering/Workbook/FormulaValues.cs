using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// Completes a saved workbook: writes beside each formula the value that the program computed, asks spreadsheet programs to
/// recalculate on opening, and repairs the print titles, whose references ClosedXML 0.95.4 writes without the dollar signs that
/// readers need.
/// </summary>
internal static class FormulaValues
{
    /// <summary>Edits the package in place.</summary>
    public static void Write(
        MemoryStream package, IReadOnlyDictionary<(string Sheet, string Cell), FormulaValue> values, IReadOnlyDictionary<string, (int Rows, int Columns)> printTitles)
    {
        package.Position = 0;
        using var document = SpreadsheetDocument.Open(package, isEditable: true);
        var workbook = document.WorkbookPart!.Workbook;
        var sheets = workbook.Descendants<Sheet>().ToList();
        foreach (var sheet in sheets)
        {
            var part = (WorksheetPart)document.WorkbookPart.GetPartById(sheet.Id!);
            foreach (var cell in part.Worksheet.Descendants<Cell>().Where(cell => cell.CellFormula is not null))
            {
                var (number, text) = values[(sheet.Name!, cell.CellReference!.Value!)];
                cell.DataType = text is null ? CellValues.Number : CellValues.String;
                cell.CellValue = new CellValue(text ?? number.ToString("R", CultureInfo.InvariantCulture));
            }

            part.Worksheet.Save();
        }

        SetPrintTitles(workbook, sheets, printTitles);
        workbook.CalculationProperties ??= new CalculationProperties();
        workbook.CalculationProperties.FullCalculationOnLoad = true;
        workbook.Save();
    }

    private static void SetPrintTitles(
        DocumentFormat.OpenXml.Spreadsheet.Workbook workbook, List<Sheet> sheets, IReadOnlyDictionary<string, (int Rows, int Columns)> printTitles)
    {
        workbook.DefinedNames ??= new DefinedNames();
        foreach (var stale in workbook.DefinedNames.Elements<DefinedName>().Where(name => name.Name == "_xlnm.Print_Titles").ToList())
            stale.Remove();
        for (var i = 0; i < sheets.Count; i++)
        {
            if (!printTitles.TryGetValue(sheets[i].Name!, out var titles))
                continue;
            var name = $"'{sheets[i].Name!.Value!.Replace("'", "''", StringComparison.Ordinal)}'";
            var rows = $"{name}!$1:${titles.Rows.ToString(CultureInfo.InvariantCulture)}";
            var text = titles.Columns > 0 ? $"{name}!$A:${(char)('A' + titles.Columns - 1)},{rows}" : rows;
            workbook.DefinedNames.Append(new DefinedName(text) { Name = "_xlnm.Print_Titles", LocalSheetId = (uint)i });
        }
    }
}
