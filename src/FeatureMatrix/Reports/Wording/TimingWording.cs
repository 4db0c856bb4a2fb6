using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Timing hazards in words (rule R12).</summary>
public static class TimingWording
{
    /// <summary>What the rig does to the title, with effect and remedy.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="tooFast">The cards measured on this rig beyond what the title bears, fastest first; they are named where the frame rate decides.</param>
    public static string Text(TimingFinding finding, IReadOnlyList<CardSpeed>? tooFast = null)
    {
        var remedy = finding.Hazard.Remedy.Length > 0 ? $"; {finding.Hazard.Remedy.TrimEnd('.')}" : "";
        return finding.State switch
        {
            TimingState.SeenToWork => $"no timing trouble on {Names.InMiddle(finding.Rig.Name)}{Interval(finding.Threshold)}",
            TimingState.Fails => $"does not run on this processor: {finding.Hazard.Effect.TrimEnd('.')}{Interval(finding.Threshold)}{remedy}",
            TimingState.NotKnown => $"not known on this processor: {finding.Hazard.Effect.TrimEnd('.')} on faster ones{Interval(finding.Threshold)}{remedy}",
            TimingState.Conflict => $"sightings disagree{Interval(finding.Threshold)}: {finding.Hazard.Effect.TrimEnd('.')}{remedy}",
            TimingState.FollowsFrameRate => $"needs a limiter{Fps(finding.Hazard)}: {finding.Hazard.Effect.TrimEnd('.')}{remedy}{Named(tooFast)}",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>The kind in a word or two.</summary>
    public static string Kind(TimingHazardKind kind) => kind switch
    {
        TimingHazardKind.LoopCalibration => "loop calibration",
        TimingHazardKind.WorkPerFrame => "work per frame",
        TimingHazardKind.TimerUnderflow => "timer underflow",
        TimingHazardKind.UnsynchronisedCores => "unsynchronised cores",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Named(IReadOnlyList<CardSpeed>? tooFast) => tooFast is { Count: > 0 }
        ? $"; measured faster here with {Names.List(tooFast.Select(card => $"{card.Card.Name} ({Number(card.Fps)} fps)").ToList())}"
        : "";

    private static string Interval(TimingThreshold threshold)
    {
        var parts = new List<string>();
        if (threshold.WorksTo is { } works)
            parts.Add($"seen to work at {Number(works)} MHz");
        if (threshold.FailsFrom is { } fails)
            parts.Add($"seen to fail at {Number(fails)} MHz");
        return parts.Count == 0 ? "" : $" ({string.Join(", ", parts)})";
    }

    private static string Fps(TimingHazard hazard) =>
        hazard.HighestFps is { } fps ? $" above {Number(fps)} frames a second" : "";

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
