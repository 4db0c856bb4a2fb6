namespace FeatureMatrix.Bench;

/// <summary>
/// The hinges that the runs of a ladder allow, one for each knee on a fine grid: the profile of the squares over the knee
/// (D. M. Bates and D. G. Watts, Nonlinear Regression Analysis, 1988, chapter 6). A value belongs to an interval if
/// some knee makes it come within t² s² of the least squares; that needs no derivative at the kink.
/// </summary>
internal sealed class HingeProfile
{
    private const int RoughSteps = 8;
    private const int FineSteps = 16;
    private const int Zooms = 4;

    private readonly IReadOnlyList<LadderMode> _modes;
    private readonly List<Hinge> _hinges;
    private readonly int _runs;
    private readonly double _within;

    private HingeProfile(IReadOnlyList<LadderMode> modes, IReadOnlyList<double> expected, List<Hinge> hinges)
    {
        _modes = modes;
        _hinges = hinges;
        _runs = modes.Sum(mode => mode.Times.Count);
        _within = modes.Select((mode, i) => mode.SquaresWithin / (expected[i] * expected[i])).Sum();
        Best = hinges.MinBy(hinge => hinge.Squares)!;
    }

    /// <summary>The hinge of least squares.</summary>
    public Hinge Best { get; }

    /// <summary>The hinge whose rise begins at the lowest mode: a straight line.</summary>
    public Hinge Line => _hinges[0];

    /// <summary>The hinge without a rise.</summary>
    public Hinge Level => _hinges[^1];

    /// <summary>Megapixels of the last mode but one. A knee above it leaves the slope open: one mode alone rises.</summary>
    public double LastCorner => _modes[^2].Megapixels;

    /// <summary>Flat time, slope and knee; two modes can bear only two.</summary>
    public int Parameters => Math.Min(3, _modes.Count);

    public int DegreesOfFreedom => _runs - Parameters;

    /// <summary>Squared shares of all runs around the best hinge.</summary>
    public double Squares => _within + Best.Squares;

    /// <summary>
    /// s², the square of the noise of one run as a share of its frame time. Of two estimates it is the larger: the residual
    /// one is too small where the kink has bent to the noise, the one within modes is blind to a misfit.
    /// </summary>
    public double Variance => Math.Max(
        Squares / DegreesOfFreedom,
        _runs > _modes.Count ? _within / (_runs - _modes.Count) : 0);

    /// <summary>
    /// How likely scatter alone makes modes lie so far off the best hinge (F test for lack of fit, NIST/SEMATECH e-Handbook
    /// 4.4.4.6). Null without a mode to spare or without repeated runs that differ.
    /// </summary>
    public double? MisfitP
    {
        get
        {
            var (spare, repeats) = (_modes.Count - Parameters, _runs - _modes.Count);
            return spare < 1 || repeats < 1 || _within == 0
                ? null
                : Confidence.UpperP(Best.Squares / spare / (_within / repeats), spare, repeats);
        }
    }

    /// <summary>Profiles at least two modes, given in order of pixels.</summary>
    public static HingeProfile Of(IReadOnlyList<LadderMode> modes)
    {
        double[] expected = [.. modes.Select(mode => mode.MeanTime)];
        for (var round = 0; round < 2; round++)
        {
            var best = Knees(modes, RoughSteps).Select(knee => Hinge.Fit(modes, expected, knee)).MinBy(hinge => hinge.Squares)!;
            expected = [.. modes.Select(mode => best.At(mode.Megapixels))];
        }

        return new HingeProfile(modes, expected, Grid(modes, expected));
    }

    /// <summary>Whether a simpler hinge explains the runs significantly worse than the best one (extra sum of squares F test).</summary>
    public bool Rejects(Hinge simpler, int parameters, double confidence)
    {
        var saved = Parameters - parameters;
        return saved > 0 && simpler.Squares - Best.Squares
            > saved * Confidence.UpperF(confidence, saved, DegreesOfFreedom) * Variance + Rounding;
    }

    /// <summary>
    /// The knees that the runs do not exclude, megapixels. An end lies where the squares, taken as a straight line between two
    /// knees of the grid, pass the limit: 0 where the lowest mode is allowed, infinite where the flat line is.
    /// </summary>
    public Interval KneeRange(double confidence)
    {
        var limit = Limit(confidence);
        var first = _hinges.FindIndex(hinge => hinge.Squares <= limit);
        var last = _hinges.FindLastIndex(hinge => hinge.Squares <= limit);
        return new Interval(
            first == 0 ? 0 : Crossing(_hinges[first - 1], _hinges[first]),
            last == _hinges.Count - 1 ? double.PositiveInfinity
                : last == _hinges.Count - 2 ? _modes[^1].Megapixels
                : Crossing(_hinges[last + 1], _hinges[last]));

        double Crossing(Hinge outside, Hinge inside) =>
            inside.Knee + (outside.Knee - inside.Knee) * (limit - inside.Squares) / (outside.Squares - inside.Squares);
    }

    /// <summary>The values that a quantity, linear in flat time and slope, takes over all allowed hinges.</summary>
    public Interval Range(double confidence, Func<Hinge, (double Value, double Variance)> quantity) =>
        RangeWithNoise(confidence, hinge => (quantity(hinge).Value, quantity(hinge).Variance, 0));

    /// <summary>The same for a single further run, whose own noise is a share of the given time.</summary>
    public Interval RangeWithNoise(double confidence, Func<Hinge, (double Value, double Variance, double Time)> quantity)
    {
        var limit = Limit(confidence);
        var noise = limit - Best.Squares;
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var hinge in _hinges.Where(hinge => hinge.Squares <= limit))
        {
            var (value, variance, time) = quantity(hinge);
            var half = Math.Sqrt(variance * (limit - hinge.Squares) + time * time * noise);
            (low, high) = (Math.Min(low, value - half), Math.Max(high, value + half));
        }

        return new Interval(low, high);
    }

    private double Limit(double confidence)
    {
        var t = Confidence.TwoSidedT(confidence, DegreesOfFreedom);
        return Best.Squares + t * t * Variance + Rounding;
    }

    // Runs that agree to the last digit leave no noise; rounding must not then make the best hinge exclude itself.
    private double Rounding => 1e-24 * _runs;

    // Sharper and sharper around the best knee, because precise runs allow only a small part of the space between two modes.
    private static List<Hinge> Grid(IReadOnlyList<LadderMode> modes, double[] expected)
    {
        List<Hinge> grid = [.. Knees(modes, FineSteps).Select(knee => Hinge.Fit(modes, expected, knee))];
        for (var zoom = 0; zoom < Zooms; zoom++)
        {
            var best = grid.IndexOf(grid.MinBy(hinge => hinge.Squares)!);
            var (from, to) = (grid[Math.Max(0, best - 2)].Knee, grid[Math.Min(grid.Count - 1, best + 2)].Knee);
            if (!double.IsFinite(to))
                break;
            grid.AddRange(Enumerable.Range(1, FineSteps - 1)
                .Select(step => Hinge.Fit(modes, expected, from + (to - from) * step / FineSteps)));
            grid.Sort((one, other) => one.Knee.CompareTo(other.Knee));
        }

        return grid;
    }

    private static IEnumerable<double> Knees(IReadOnlyList<LadderMode> modes, int steps)
    {
        for (var i = 0; i + 1 < modes.Count; i++)
        {
            var (from, to) = (modes[i].Megapixels, modes[i + 1].Megapixels);
            for (var step = 0; step < steps; step++)
                yield return from + (to - from) * step / steps;
        }

        yield return double.PositiveInfinity;
    }
}
