using System.Globalization;
using ClosedXML.Excel;
using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// What was measured: statistics that calculate from the runs, ladders, comparisons, and every run. Who discards a run on the sheet, or
/// corrects one, sees count, mean, deviation and interval follow.
/// </summary>
internal sealed class BenchSheets
{
    private const int HeadingRow = TableSheet.HeadingRow;
    private const string NotKnown = "not known";
    private const string NoFloor = "no floor stated";

    private readonly Book _book;
    private readonly IReadOnlyList<SeriesReport> _series;
    private readonly IReadOnlyList<Run> _log;
    private readonly RouteSpeeds _speeds;
    private readonly Dictionary<Run, int> _places = new(ReferenceEqualityComparer.Instance);
    private readonly Table _statistics;
    private readonly Table _runTable;
    private readonly IXLWorksheet _bench;
    private readonly IXLWorksheet _runs;

    private BenchSheets(Book book, EditionReport edition)
    {
        _book = book;
        _series = edition.Bench.Series;
        _log = edition.Catalog.Runs;
        _speeds = edition.Decisions.Speeds;
        for (var i = 0; i < _series.Count; i++)
        {
            foreach (var run in _series[i].Runs.Runs.Concat(_series[i].Runs.Discarded))
                _places[run] = i;
        }

        _statistics = Numbered(edition.Bench.SeriesTable);
        _runTable = WithSeries(RunTable.Of(edition.Catalog));
        _bench = TableSheet.Add(book, "Bench", _statistics, 3);
        Others(edition.Bench);
        _runs = TableSheet.Add(book, "Runs", _runTable, 2);
    }

    /// <summary>Adds the sheets; none where nothing was measured.</summary>
    public static void Add(Book book, EditionReport edition)
    {
        if (edition.Catalog.Runs.Count == 0)
            return;
        var sheets = new BenchSheets(book, edition);
        for (var i = 0; i < sheets._series.Count; i++)
            sheets.Statistics(i);
        for (var i = 0; i < sheets._log.Count; i++)
            sheets.Run(i);
    }

    private void Others(BenchReport bench)
    {
        foreach (var (name, table) in new[] { ("Ladders", bench.LadderTable), ("Comparisons", bench.ComparisonTable), ("Headroom", bench.HeadroomTable), ("Scores", bench.ScoreTable) })
        {
            if (table.Rows.Count > 0)
                TableSheet.Add(_book, name, table, 2);
        }
    }

    private Table Numbered(Table table) => table with
    {
        Note = table.Note + " All figures follow the sheet Runs, but for the lowest speed and what to look at; the floor stands on the sheet Policy.",
        Columns = [new TableColumn("No.", true), .. table.Columns, new TableColumn("Bears up to", true), new TableColumn("Against the floor")],
        Rows =
        [
            .. table.Rows.Select((row, i) => (IReadOnlyList<TableCell>)
                [Whole(i + 1), .. row, Ceiling(i) is { } fps ? new TableCell(SpeedWording.Number(fps), fps) : TableCell.Empty, new TableCell(AgainstFloor(i))]),
        ],
    };

    private double? Ceiling(int series) => _speeds.LimitsOf(_series[series].Circumstances.Title).Ceiling;

    private string AgainstFloor(int series)
    {
        var limits = _speeds.LimitsOf(_series[series].Circumstances.Title);
        var speed = Speed.Of(_series[series].Fps, limits);
        return speed is Speed.Over && limits.Floor is null ? NoFloor : SpeedWording.State(speed);
    }

    private Table WithSeries(Table table) => table with
    {
        Note = table.Note + " Type a reason under Discarded and the sheet Bench no longer counts the run.",
        Columns = [.. table.Columns, new TableColumn("Series", true), new TableColumn("Counts", true), new TableColumn("Off its mean", true)],
        Rows = [.. table.Rows.Select((row, i) => (IReadOnlyList<TableCell>)[.. row, SeriesOf(i) is { } at ? Whole(at + 1) : TableCell.Empty, TableCell.Empty, TableCell.Empty])],
    };

    private int? SeriesOf(int run) => _places.TryGetValue(_log[run], out var place) ? place : null;

