using System.Globalization;
using System.Text;
using FeatureMatrix.Loading;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>The rows of the sheet for what was seen, written as a file of observations.</summary>
internal sealed class ObservationRows
{
    private static readonly string[] Required = ["title", "card", "date", "by"];
    private static readonly string[] Keys =
        ["title", "renderer", "card", "specimen", "driver", "os", "wrapper", "mode", "depth", "rig", "runs"];

    private static readonly string[] LastKeys = ["date", "by", "grade", "note"];

    private readonly SheetCells _sheet;
    private readonly string _path;
    private readonly PlaceMap _places;
    private readonly List<WorksheetFault> _faults;
    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);
    private readonly List<int> _filled = [];

    public ObservationRows(SheetCells sheet, string path, PlaceMap places, List<WorksheetFault> faults)
    {
        (_sheet, _path, _places, _faults) = (sheet, path, places, faults);
        ReadHeadings();
        foreach (var row in sheet.Rows.Where(row => row > 1))
        {
            if (Cell(row, "runs").Length > 0 || Numbers.Any(number => Cell(row, WorksheetLayout.Seen(number)).Length > 0))
                _filled.Add(row);
            else
                EmptyCount++;
        }
    }

    /// <summary>Rows that say something.</summary>
    public int Count => _filled.Count;

    /// <summary>Rows without an answer.</summary>
    public int EmptyCount { get; }

    private static IEnumerable<int> Numbers => Enumerable.Range(1, WorksheetLayout.Features);

    /// <summary>The file; null where nothing was filled in.</summary>
    public SourceText? ToFile()
    {
        if (_filled.Count == 0)
            return null;
        var text = new StringBuilder("# Written by the import of a bench worksheet. Importing the same worksheet again replaces this file.\nobservations:\n");
        for (var i = 0; i < _filled.Count; i++)
            text.Append(Line(_filled[i], i + 3)).Append('\n');
        return new SourceText(_path, text.ToString());
    }

    private string Line(int row, int line)
    {
        foreach (var column in Required.Where(column => _columns.ContainsKey(column) && Cell(row, column).Length == 0))
            _faults.Add(new WorksheetFault(_sheet.Place(row, _columns[column]), WorksheetFaultTexts.Missing(column)));
        var text = new StringBuilder("  - {");
        foreach (var key in Keys)
            Pair(key, key);
        var seen = Numbers.Where(number => Cell(row, WorksheetLayout.Seen(number)).Length > 0).ToList();
        if (seen.Count > 0)
        {
            text.Append(text[^1] == '{' ? "" : ", ").Append("seen: {");
            foreach (var number in seen)
                Seen(number);
            text.Append('}');
        }

        foreach (var key in LastKeys)
            Pair(key, key);
        return text.Append('}').ToString();

        void Pair(string key, string column)
        {
            if (Cell(row, column) is not { Length: > 0 } value)
                return;
            text.Append(text[^1] == '{' ? "" : ", ");
            Note(column, value);
            text.Append(key).Append(": ").Append(Quoted(value));
        }

        void Seen(int number)
        {
            text.Append(text[^1] == '{' ? "" : ", ");
            var feature = Cell(row, WorksheetLayout.Feature(number));
            if (feature.Length == 0)
                _faults.Add(new WorksheetFault(_sheet.Place(row, _columns[WorksheetLayout.Seen(number)]), WorksheetFaultTexts.SeenWithoutFeature));
            Note(WorksheetLayout.Feature(number), feature);
            text.Append(Quoted(feature)).Append(": ");
            Note(WorksheetLayout.Seen(number), Cell(row, WorksheetLayout.Seen(number)));
            text.Append(Quoted(Cell(row, WorksheetLayout.Seen(number))));
        }

        void Note(string column, string value) => _places.Add(_path, line, text.Length + 1, value, _sheet.Place(row, _columns.GetValueOrDefault(column, 1)));
    }

    private string Cell(int row, string column) => _columns.TryGetValue(column, out var number) ? _sheet[row, number] : "";

    private void ReadHeadings()
    {
        foreach (var ((row, column), text) in _sheet.Cells.Where(cell => cell.Key.Row == 1).OrderBy(cell => cell.Key.Column))
        {
            if (!WorksheetLayout.ObservationColumns.Contains(text, StringComparer.Ordinal))
                _faults.Add(new WorksheetFault(_sheet.Place(row, column), WorksheetFaultTexts.UnknownColumn(text, Nearest.To(text, WorksheetLayout.ObservationColumns))));
            else if (!_columns.TryAdd(text, column))
                _faults.Add(new WorksheetFault(_sheet.Place(row, column), WorksheetFaultTexts.RepeatedColumn(text)));
        }

        foreach (var missing in Required.Append("runs").Where(name => !_columns.ContainsKey(name)))
            _faults.Add(new WorksheetFault(_sheet.Place(1, 1), WorksheetFaultTexts.MissingColumn(missing)));
    }

    // YAML 1.2, 7.3.1: a double-quoted scalar with its escapes.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                _ when char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' => "\\u" + ((int)c).ToString("X4", CultureInfo.InvariantCulture),
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }
}
