using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>The bench as tables, for every format.</summary>
internal static class BenchTables
{
    public static Table Series(IReadOnlyList<SeriesReport> series, string heading, string note) => new(
        heading, note,
        [
            new("Title and scene"), new("Card"), new("Driver"), new("System"), new("Way"), new("Rig"), new("Settings"), new("Mode"), new("n", true),
            new("Mean fps", true), new("Deviation fps", true), new("Spread %", true), new("From", true), new("To", true), new("Lowest fps", true),
            new("Outlying"), new("To look at"),
        ],
        [
            .. series.Select(one => (IReadOnlyList<TableCell>)
            [
                new(BenchWording.Subject(one.Circumstances)), new(one.Circumstances.Card.Name),
                new(one.Circumstances.Driver is { } driver ? Names.Of(driver) : ""), new(one.Circumstances.Os?.Name ?? ""),
                new(BenchWording.Way(one.Circumstances)), new(one.Circumstances.Rig?.Name ?? ""), new(BenchWording.SettingsText(one.Circumstances)),
                new(BenchWording.Of(one.Mode)), Count(one.Fps.Count), Figure(one.Fps.Mean), Figure(one.Fps.StandardDeviation), Figure(100 * one.Fps.CoefficientOfVariation),
                Figure(one.Fps.MeanInterval()?.Low), Figure(one.Fps.MeanInterval()?.High), Figure(one.Lowest), new(one.Outlying), new(string.Join("; ", one.Remarks)),
            ]),
        ]);

    public static Table Ladders(IReadOnlyList<SceneReport> scenes, string heading, string note) => new(
        heading, note,
        [new("Title and scene"), new("Setup"), new("Mode"), new("n", true), new("Mean fps", true), new("From", true), new("To", true), new("What sets the pace"), new("The ladder")],
        [.. scenes.SelectMany(scene => scene.Ladders.SelectMany(ladder => Rungs(scene, ladder)))]);

    public static Table CardRows(IReadOnlyList<SceneReport> scenes, string heading) => new(
        heading, "Only cards that ran the same scene with the same settings on one rig, both at two modes at least.",
        [new("Title and scene"), new("Mode"), new("Card"), new("Against"), new("The row")],
        [
            .. scenes.SelectMany(scene => scene.Rows.Select(row => (IReadOnlyList<TableCell>)
                [new(scene.Subject), new(row.Mode), new(row.A), new(row.B), new(row.Text)])),
        ]);

    public static Table Comparisons(IReadOnlyList<AgainstReport> comparisons, string heading) => new(
        heading, "Welch's t-test at 95 %; \"no difference shown\" does not mean that there is none. Each comparison changes one thing.",
        [
            new("Title and scene"), new("What differs"), new("A"), new("B"), new("Mode"), new("A, mean fps", true), new("B, mean fps", true),
            new("A against B, %", true), new("Result"), new("Runs each to show 2 %", true),
        ],
        [
            .. comparisons.SelectMany(comparison => comparison.Rows.Select(row => (IReadOnlyList<TableCell>)
            [
                new(comparison.Subject), new(comparison.Change.What), new(comparison.Change.A), new(comparison.Change.B), new(row.Mode),
                Figure(row.A.Fps), Figure(row.B.Fps), Figure(row.Percent), new(row.Text), new(row.Needed),
            ])),
        ]);

    public static Table Headroom(IReadOnlyList<HeadroomReport> headroom, string heading) => new Table(
        heading, "Only modes that were run, or lie between modes that were.",
        [new("Title and scene"), new("Setup"), new("Samples", true), new("Highest mode"), new("At least fps", true), new("In words")],
        [
            .. headroom.SelectMany(one => one.Rows.Select(row => (IReadOnlyList<TableCell>)
                [new(one.Subject), new(one.Setup), Count(row.Samples), new(row.Mode), Figure(row.AtLeast), new(row.Text)])),
        ])
    {
        WhenEmpty = "No speed floor is stated, or nothing was measured, so nothing can be said.",
    };

    public static Table Scores(IReadOnlyList<ScoreReport> scores, string heading) => new(
        heading, "Synthetic results compare only with themselves.",
        [new("Program"), new("Setup"), new("n", true), new("Mean", true), new("From", true), new("To", true), new("Unit"), new("Better")],
        [
            .. scores.Select(score => (IReadOnlyList<TableCell>)
            [
                new(score.Subject), new(score.Setup), Count(score.Values.Count), Figure(score.Values.Mean), Figure(score.Values.MeanInterval()?.Low),
                Figure(score.Values.MeanInterval()?.High), new(score.Unit), new(score.HigherIsBetter ? "higher" : "lower"),
            ]),
        ]);

    public static Table Speeds(Decisions decisions, Title? title, Card? card, string heading)
    {
        var cards = decisions.Catalog.Cards.Where(one => card is null || one == card).ToList();
        return new Table(
            heading, "The speed of the headline's own route; it never changes the verdict.",
            [new("Title"), .. cards.Select(one => new TableColumn(one.Name))],
            [
                .. decisions.Titles.Where(one => title is null || one == title).Select(one => (IReadOnlyList<TableCell>)
                [
                    new(one.Name),
                    .. cards.Select(of => decisions.CellOn(one, of).Speed)
                        .Select(speed => speed is null ? TableCell.Empty : new TableCell(SpeedWording.Text(speed), speed.Fps.Mean)),
                ]),
            ]);
    }

    private static IEnumerable<IReadOnlyList<TableCell>> Rungs(SceneReport scene, LadderReport ladder)
    {
        var text = ladder.Suspicion.Length > 0 ? $"{ladder.Text}; {ladder.Suspicion}" : ladder.Text;
        var measured = ladder.Rungs.Select(rung => (rung.Mode.Pixels, Cells: (IReadOnlyList<TableCell>)
        [
            new(scene.Subject), new(ladder.Setup), new(rung.Mode.ToString()), Count(rung.Speed.Runs.Count), Figure(rung.Speed.Fps),
            Figure(rung.Speed.Interval?.Low), Figure(rung.Speed.Interval?.High), new(rung.BoundText), new(text),
        ]));
        var predicted = ladder.Predicted.Select(rung => (rung.Mode.Pixels, Cells: (IReadOnlyList<TableCell>)
        [
            new(scene.Subject), new(ladder.Setup), new(rung.Mode.ToString()), new("predicted"), Figure(rung.Speed.Fps),
            Figure(rung.Speed.Mean.Low), Figure(rung.Speed.Mean.High), TableCell.Empty, new(text),
        ]));
        return measured.Concat(predicted).OrderBy(row => row.Pixels).Select(row => row.Cells);
    }

    private static TableCell Count(int count) => new(count.ToString(CultureInfo.InvariantCulture), count);

    private static TableCell Figure(double? value) => value is { } number && double.IsFinite(number)
        ? new(SpeedWording.Number(number), number)
        : TableCell.Empty;
}
