using System.Globalization;
using FeatureMatrix.Bench;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Resolution ladders, limits of pace and headroom in words.</summary>
public static class LadderWording
{
    /// <summary>What sets the pace, in a word or two.</summary>
    public static string Of(Bound bound) => bound switch
    {
        Bound.NotKnown => "not known",
        Bound.Processor => "processor-bound",
        Bound.Mixed => "mixed",
        Bound.Card => "card-bound",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The ladder in one sentence.</summary>
    public static string Text(Ladder ladder) => ladder switch
    {
        Ladder.NotFitted { Modes: < 2 } => "one mode only: what sets the pace is not known until the same scene runs at another",
        Ladder.NotFitted => "too few runs to judge the noise: repeat some of them",
        Ladder.Paced => "what processor and card can do is not shown",
        LadderFit { Shape: LadderShape.Flat } flat =>
            $"no fall with pixels was shown: {(flat.Points.All(point => point.Bound == Bound.Processor) ? "the processor sets the pace throughout" : "the noise could hide one")}, {Time(flat.ProcessorTime, "ms a frame")}",
        LadderFit { Shape: LadderShape.Rising } rising =>
            $"falls with pixels from the lowest mode on: the card sets or shares the pace throughout, {Time(rising.PixelTime, "ms a megapixel")}",
        LadderFit { Shape: LadderShape.Bent } bent =>
            $"flat, then falling: the processor takes {Time(bent.ProcessorTime, "ms a frame")}; {Knee(bent)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Where the card begins to set the pace.</summary>
    public static string Knee(LadderFit fit)
    {
        var (low, high) = (Number(fit.Knee.Interval.Low), Number(fit.Knee.Interval.High));
        return fit.Knee.Value is { } knee
            ? $"the card sets the pace from about {Number(knee)} megapixels on ({low} to {high})"
            : $"the card sets the pace from somewhere above {low} megapixels on";
    }

    /// <summary>A suspicion about the pace; null where there is none.</summary>
    public static string? Suspicion(PaceLimit limit) => limit switch
    {
        PaceLimit.Vsync vsync =>
            $"seems to wait for the monitor: speeds lie at {Number(vsync.Refresh)} Hz ÷ {Names.List(vsync.Divisors.OfType<int>().Distinct().Order().Select(divisor => divisor.ToString(CultureInfo.InvariantCulture)).ToList())}; switch vsync off and run again",
        PaceLimit.FrameCap cap => $"seems to run into a frame cap at {Number(cap.Fps)} fps; lift it and run again",
        PaceLimit.NotKnown or PaceLimit.NotSuspected => null,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What first runs did; null where they do not stand apart.</summary>
    public static string? FirstRuns(WarmUp warmUp) => warmUp is WarmUp.Tested { Shown: true } tested
        ? $"first runs are {Number(Math.Abs(tested.Percent))} % {(tested.Percent < 0 ? "slower" : "faster")} than later ones ({BenchWording.P(tested.P)}): discard them, with that reason"
        : null;

    /// <summary>Whether a factor had to split a ladder.</summary>
    public static string Split(LadderSplit split) => split.P switch
    {
        null => "whether they differ could not be tested",
        < 1 - Confidence.Usual => $"they are different ladders ({BenchWording.P(split.P.Value)})",
        { } p => $"no effect was shown ({BenchWording.P(p)})",
    };

    /// <summary>The highest mode that keeps a floor.</summary>
    /// <example><c>highest mode that keeps 30 fps at 95 %: 1024x768, at least 57.2 fps (measured)</c></example>
    public static string Text(Headroom headroom, HeadroomStep step, string mode) => step.Highest is { } highest
        ? $"highest mode that keeps {Floor(headroom)}: {mode}, at least {SpeedWording.Number(highest.AtLeast)} fps ({Of(highest.Evidence)})"
        : $"no mode is known to keep {Floor(headroom)}";

    /// <summary>How a mode is known to keep a floor.</summary>
    public static string Of(HeadroomEvidence evidence) => evidence switch
    {
        HeadroomEvidence.Measured => "measured",
        HeadroomEvidence.Predicted => "predicted",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Floor(Headroom headroom) =>
        $"{SpeedWording.Number(headroom.Floor)} fps at {(100 * headroom.Confidence).ToString("0.#", CultureInfo.InvariantCulture)} %";

    private static string Time(Estimate estimate, string unit)
    {
        var (low, high) = (Number(estimate.Interval.Low), Number(estimate.Interval.High));
        if (estimate.Value is { } value)
            return $"{Number(value)} {unit} ({low} to {high})";
        return double.IsFinite(estimate.Interval.High) ? $"at most {high} {unit}" : $"at least {low} {unit}";
    }

    private static string Number(double value) => SpeedWording.Number(value);
}
