using FeatureMatrix.Importing.Worksheets;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>Finds the columns of a mapping in a sheet.</summary>
internal static class SheetColumns
{
    private const string ByLetter = "column ";

    /// <summary>The columns of the sheet; those that the mapping names and the sheet lacks are faults.</summary>
    public static IReadOnlyList<FoundColumn> Find(SheetCells sheet, SheetMapping mapping, List<WorksheetFault> faults)
    {
        var width = sheet.Cells.Keys.Select(key => key.Column).DefaultIfEmpty(0).Max();
        var headings = Enumerable.Range(1, width).ToDictionary(column => column, column => sheet[mapping.HeadingRow, column]);
        var mapped = new Dictionary<int, MappedColumn>();
        foreach (var column in mapping.Columns)
        {
            var matching = headings.Where(heading => Is(column.Heading, heading.Key, heading.Value)).Select(heading => heading.Key).ToList();
            if (matching.Count == 1)
                mapped[matching[0]] = column;
            else
                faults.Add(new WorksheetFault(SheetReading.Place(column.Origin), matching.Count > 1
                    ? SheetFaultTexts.SeveralHeadings(column.Heading, matching.Select(SheetCells.Letters))
                    : SheetFaultTexts.NoHeading(column.Heading, $"row {mapping.HeadingRow} of {sheet.Name}", headings.Values.Where(text => text.Length > 0))));
        }

        return [.. headings.Where(heading => heading.Value.Length > 0 || mapped.ContainsKey(heading.Key))
            .Select(heading => new FoundColumn(heading.Key, SheetCells.Letters(heading.Key), heading.Value, mapped.GetValueOrDefault(heading.Key)))];
    }

    private static bool Is(string wanted, int column, string heading) =>
        wanted.StartsWith(ByLetter, StringComparison.OrdinalIgnoreCase) && wanted[ByLetter.Length..].Equals(SheetCells.Letters(column), StringComparison.OrdinalIgnoreCase)
        || (heading.Length > 0 && SheetMapping.Plain(wanted) == SheetMapping.Plain(heading));
}
