using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>The rows of the sheet for what was measured, written as a run log.</summary>
internal sealed class RunRows
{
    private static readonly string[] Required = ["date", "by"];
    private static readonly string[] ResultColumns = ["fps", "min-fps", "score", "frame-times", "discarded", "date", "by", "note"];

    private readonly SheetCells _sheet;
    private readonly string _path;
    private readonly PlaceMap _places;
    private readonly List<WorksheetFault> _faults;
    private readonly RunLog? _log;
    private readonly List<int> _rows;

    public RunRows(SheetCells sheet, string path, PlaceMap places, List<WorksheetFault> faults)
    {
        (_sheet, _path, _places, _faults) = (sheet, path, places, faults);
        _rows = sheet.Rows.Where(row => row > 1 && !IsOnlyBegun(row)).ToList();
        if (_rows.Count == 0)
            return;
        _log = RunLogReader.Read(string.Concat(_rows.Prepend(1).Select(row => Line(row) + "\n")));
        foreach (var fault in _log.Faults)
            faults.Add(new WorksheetFault(PlaceOf(fault), FaultTexts.OfRunLog(Origin.None, fault).Message));
        foreach (var row in _rows)
        {
            foreach (var column in Required.Where(column => ColumnOf(column) is { } number && sheet[row, number].Length == 0))
                faults.Add(new WorksheetFault(sheet.Place(row, ColumnOf(column)!.Value), WorksheetFaultTexts.Missing(column)));
        }
    }

    /// <summary>Runs that could be read.</summary>
    public int Count => _log?.Rows.Count ?? 0;

    private int Width => _sheet.Cells.Keys.Select(key => key.Column).DefaultIfEmpty(0).Max();

    /// <summary>The log; null where nothing was filled in.</summary>
    public SourceText? ToFile()
    {
        if (_log is null || _log.Rows.Count == 0)
            return null;
        for (var i = 0; i < _log.Rows.Count; i++)
        {
            var row = RowOf(_log.Rows[i].Line);
            for (var column = 1; column <= Width; column++)
                _places.Add(_path, i + 2, 1, _sheet[row, column], _sheet.Place(row, column));
        }

        return new SourceText(_path, RunLogWriter.Write(_log.Rows));
    }

    // A row that was made beforehand and holds nothing of a run yet.
    private bool IsOnlyBegun(int row)
    {
        var results = ResultColumns.Select(ColumnOf).OfType<int>().ToList();
        return ColumnOf("run") is not null && results.TrueForAll(column => _sheet[row, column].Length == 0);
    }

    private string Line(int row) => string.Join(',', Enumerable.Range(1, Width).Select(column =>
        $"\"{_sheet[row, column].Replace("\"", "\"\"", StringComparison.Ordinal).ReplaceLineEndings(" ")}\""));

    // Every row is one line, after the headings.
    private int RowOf(int line) => line <= 1 ? 1 : _rows[Math.Min(line - 2, _rows.Count - 1)];

    private string PlaceOf(RunLogFault fault)
    {
        var row = RowOf(fault.Line);
        if (row == 1)
            return _sheet.Place(1, Enumerable.Range(1, Math.Max(1, Width)).LastOrDefault(column => _sheet[1, column] == fault.Found, 1));
        return _sheet.Place(row, ColumnOf(fault.Column)
            ?? Enumerable.Range(1, Width).FirstOrDefault(column => fault.Found.Length > 0 && _sheet[row, column] == fault.Found, 1));
    }

    private int? ColumnOf(string name) => Enumerable.Range(1, Width).Where(column => RunLogColumns.Named(_sheet[1, column])?.Name == name).Select(column => (int?)column).FirstOrDefault();
}
