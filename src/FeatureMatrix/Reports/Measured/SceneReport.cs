using FeatureMatrix.Bench;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>One mode at which two cards ran a scene under the same settings.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="A">The first card's ladder.</param>
/// <param name="B">The second's.</param>
/// <param name="Meaning">What the row can say about the cards.</param>
/// <param name="Text">The same in words.</param>
public sealed record CardRowReport(string Mode, string A, string B, RowMeaning Meaning, string Text);

/// <summary>The ladders of one scene on one rig, side by side, and what may be compared among them.</summary>
/// <param name="Id">For addresses: small letters, digits and hyphens.</param>
/// <param name="Subject">Title and scene.</param>
/// <param name="Shared">The card, where all ladders are of one, and the rig where noted; may be empty.</param>
/// <param name="Ladders">In the order of the log.</param>
/// <param name="Rows">Pairs of cards, mode by mode.</param>
/// <param name="Findings">Suspicions and factors, one sentence each.</param>
/// <param name="Text">Everything the chart shows, in words.</param>
public sealed record SceneReport(
    string Id, string Subject, string Shared, IReadOnlyList<LadderReport> Ladders, IReadOnlyList<CardRowReport> Rows, IReadOnlyList<string> Findings, string Text)
{
    /// <summary>The scenes of a log that ran at two modes at least.</summary>
    public static IReadOnlyList<SceneReport> All(IReadOnlyList<BenchSeries> log) =>
    [
        .. log.Where(series => series.Modes.Count(mode => mode is { Mode: not null, Fps.Count: > 0 }) > 1)
            .GroupBy(series => (series.Circumstances.Title, series.Circumstances.Scene, series.Circumstances.Rig, series.Circumstances.Depth))
            .Select((scene, i) => Of([.. scene], i)),
    ];

    private static SceneReport Of(IReadOnlyList<BenchSeries> series, int place)
    {
        var names = BenchWording.Apart(series.Select(one => one.Circumstances).ToList());
        var ladders = series.Zip(names, LadderReport.Of).ToList();
        var circumstances = series[0].Circumstances;
        var findings = ladders.Where(ladder => ladder.Suspicion.Length > 0).Select(ladder => $"{ladder.Name}: {ladder.Suspicion}").Concat(Splits(series)).ToList();
        return new SceneReport(
            $"{circumstances.Title.Id}-{(place + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}",
            BenchWording.Subject(circumstances), BenchWording.Shared(series.Select(one => one.Circumstances).ToList()), ladders, RowsOf(ladders), findings,
            string.Join(" ", ladders.Select(ladder =>
                $"{ladder.Name}: {string.Join("; ", ladder.Rungs.Select(rung => $"{rung.Mode} {rung.Speed.Text}, {rung.BoundText}"))}. {Names.Sentence(ladder.Text)}.")));
    }

    private static List<CardRowReport> RowsOf(List<LadderReport> ladders)
    {
        var modes = ladders.SelectMany(ladder => ladder.Rungs).DistinctBy(rung => rung.Mode.Pixels).ToDictionary(rung => rung.Mode.Pixels, rung => rung.Mode.ToString());
        return
        [
            .. from i in Enumerable.Range(0, ladders.Count)
               from j in Enumerable.Range(i + 1, ladders.Count - i - 1)
               let pair = (A: ladders[i], B: ladders[j])
               where pair.A.Fit is not null && pair.B.Fit is not null
                   && Change.Between(pair.A.Circumstances, pair.B.Circumstances)?.What == "card"
               from row in CardRow.Between(pair.A.Fit!, pair.B.Fit!)
               select new CardRowReport(modes[row.Pixels], pair.A.Name, pair.B.Name, row.Meaning, AgainstWording.Meaning(row.Meaning)),
        ];
    }

    /// <summary>Ladders that a factor splits, and whether it had to.</summary>
    private static IEnumerable<string> Splits(IReadOnlyList<BenchSeries> series)
    {
        foreach (var (first, second) in series.SelectMany((one, i) => series.Skip(i + 1).Select(other => (one, other))))
        {
            if (Change.Between(first.Circumstances, second.Circumstances) is not { What: "factor" } change)
                continue;
            var split = LadderSplit.Of([.. Runs(first, change.A), .. Runs(second, change.B)]);
            yield return $"{change.A} and {change.B}: {LadderWording.Split(split)}";
        }
    }

    private static IEnumerable<FactorRun> Runs(BenchSeries series, string factor) =>
        from mode in series.Modes
        where mode.Mode is not null
        from run in mode.Runs
        select new FactorRun(factor, new LadderRun(mode.Mode!.Value.Pixels, run.Fps!.Value));
}
