using System.Globalization;
using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>The runs of one series at one mode.</summary>
/// <param name="Circumstances">What they share.</param>
/// <param name="Runs">Those that count, and those that do not.</param>
/// <param name="Outlying">The runs that lie far from the others, none, or that they are too few to tell.</param>
/// <param name="Remarks">Discarded runs with their reasons, outliers, warm-up, vsync and cap suspicion: one sentence each.</param>
public sealed record SeriesReport(Circumstances Circumstances, ModeRuns Runs, string Outlying, IReadOnlyList<string> Remarks)
{
    /// <summary>The mode; null where not noted.</summary>
    public Mode? Mode => Runs.Mode;

    /// <summary>The speeds that count.</summary>
    public Sample Fps => Runs.Fps;

    /// <summary>Mean of the lowest speeds; null where none was noted.</summary>
    public double? Lowest => Runs.Dips.Lowest.Mean;

    /// <summary>A report for each mode of a series.</summary>
    public static IEnumerable<SeriesReport> All(BenchSeries series)
    {
        string?[] ofSeries = [LadderWording.FirstRuns(series.WarmUp()), LadderWording.Suspicion(series.PaceLimit())];
        return series.Modes.Select(mode => new SeriesReport(
            series.Circumstances, mode, OutlyingIn(mode),
            [.. mode.Discarded.Select(run => $"run {Number(run.Number)} discarded: {run.Discarded}"), .. OutliersOf(mode), .. ofSeries.OfType<string>()]));
    }

    private static string OutlyingIn(ModeRuns mode) => Outliers.In(mode.Fps) switch
    {
        Outliers.TooFewToTell => "too few to tell",
        Outliers.Screened { Flagged: [] } => "none",
        Outliers.Screened screened => "run " + Names.List(screened.Flagged.Select(at => mode.Runs[at].Number).Order().Select(Number).ToList()),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static IEnumerable<string> OutliersOf(ModeRuns mode) => Outliers.In(mode.Fps) is Outliers.Screened screened
        ? screened.Flagged.Select(at => $"run {Number(mode.Runs[at].Number)} ({SpeedWording.Number(mode.Fps.Values[at])} fps) lies far from the others: look for a reason")
        : [];

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Synthetic results of one program and setup.</summary>
/// <param name="Subject">Program and part.</param>
/// <param name="Setup">The setup with the mode, in words.</param>
/// <param name="Unit">As the program prints it.</param>
/// <param name="HigherIsBetter">False for times.</param>
/// <param name="Values">The runs that count.</param>
public sealed record ScoreReport(string Subject, string Setup, string Unit, bool HigherIsBetter, Sample Values)
{
    /// <summary>All synthetic results of a log that count, in its order.</summary>
    public static IReadOnlyList<ScoreReport> All(IEnumerable<Run> log) =>
    [
        .. log.Where(run => run.Score is not null && run.Discarded.Length == 0)
            .GroupBy(run => (Circumstances: Circumstances.Of(run), run.Mode, run.Score!.Unit, run.Score.HigherIsBetter))
            .Select(group => new ScoreReport(
                BenchWording.Subject(group.Key.Circumstances), $"{BenchWording.Setup(group.Key.Circumstances)}, {BenchWording.Of(group.Key.Mode)}",
                group.Key.Unit, group.Key.HigherIsBetter, Sample.Of(group.Select(run => run.Score!.Value)))),
    ];
}
