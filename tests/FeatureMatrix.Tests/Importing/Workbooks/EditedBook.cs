using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>A collection's workbook in which somebody types.</summary>
internal sealed class EditedBook(IReadOnlyList<SourceText> files)
{
    private readonly Dictionary<string, Dictionary<(int Row, int Column), string>> _sheets = A_collection_as_a_workbook
        .Sheets(A_collection_as_a_workbook.BookOf(files), keepsSigns: true)
        .ToDictionary(sheet => sheet.Name, sheet => sheet.Cells.ToDictionary(cell => cell.Key, cell => cell.Value));

    /// <summary>What is read back.</summary>
    public IReadOnlyList<SheetCells> Sheets => [.. _sheets.Select(sheet => new SheetCells(sheet.Key, sheet.Value))];

    /// <summary>Types into the row whose cell under one heading has a text.</summary>
    public EditedBook Type(string sheet, (string Heading, string Text) row, string heading, string text)
    {
        var number = _sheets[sheet].First(cell => cell.Key.Row > 1 && cell.Key.Column == ColumnOf(sheet, row.Heading) && cell.Value == row.Text).Key.Row;
        Put(sheet, number, heading, text);
        return this;
    }

    /// <summary>Fills in a row below the last one.</summary>
    public EditedBook Add(string sheet, params (string Heading, string Text)[] cells)
    {
        var number = _sheets[sheet].Keys.Max(key => key.Row) + 1;
        foreach (var (heading, text) in cells)
            Put(sheet, number, heading, text);
        return this;
    }

    /// <summary>Copies the row whose cell under one heading has a text below the last one, with all that is hidden.</summary>
    public EditedBook Copy(string sheet, (string Heading, string Text) row, params (string Heading, string Text)[] changed)
    {
        var number = _sheets[sheet].First(cell => cell.Key.Row > 1 && cell.Key.Column == ColumnOf(sheet, row.Heading) && cell.Value == row.Text).Key.Row;
        var last = _sheets[sheet].Keys.Max(key => key.Row) + 1;
        foreach (var ((_, column), text) in _sheets[sheet].Where(cell => cell.Key.Row == number).ToList())
            _sheets[sheet][(last, column)] = text;
        foreach (var (heading, text) in changed)
            Put(sheet, last, heading, text);
        return this;
    }

    /// <summary>Renames a heading.</summary>
    public EditedBook Rename(string sheet, string heading, string to)
    {
        _sheets[sheet][(1, ColumnOf(sheet, heading))] = to;
        return this;
    }

    /// <summary>What the import makes of it, for the files it was made from or others.</summary>
    public WorkbookImport Import(IReadOnlyList<SourceText>? into = null) => WorkbookImport.Of(into ?? files, Sheets);

    private int ColumnOf(string sheet, string heading) => _sheets[sheet].First(cell => cell.Key.Row == 1 && cell.Value == heading).Key.Column;

    private void Put(string sheet, int row, string heading, string text)
    {
        if (text.Length == 0)
            _sheets[sheet].Remove((row, ColumnOf(sheet, heading)));
        else
            _sheets[sheet][(row, ColumnOf(sheet, heading))] = text;
    }
}
