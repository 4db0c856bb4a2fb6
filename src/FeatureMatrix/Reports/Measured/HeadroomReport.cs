using System.Globalization;
using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>What a card has left at one number of samples.</summary>
/// <param name="Samples">Samples a pixel.</param>
/// <param name="Mode">The highest mode that keeps the floor; empty where none is known to.</param>
/// <param name="AtLeast">What the mean speed exceeds there; null without a mode.</param>
/// <param name="IsPredicted">True where the mode itself was not run.</param>
/// <param name="Text">In words.</param>
public sealed record HeadroomRow(int Samples, string Mode, double? AtLeast, bool IsPredicted, string Text);

/// <summary>What a setup has left above a floor in one scene: the highest mode for each number of samples.</summary>
/// <param name="Subject">Title and scene.</param>
/// <param name="Setup">The setup.</param>
/// <param name="Floor">Frames per second.</param>
/// <param name="Rows">In order of samples.</param>
public sealed record HeadroomReport(string Subject, string Setup, double Floor, IReadOnlyList<HeadroomRow> Rows)
{
    /// <summary>The headroom of every setup and scene of a log.</summary>
    public static IReadOnlyList<HeadroomReport> All(IReadOnlyList<BenchSeries> log, double floor, double confidence = Confidence.Usual) =>
    [
        .. log.Where(series => series.Modes.Any(mode => mode is { Mode: not null, Fps.Count: > 0 }))
            .GroupBy(series => series.Circumstances.Without("samples"))
            .Select(setup => Of(setup.Key, [.. setup], floor, confidence)),
    ];

    private static HeadroomReport Of(Circumstances setup, IReadOnlyList<BenchSeries> series, double floor, double confidence)
    {
        var ladders = series.GroupBy(one => one.Circumstances.Samples ?? 1)
            .Select(one => new SampledLadder(one.Key, [.. one.SelectMany(RunsOf)])).ToList();
        var modes = series.SelectMany(one => one.Modes).Select(mode => mode.Mode).OfType<Mode>().Concat(UsualModes.All)
            .DistinctBy(mode => mode.Pixels).ToDictionary(mode => mode.Pixels, mode => mode.ToString());
        var headroom = Headroom.Of(ladders, [.. modes.Keys], floor, confidence);
        return new HeadroomReport(BenchWording.Subject(setup), BenchWording.Setup(setup), floor, headroom.Steps.Select(step =>
        {
            var mode = step.Highest is { } highest ? modes[highest.Pixels] : "";
            return new HeadroomRow(
                step.Samples, mode, step.Highest?.AtLeast, step.Highest?.Evidence == HeadroomEvidence.Predicted,
                $"{BenchWording.Setting("samples", step.Samples.ToString(CultureInfo.InvariantCulture))}: {LadderWording.Text(headroom, step, mode)}");
        }).ToList());
    }

    private static IEnumerable<LadderRun> RunsOf(BenchSeries series) =>
        from mode in series.Modes
        where mode.Mode is not null
        from run in mode.Runs
        select new LadderRun(mode.Mode!.Value.Pixels, run.Fps!.Value);
}
