using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>
/// What the bench log says of routes against a library's speed floor (DESIGN section 5). Only runs at the library's mode and depth
/// count.
/// </summary>
public sealed class MeasuredSpeed
{
    private readonly Policy _policy;
    private readonly ILookup<(Title, Renderer?, WrapperVersion?, Card, Driver?, Os?), BenchSeries> _series;

    /// <summary>Sorts a log for a policy with a speed floor.</summary>
    public MeasuredSpeed(IEnumerable<Run> log, Policy policy)
    {
        _policy = policy;
        _series = BenchSeries.Of(log).ToLookup(series => KeyOf(series.Circumstances));
    }

    /// <summary>
    /// Whether a route reaches the floor: no where the interval of every series lies under it, yes where one lies at or over it or
    /// where the processor sets the pace, since such a row says nothing about the card.
    /// </summary>
    public FloorAnswer Of(Route route)
    {
        if (_policy.FpsFloor is not { } floor)
            return FloorAnswer.Reaches;
        var answers = _series[(route.Renderer.Title, route.Renderer, route.Wrapper, route.Setup.Card, route.Setup.Driver, route.Setup.Os)]
            .Where(series => _policy.Depth is null || series.Circumstances.Depth is null || series.Circumstances.Depth == _policy.Depth)
            .SelectMany(series => series.Modes.Where(mode => _policy.Mode is null || mode.Mode == _policy.Mode).Select(mode => Of(series, mode, floor)))
            .ToList();
        if (answers.Count == 0)
            return FloorAnswer.NotKnown;
        if (answers.Contains(FloorAnswer.Reaches))
            return FloorAnswer.Reaches;
        return answers.TrueForAll(answer => answer == FloorAnswer.Misses) ? FloorAnswer.Misses : FloorAnswer.NotKnown;
    }

    private static FloorAnswer Of(BenchSeries series, ModeRuns mode, double floor) => Speed.Of(mode.Fps, new SpeedLimits(floor, null)) switch
    {
        Speed.Over or Speed.FasterThanTitleBears => FloorAnswer.Reaches,
        Speed.Under when IsProcessorBound(series, mode) => FloorAnswer.Reaches,
        Speed.Under => FloorAnswer.Misses,
        Speed.NotMeasured or Speed.Straddles or Speed.OneRun => FloorAnswer.NotKnown,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static bool IsProcessorBound(BenchSeries series, ModeRuns mode) =>
        series.Ladder() is LadderFit fit && mode.Mode is { } size
        && fit.Points.Any(point => point.Pixels == size.Pixels && point.Bound == Bound.Processor);

    private static (Title, Renderer?, WrapperVersion?, Card, Driver?, Os?) KeyOf(Circumstances circumstances) =>
        (circumstances.Title, circumstances.Renderer, circumstances.Wrapper, circumstances.Card, circumstances.Driver, circumstances.Os);
}
