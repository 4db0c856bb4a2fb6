using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Measured;

/// <summary>A card with a mean speed, frames per second.</summary>
public sealed record CardSpeed(Card Card, double Fps)
{
    /// <summary>
    /// The cards that were measured on the finding's rig faster than its title bears (rule R12), in any scene and mode, fastest first. Empty
    /// where the hazard does not follow the frame rate.
    /// </summary>
    public static IReadOnlyList<CardSpeed> BeyondBearable(TimingFinding finding, IReadOnlyList<BenchSeries> log) =>
        finding is { State: TimingState.FollowsFrameRate, Hazard.HighestFps: { } ceiling }
            ? [
                .. log.Where(series => series.Circumstances.Title == finding.Title && series.Circumstances.Rig == finding.Rig)
                    .SelectMany(series => series.Modes.Select(mode => (series.Circumstances.Card, mode.Fps)))
                    .Where(measured => Speed.Of(measured.Fps, new SpeedLimits(null, ceiling)) is Speed.FasterThanTitleBears)
                    .GroupBy(measured => measured.Card)
                    .Select(card => new CardSpeed(card.Key, card.Max(measured => measured.Fps.Mean!.Value)))
                    .OrderByDescending(card => card.Fps).ThenBy(card => card.Card.Id, StringComparer.Ordinal),
            ]
            : [];
}
