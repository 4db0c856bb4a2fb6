using System.Text;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;

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
            _faults.Add(new WorksheetFault(Place(row, column), WorksheetFaultTexts.Missing(column)));
        var text = new FlowLine(_path, line, _places).Raw("  - {");
        foreach (var key in Keys)
            Pair(key);
        var seen = Numbers.Where(number => Cell(row, WorksheetLayout.Seen(number)).Length > 0).ToList();
        if (seen.Count > 0)
        {
            text.Open("seen", '{');
            foreach (var number in seen)
                Seen(number);
            text.Close('}');
        }

        foreach (var key in LastKeys)
            Pair(key);
        return text.Close('}').ToString();

        void Pair(string column)
        {
            if (Cell(row, column) is { Length: > 0 } value)
                text.Pair(column, value, Place(row, column));
        }

        void Seen(int number)
        {
            var feature = Cell(row, WorksheetLayout.Feature(number));
            if (feature.Length == 0)
                _faults.Add(new WorksheetFault(Place(row, WorksheetLayout.Seen(number)), WorksheetFaultTexts.SeenWithoutFeature));
            text.Pair(feature, Place(row, WorksheetLayout.Feature(number)), Cell(row, WorksheetLayout.Seen(number)), Place(row, WorksheetLayout.Seen(number)));
        }
    }

    private string Place(int row, string column) => _sheet.Place(row, _columns.GetValueOrDefault(column, 1));

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
}
