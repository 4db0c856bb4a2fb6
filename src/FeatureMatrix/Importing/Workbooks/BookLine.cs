using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Faults;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>A row of a collection's workbook as somebody left it.</summary>
internal sealed class BookLine(BookSheet sheet, SheetCells cells, int row, IReadOnlyDictionary<string, int> columns)
{
    public BookSheet Sheet { get; } = sheet;

    /// <summary>What a cell holds; empty for nothing.</summary>
    public string this[string heading] => columns.TryGetValue(heading, out var column) ? CollectionBook.Plain(cells[row, column]) : "";

    /// <summary>The filled cells of the record, by heading.</summary>
    public IReadOnlyDictionary<string, string> Cells => _cells ??= Sheet.Columns.Select(column => (column.Heading, Text: this[column.Heading]))
        .Where(cell => cell.Text.Length > 0).ToDictionary(cell => cell.Heading, cell => cell.Text, StringComparer.Ordinal);

    private IReadOnlyDictionary<string, string>? _cells;

    /// <summary>Where the record stood as the workbook was written; empty for a new row.</summary>
    public string Address => this[BookLayout.Place];

    /// <summary>True where it is to be taken out.</summary>
    public bool IsTakenOut => this[BookLayout.TakeOut].Length > 0;

    /// <summary>True where nothing was filled in.</summary>
    public bool IsEmpty => Cells.Count == 0 && !IsTakenOut;

    /// <summary>The columns whose cells are not as they were written.</summary>
    public IReadOnlyList<BookColumn> Edited => [.. Sheet.Columns.Where((column, i) =>
        columns.ContainsKey(column.Heading) && CollectionBook.SignOf(this[BookLayout.Written], i) != CollectionBook.Sign(this[column.Heading]))];

    /// <summary>A cell as people write it: <c>Cards!C5</c>.</summary>
    public string Place(string heading) => cells.Place(row, columns.GetValueOrDefault(heading, 1));

    /// <summary>All rows that hold anything, in the order of the sheets. Sheets that are missing have none.</summary>
    public static IReadOnlyList<BookLine> Read(IReadOnlyList<SheetCells> sheets, List<WorksheetFault> faults)
    {
        var lines = new List<BookLine>();
        foreach (var sheet in BookLayout.Sheets)
        {
            if (sheets.FirstOrDefault(one => one.Name == sheet.Name) is { } cells)
                lines.AddRange(Lines(sheet, cells, Headings(sheet, cells, faults)));
        }

        if (!sheets.Any(one => BookLayout.Sheets.Any(sheet => sheet.Name == one.Name)))
            faults.Add(new WorksheetFault("the file", WorkbookFaultTexts.NoSheets));
        foreach (var other in sheets.Where(one => !WorkbookFaultTexts.OtherSheets.Contains(one.Name, StringComparer.Ordinal) && !BookLayout.Sheets.Any(sheet => sheet.Name == one.Name)))
        {
            if (Nearest.To(other.Name, BookLayout.Sheets.Select(sheet => sheet.Name).Where(name => !sheets.Any(one => one.Name == name))) is { } near)
                faults.Add(new WorksheetFault(other.Name, WorkbookFaultTexts.RenamedSheet(near)));
        }

        return lines;
    }

    private static IEnumerable<BookLine> Lines(BookSheet sheet, SheetCells cells, Dictionary<string, int> columns) =>
        cells.Rows.Where(row => row > 1).Select(row => new BookLine(sheet, cells, row, columns)).Where(line => !line.IsEmpty);

    private static Dictionary<string, int> Headings(BookSheet sheet, SheetCells cells, List<WorksheetFault> faults)
    {
        IReadOnlyList<string> known = [BookLayout.TakeOut, .. sheet.Columns.Select(column => column.Heading), BookLayout.File, BookLayout.Place, BookLayout.Written];
        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var ((row, column), text) in cells.Cells.Where(cell => cell.Key.Row == 1).OrderBy(cell => cell.Key.Column))
        {
            if (!known.Contains(text, StringComparer.Ordinal))
                faults.Add(new WorksheetFault(cells.Place(row, column), WorksheetFaultTexts.UnknownColumn(text, Nearest.To(text, known))));
            else if (!columns.TryAdd(text, column))
                faults.Add(new WorksheetFault(cells.Place(row, column), WorksheetFaultTexts.RepeatedColumn(text)));
        }

        foreach (var missing in sheet.Columns.Where(column => column.IsPlace && !columns.ContainsKey(column.Heading)))
            faults.Add(new WorksheetFault(cells.Place(1, 1), WorksheetFaultTexts.MissingColumn(missing.Heading)));
        return columns;
    }
}