    private void Statistics(int index)
    {
        var row = HeadingRow + 1 + index;
        var fps = _series[index].Fps;
        var (n, mean, deviation) = (Cell("n"), Cell("Mean fps"), Cell("Deviation fps"));
        var (series, counts) = (OfRuns("Series"), OfRuns("Counts"));
        _book.Formula(_bench.Cell(n), $"COUNTIFS({series},$A{row},{counts},1)", fps.Count, "0");
        Put("Mean fps", $"IF({n}=0,{Book.Quoted(NotKnown)},AVERAGEIFS({OfRuns("Average")},{series},$A{row},{counts},1))", fps.Mean);
        Put("Deviation fps", IfTwo($"SQRT(SUMPRODUCT(({series}=$A{row})*{OfRuns("Off its mean")}*{OfRuns("Off its mean")})/({n}-1))"), fps.StandardDeviation);
        Put("Spread %", IfTwo($"100*{deviation}/{mean}"), 100 * fps.CoefficientOfVariation);
        Put("From", IfTwo($"{mean}-TINV(0.05,{n}-1)*{deviation}/SQRT({n})"), fps.MeanInterval()?.Low);
        Put("To", IfTwo($"{mean}+TINV(0.05,{n}-1)*{deviation}/SQRT({n})"), fps.MeanInterval()?.High);

        var (low, high, bears) = (Cell("From"), Cell("To"), Cell("Bears up to"));
        _book.Formula(
            _bench.Cell(Cell("Against the floor")),
            $"IF({n}<1,\"not measured\",IF({n}<2,\"not known\",IF(AND(ISNUMBER({bears}),{low}>{bears}),\"faster than the title bears\","
            + $"IF(NOT(ISNUMBER(SpeedFloor)),IF(AND(ISNUMBER({bears}),{high}>{bears}),\"not known\",\"{NoFloor}\"),"
            + $"IF({high}<SpeedFloor,\"under the floor\",IF({low}<SpeedFloor,\"not known\",IF(AND(ISNUMBER({bears}),{high}>{bears}),\"not known\",\"over the floor\")))))))",
            AgainstFloor(index));

        string Cell(string heading) => Letter(_bench, _statistics, heading) + row.ToString(CultureInfo.InvariantCulture);

        string IfTwo(string formula) => $"IF({n}<2,{Book.Quoted(NotKnown)},{formula})";

        void Put(string heading, string formula, double? value)
        {
            var cell = _bench.Cell(Cell(heading));
            if (value is { } number)
                _book.Formula(cell, formula, number, "0.0#");
            else
                _book.Formula(cell, formula, NotKnown).Style.NumberFormat.Format = "0.0#" + Look.AfterFigures;
        }
    }

    private void Run(int index)
    {
        var row = HeadingRow + 1 + index;
        var at = SeriesOf(index);
        var run = _log[index];
        var counts = at is not null && run is { Fps: not null, Discarded.Length: 0 };
        var (series, average, counted) = (Cell("Series"), Cell("Average"), Cell("Counts"));
        _book.Formula(_runs.Cell(counted), $"IF(AND(ISNUMBER({series}),ISNUMBER({average}),{Cell("Discarded")}=\"\"),1,0)", counts ? 1 : 0, "0");
        _book.Formula(
            _runs.Cell(Cell("Off its mean")), $"IF({counted}=1,{average}-INDEX({OfBench("Mean fps")},MATCH({series},{OfBench("No.")},0)),0)",
            counts ? run.Fps!.Value - _series[at!.Value].Fps.Mean!.Value : 0, "0.0##");

        string Cell(string heading) => Letter(_runs, _runTable, heading) + row.ToString(CultureInfo.InvariantCulture);
    }

    private string OfRuns(string heading) => Column(_runs, _runTable, heading);

    private string OfBench(string heading) => Column(_bench, _statistics, heading);

    private static string Column(IXLWorksheet sheet, Table table, string heading)
    {
        var letter = Letter(sheet, table, heading);
        return Book.Reference(sheet, $"${letter}${HeadingRow + 1}:${letter}${HeadingRow + Math.Max(1, table.Rows.Count)}");
    }

    private static string Letter(IXLWorksheet sheet, Table table, string heading) =>
        sheet.Column(table.Columns.ToList().FindIndex(column => column.Heading == heading) + 1).ColumnLetter();

    private static TableCell Whole(int number) => new(number.ToString(CultureInfo.InvariantCulture), number);
}
