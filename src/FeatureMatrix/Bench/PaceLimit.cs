namespace FeatureMatrix.Bench;

/// <summary>
/// Whether something other than processor and card seems to set the pace: waiting for the monitor, or a limit inside
/// the title. A suspicion, to be settled by switching it off and running again.
/// </summary>
public abstract record PaceLimit
{
    /// <summary>
    /// How far a speed may lie from refresh ÷ 1, 2 or 3, as a share: nominal refresh rates are rounded, runs begin and end
    /// between two refreshes. Three such bands fill 4 % of the way from refresh ÷ 4 to refresh (on a logarithmic scale), so two of four modes
    /// fall into them by chance in about one ladder of a hundred.
    /// </summary>
    private const double VsyncTolerance = 0.01;

    /// <summary>How far the fastest modes may lie apart, as a share, to look like one limit.</summary>
    private const double CapTolerance = 0.005;

    /// <summary>The F test of the spreads.</summary>
    private const double CapConfidence = 0.99;

    private PaceLimit()
    {
    }

    /// <summary>Fewer than two modes were run.</summary>
    public sealed record NotKnown : PaceLimit;

    /// <summary>Nothing points to it.</summary>
    public sealed record NotSuspected : PaceLimit;

    /// <summary>
    /// At least two modes, and at least half of all, run at the refresh rate divided by 1, 2 or 3, and no run is faster than the
    /// monitor.
    /// </summary>
    /// <param name="Refresh">Hertz.</param>
    /// <param name="Divisors">For each mode in the order given the divisor it clusters at; null where it does not.</param>
    public sealed record Vsync(double Refresh, IReadOnlyList<int?> Divisors) : PaceLimit;

    /// <summary>
    /// At least two modes share the highest speed, and their runs scatter significantly less than those of the other modes: a
    /// processor at its limit scatters as much as a card does.
    /// </summary>
    /// <param name="Fps">The shared speed.</param>
    public sealed record FrameCap(double Fps) : PaceLimit;

    /// <summary>Looks at the modes of one ladder; modes without runs do not count.</summary>
    /// <param name="modes">Frames per second of the runs of each mode.</param>
    /// <param name="refresh">The monitor's refresh rate, hertz; null where not noted or not the same throughout.</param>
    public static PaceLimit Of(IReadOnlyList<Sample> modes, double? refresh)
    {
        if (modes.Count(mode => mode.Count > 0) < 2)
            return new NotKnown();
        if (refresh is { } hertz && SuspectVsync(modes, hertz) is { } vsync)
            return vsync;
        return SuspectCap([.. modes.Where(mode => mode.Mean > 0)]) ?? (PaceLimit)new NotSuspected();
    }

    private static Vsync? SuspectVsync(IReadOnlyList<Sample> modes, double refresh)
    {
        if (modes.Any(mode => mode.Values.Any(fps => fps > refresh * (1 + VsyncTolerance))))
            return null;
        int?[] divisors = [.. modes.Select(Divisor)];
        var hits = divisors.Count(divisor => divisor is not null);
        return hits >= 2 && 2 * hits >= modes.Count(mode => mode.Count > 0) ? new Vsync(refresh, divisors) : null;

        int? Divisor(Sample mode)
        {
            for (var divisor = 1; divisor <= 3; divisor++)
            {
                if (mode.Mean is { } fps && Math.Abs(fps * divisor / refresh - 1) <= VsyncTolerance)
                    return divisor;
            }

            return null;
        }
    }

    private static FrameCap? SuspectCap(Sample[] modes)
    {
        var highest = modes.Max(mode => mode.Mean);
        var capped = modes.Where(mode => mode.Mean >= highest * (1 - CapTolerance)).ToArray();
        var (capSquares, capFreedom) = Scatter(capped);
        var (otherSquares, otherFreedom) = Scatter(modes.Except(capped));
        if (capped.Length < 2 || capFreedom == 0 || otherFreedom == 0 || otherSquares == 0)
            return null;
        var limit = Confidence.UpperF(CapConfidence, otherFreedom, capFreedom);
        return otherSquares / otherFreedom > limit * (capSquares / capFreedom)
            ? new FrameCap(capped.Average(mode => mode.Mean!.Value))
            : null;
    }

    // Squared deviations from the own mean as shares of it, and their degrees of freedom.
    private static (double Squares, int Freedom) Scatter(IEnumerable<Sample> modes)
    {
        var repeated = modes.Where(mode => mode.Count > 1).ToList();
        return (
            repeated.Sum(mode => Math.Pow(mode.CoefficientOfVariation!.Value, 2) * (mode.Count - 1)),
            repeated.Sum(mode => mode.Count - 1));
    }
}
