using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>How fast a route was measured at the mode that is wanted, against what the library and the title ask for.</summary>
/// <param name="Speed">The judgement.</param>
/// <param name="Limits">What it was held against.</param>
/// <param name="Fps">The runs behind it, of one series; empty where there are none.</param>
/// <param name="Mode">The mode that is wanted.</param>
public sealed record RouteSpeed(Speed Speed, SpeedLimits Limits, Sample Fps, Mode Mode);

/// <summary>
/// The speeds of exact routes: renderer, wrapper version, card, driver and operating system all as measured. Runs count at the policy's mode,
/// else the renderer's lowest, and at its depth and samples where runs note them.
/// <para>
/// Several series (scenes, rigs, settings) may fit. A title is as playable as its worst scene, so a route keeps a floor only if every one
/// of them does, and the one that fails speaks for it: of series that lie under the floor the slowest, else the slowest of all. Runs that a
/// setting spoiled (a wait for the monitor, for one) count until somebody discards them with that reason.
/// </para>
/// </summary>
public sealed class RouteSpeeds
{
    private readonly ILookup<(Title, Renderer?, WrapperVersion?, Card, Driver?, Os?), BenchSeries> _series;
    private readonly Policy _policy;

    /// <summary>Sorts a log for a policy.</summary>
    public RouteSpeeds(IReadOnlyList<BenchSeries> log, Policy policy)
    {
        _policy = policy;
        _series = log.ToLookup(series => KeyOf(series.Circumstances));
    }

    /// <summary>The speed of a route: that of the series that speaks for it.</summary>
    public RouteSpeed Of(Route route)
    {
        var limits = LimitsOf(route.Renderer.Title);
        var samples = Fitting(route).Select(fitting => fitting.Runs.Fps).OrderBy(fps => fps.Mean).ToList();
        var speaking = samples.Find(fps => Speed.Of(fps, limits) is Speed.Under) ?? samples.FirstOrDefault() ?? Sample.Of([]);
        return new RouteSpeed(Speed.Of(speaking, limits), limits, speaking, ModeOf(route));
    }

    /// <summary>
    /// Whether a route keeps the policy's floor, as far as its card decides: no where the interval of some series lies under it, yes where
    /// that of each lies at or over it. A series that the processor paces counts as keeping it, since it says nothing about the card.
    /// </summary>
    public FloorAnswer AgainstFloor(Route route)
    {
        if (_policy.FpsFloor is not { } floor)
            return FloorAnswer.Reaches;
        var answers = Fitting(route).Select(fitting => AgainstFloor(fitting.Series, fitting.Runs, floor)).ToList();
        if (answers.Contains(FloorAnswer.Misses))
            return FloorAnswer.Misses;
        return answers.Count > 0 && answers.TrueForAll(answer => answer == FloorAnswer.Reaches) ? FloorAnswer.Reaches : FloorAnswer.NotKnown;
    }

    /// <summary>What a title is held against: the policy's floor, and the lowest frame rate at which one of its hazards begins.</summary>
    public SpeedLimits LimitsOf(Title title) => new(
        _policy.FpsFloor, title.Hazards.Where(hazard => hazard.FollowsFrameRate).Min(hazard => hazard.HighestFps));

    private static FloorAnswer AgainstFloor(BenchSeries series, ModeRuns runs, double floor) => Speed.Of(runs.Fps, new SpeedLimits(floor, null)) switch
    {
        Speed.Over or Speed.FasterThanTitleBears => FloorAnswer.Reaches,
        Speed.Under => IsProcessorBound(series, runs) ? FloorAnswer.Reaches : FloorAnswer.Misses,
        Speed.NotMeasured or Speed.Straddles or Speed.OneRun => FloorAnswer.NotKnown,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static bool IsProcessorBound(BenchSeries series, ModeRuns runs) =>
        series.Ladder() is LadderFit fit && fit.Points.Any(point => point.Pixels == runs.Mode?.Pixels && point.Bound == Bound.Processor);

    private IEnumerable<(BenchSeries Series, ModeRuns Runs)> Fitting(Route route)
    {
        var (mode, setup) = (ModeOf(route), route.Setup);
        return from series in _series[(route.Renderer.Title, route.Renderer, route.Wrapper, setup.Card, setup.Driver, setup.Os)]
               where IsWanted(series.Circumstances)
               from runs in series.Modes
               where runs.Mode == mode && runs.Fps.Count > 0
               select (series, runs);
    }

    private Mode ModeOf(Route route) => _policy.Mode ?? route.Renderer.Memory.LowestMode;

    private bool IsWanted(Circumstances circumstances) =>
        (_policy.Depth is null || circumstances.Depth is null || circumstances.Depth == _policy.Depth)
        && (circumstances.Samples ?? _policy.Samples) == _policy.Samples;

    private static (Title, Renderer?, WrapperVersion?, Card, Driver?, Os?) KeyOf(Circumstances circumstances) =>
        (circumstances.Title, circumstances.Renderer, circumstances.Wrapper, circumstances.Card, circumstances.Driver, circumstances.Os);
}
