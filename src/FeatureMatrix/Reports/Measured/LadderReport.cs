using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>A mean with what surrounds it.</summary>
/// <param name="Fps">The mean, frames per second.</param>
/// <param name="Interval">Of the mean at 95 %; null for a single run.</param>
/// <param name="Runs">Every run that counts.</param>
/// <param name="Text">All of it in words.</param>
public sealed record MeanSpeed(double Fps, Interval? Interval, IReadOnlyList<double> Runs, string Text)
{
    /// <summary>The mean of a sample that holds a run at least.</summary>
    public static MeanSpeed Of(Sample fps) => new(fps.Mean!.Value, fps.MeanInterval(), fps.Values, SpeedWording.Measured(fps));
}

/// <summary>A measured mode of a ladder.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Speed">Its runs.</param>
/// <param name="Bound">What sets the pace there.</param>
/// <param name="BoundText">The same in words.</param>
public sealed record LadderRung(Mode Mode, MeanSpeed Speed, Bound Bound, string BoundText);

/// <summary>A mode that nobody ran, between two that were.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Speed">What the ladder says of it.</param>
/// <param name="Text">The same in words, marked predicted.</param>
public sealed record PredictedRung(Mode Mode, Prediction.Predicted Speed, string Text);

/// <summary>A point of the fitted curve.</summary>
/// <param name="Pixels">Width times height.</param>
/// <param name="Fps">Frames per second.</param>
public sealed record CurvePoint(long Pixels, double Fps);

/// <summary>One resolution ladder.</summary>
public sealed record LadderReport
{
    private const int CurvePoints = 48;

    /// <summary>What tells it from the others of its scene.</summary>
    public required string Name { get; init; }

    /// <summary>What its runs share.</summary>
    public required Circumstances Circumstances { get; init; }

    /// <summary>The whole setup in words.</summary>
    public required string Setup { get; init; }

    /// <summary>What it says, in one sentence.</summary>
    public required string Text { get; init; }

    /// <summary>What else may set the pace; empty for nothing.</summary>
    public required string Suspicion { get; init; }

    /// <summary>The fit; null where the runs are too few, or where something else seems to set the pace.</summary>
    public required LadderFit? Fit { get; init; }

    /// <summary>The measured modes, in order of pixels.</summary>
    public required IReadOnlyList<LadderRung> Rungs { get; init; }

    /// <summary>Usual modes between the measured ones, in order of pixels.</summary>
    public required IReadOnlyList<PredictedRung> Predicted { get; init; }

    /// <summary>The fitted curve from the lowest to the highest measured mode; empty without a fit.</summary>
    public required IReadOnlyList<CurvePoint> Curve { get; init; }

    /// <summary>The ladder of a series.</summary>
    public static LadderReport Of(BenchSeries series, string name)
    {
        var ladder = series.Ladder();
        var fit = ladder as LadderFit;
        var modes = series.Modes.Where(mode => mode is { Mode: not null, Fps.Count: > 0 }).ToList();
        return new LadderReport
        {
            Name = name,
            Circumstances = series.Circumstances,
            Setup = BenchWording.Setup(series.Circumstances),
            Text = LadderWording.Text(ladder),
            Suspicion = LadderWording.Suspicion(series.PaceLimit()) ?? "",
            Fit = fit,
            Rungs = modes.Select(mode =>
            {
                var bound = fit?.Points.FirstOrDefault(point => point.Pixels == mode.Mode!.Value.Pixels)?.Bound ?? Bound.NotKnown;
                return new LadderRung(mode.Mode!.Value, MeanSpeed.Of(mode.Fps), bound, LadderWording.Of(bound));
            }).ToList(),
            Predicted = fit is null ? [] : UsualModes.All.Where(mode => modes.TrueForAll(one => one.Mode!.Value.Pixels != mode.Pixels))
                .Select(mode => (mode, fit.Predict(mode.Pixels))).Where(pair => pair.Item2 is Prediction.Predicted)
                .Select(pair => PredictedAt(pair.mode, (Prediction.Predicted)pair.Item2)).ToList(),
            Curve = fit is null ? [] : CurveOf(fit),
        };
    }

    private static PredictedRung PredictedAt(Mode mode, Prediction.Predicted speed) => new(
        mode, speed,
        $"{SpeedWording.Number(speed.Fps)} fps predicted ({SpeedWording.Number(speed.Mean.Low)} to {SpeedWording.Number(speed.Mean.High)})");

    private static List<CurvePoint> CurveOf(LadderFit fit)
    {
        var (low, high) = (fit.Points[0].Pixels, fit.Points[^1].Pixels);
        var even = Enumerable.Range(0, CurvePoints + 1).Select(i => low + (high - low) * i / CurvePoints);
        var knee = fit.Knee.Value is { } megapixels ? [(long)(megapixels * 1e6)] : Array.Empty<long>();
        return even.Concat(knee).Distinct().Order()
            .Select(pixels => fit.Predict(pixels)).OfType<Prediction.Predicted>()
            .Select(point => new CurvePoint(point.Pixels, point.Fps)).ToList();
    }
}

/// <summary>The modes that people ask for, in order of pixels. A convention of the trade, not a complete list.</summary>
public static class UsualModes
{
    /// <summary>The modes.</summary>
    public static IReadOnlyList<Mode> All { get; } =
    [
        new(320, 200), new(320, 240), new(400, 300), new(512, 384), new(640, 400), new(640, 480), new(800, 600), new(1024, 768),
        new(1152, 864), new(1280, 960), new(1280, 1024), new(1600, 1200),
    ];
}
