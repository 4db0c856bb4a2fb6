using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Measured;

/// <summary>How fast a route was measured at the mode that is wanted, against what the library and the title ask for.</summary>
/// <param name="Speed">The judgement.</param>
/// <param name="Limits">What it was held against.</param>
/// <param name="Fps">The runs behind it, of one series; empty where there are none.</param>
/// <param name="Mode">The mode that is wanted.</param>
public sealed record RouteSpeed(Speed Speed, SpeedLimits Limits, Sample Fps, Mode Mode);

/// <summary>
/// The speeds of exact routes: renderer, wrapper version, card, driver and operating system all as measured. Runs count at the policy's mode,
/// else the renderer's lowest, and at its depth and samples where runs note them. Several series (scenes, rigs, settings) may fit: the
/// slowest speaks for the route, since a title is as playable as its worst scene.
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

    /// <summary>The speed of a route.</summary>
    public RouteSpeed Of(Route route)
    {
        var limits = LimitsOf(route.Renderer.Title);
        var mode = _policy.Mode ?? route.Renderer.Memory.LowestMode;
        var setup = route.Setup;
        var slowest = _series[(route.Renderer.Title, route.Renderer, route.Wrapper, setup.Card, setup.Driver, setup.Os)]
            .Where(series => IsWanted(series.Circumstances))
            .SelectMany(series => series.Modes.Where(one => one.Mode == mode && one.Fps.Count > 0))
            .MinBy(one => one.Fps.Mean);
        var fps = slowest?.Fps ?? Sample.Of([]);
        return new RouteSpeed(Speed.Of(fps, limits), limits, fps, mode);
    }

    /// <summary>What a title is held against: the policy's floor, and the lowest frame rate at which one of its hazards begins.</summary>
    public SpeedLimits LimitsOf(Title title) => new(
        _policy.FpsFloor, title.Hazards.Where(hazard => hazard.FollowsFrameRate).Min(hazard => hazard.HighestFps));

    private bool IsWanted(Circumstances circumstances) =>
        (_policy.Depth is null || circumstances.Depth is null || circumstances.Depth == _policy.Depth)
        && (circumstances.Samples ?? _policy.Samples) == _policy.Samples;

    private static (Title, Renderer?, WrapperVersion?, Card, Driver?, Os?) KeyOf(Circumstances circumstances) =>
        (circumstances.Title, circumstances.Renderer, circumstances.Wrapper, circumstances.Card, circumstances.Driver, circumstances.Os);
}
