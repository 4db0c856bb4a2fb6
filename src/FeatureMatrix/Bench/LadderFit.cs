using System.Diagnostics;

namespace FeatureMatrix.Bench;

/// <summary>How a ladder looks as far as the runs show.</summary>
public enum LadderShape
{
    /// <summary>No rise with pixels was shown.</summary>
    Flat,

    /// <summary>It rises, and no flat start was shown: a knee, if there is one, may lie at or below the lowest mode.</summary>
    Rising,

    /// <summary>Flat, then rising: the knee lies above the lowest mode.</summary>
    Bent,
}

/// <summary>What sets the pace at one mode.</summary>
public enum Bound
{
    /// <summary>The runs cannot tell.</summary>
    NotKnown,

    /// <summary>The frame time does not grow with pixels there: a faster card would show nothing.</summary>
    Processor,

    /// <summary>Inside the interval of the knee, or rising with less than half of the frame time spent on pixels.</summary>
    Mixed,

    /// <summary>Above the knee, and at least half of the frame time grows with pixels.</summary>
    Card,
}

/// <summary>A fitted quantity.</summary>
/// <param name="Value">The best value; null where the runs only bound it.</param>
/// <param name="Interval">At the confidence of the fit.</param>
public sealed record Estimate(double? Value, Interval Interval);

/// <summary>One mode of a fitted ladder.</summary>
/// <param name="Pixels">Width times height.</param>
/// <param name="Fps">The runs that were used, frames per second.</param>
/// <param name="Bound">What sets the pace there.</param>
public sealed record LadderPoint(long Pixels, Sample Fps, Bound Bound);

/// <summary>A fitted ladder; <see cref="Ladder"/> states the model. Fitting is weighted least squares over all knees.</summary>
public sealed record LadderFit : Ladder
{
    private readonly HingeProfile _profile;
    private readonly Hinge _chosen;

    internal LadderFit(IReadOnlyList<LadderRun> kept, IReadOnlyList<LadderRun> outlying, double confidence)
    {
        Confidence = confidence;
        Outlying = outlying;
        Used = kept;
        var modes = LadderMode.From(kept);
        _profile = HingeProfile.Of(modes);
        Shape = !_profile.Rejects(_profile.Level, 1, confidence) ? LadderShape.Flat
            : !_profile.Rejects(_profile.Line, 2, confidence) ? LadderShape.Rising
            : LadderShape.Bent;
        _chosen = Shape switch
        {
            LadderShape.Flat => _profile.Level,
            LadderShape.Rising => _profile.Line,
            LadderShape.Bent => _profile.Best,
            _ => throw new UnreachableException(),
        };

        var knees = _profile.KneeRange(confidence);
        var slopeKnown = Shape != LadderShape.Flat && knees.High < _profile.LastCorner;
        Knee = new Estimate(Shape == LadderShape.Bent && slopeKnown ? _chosen.Knee : null, knees);

        var flat = _profile.Range(confidence, hinge => (hinge.Flat, hinge.VarianceFlat));
        ProcessorTime = Shape == LadderShape.Rising
            ? new Estimate(null, flat with { Low = 0 })
            : new Estimate(_chosen.Flat, flat);

        var slope = _profile.Range(confidence, hinge => (hinge.Slope, hinge.VarianceSlope));
        var constant = _profile.Range(confidence, hinge => (hinge.Fixed, hinge.VarianceFixed));
        PixelTime = new Estimate(
            slopeKnown ? _chosen.Slope : null,
            new Interval(Math.Max(0, slope.Low), slopeKnown ? slope.High : double.PositiveInfinity));
        FixedTime = new Estimate(
            slopeKnown ? _chosen.Fixed : null,
            new Interval(slopeKnown ? constant.Low : double.NegativeInfinity, constant.High));

        Points = [.. modes.Select(mode => new LadderPoint(
            mode.Pixels, Sample.Of(mode.Times.Select(time => 1000 / time)), BoundAt(mode.Megapixels, modes)))];
    }

    /// <summary>How the ladder looks.</summary>
    public LadderShape Shape { get; }

    /// <summary>The share of repetitions in which each interval of this fit covers the true value.</summary>
    public double Confidence { get; }

    /// <summary>c, milliseconds a frame. On a rising ladder only an upper end is known.</summary>
    public Estimate ProcessorTime { get; }

    /// <summary>k, milliseconds a megapixel. Its upper end is infinite where perhaps only the highest mode rises.</summary>
    public Estimate PixelTime { get; }

    /// <summary>
    /// a, milliseconds a frame of a rising ladder. Certainly below 0 only where time grows faster than pixels do, as when
    /// textures no longer fit beside the frame buffer.
    /// </summary>
    public Estimate FixedTime { get; }

    /// <summary>
    /// Megapixels where the card begins to set the pace. The interval begins at 0 where no flat start was shown and has no end where
    /// no rise was.
    /// </summary>
    public Estimate Knee { get; }

    /// <summary>The modes in order of pixels.</summary>
    public IReadOnlyList<LadderPoint> Points { get; }

    /// <summary>Runs left out of the fit because they lie too far from the others of their mode.</summary>
    public IReadOnlyList<LadderRun> Outlying { get; }

    /// <summary>The standard deviation of one run as a share of its frame time.</summary>
    public double Noise => Math.Sqrt(_profile.Variance);

    /// <summary>
    /// How likely mere scatter puts the modes so far off the model; null where that cannot be told. Small: something else
    /// changed between modes.
    /// </summary>
    public double? MisfitP => _profile.MisfitP;

    internal IReadOnlyList<LadderRun> Used { get; }

    internal double Squares => _profile.Squares;

    internal int DegreesOfFreedom => _profile.DegreesOfFreedom;

    /// <summary>The speed at a mode between the lowest and the highest measured one; never beyond.</summary>
    /// <param name="pixels">Width times height.</param>
    /// <param name="confidence">Of both intervals.</param>
    public Prediction Predict(long pixels, double confidence = Bench.Confidence.Usual)
    {
        if (pixels < Points[0].Pixels || pixels > Points[^1].Pixels)
            return new Prediction.OutsideMeasured(pixels, Points[0].Pixels, Points[^1].Pixels);

        var p = pixels / 1e6;
        var mean = _profile.Range(confidence, hinge => (hinge.At(p), hinge.VarianceAt(p)));
        var oneRun = _profile.RangeWithNoise(confidence, hinge => (hinge.At(p), hinge.VarianceAt(p), hinge.At(p)));
        return new Prediction.Predicted(pixels, 1000 / _chosen.At(p), mean.Per1000(), oneRun.Per1000(), confidence);
    }

    private Bound BoundAt(double megapixels, IReadOnlyList<LadderMode> modes) => Shape switch
    {
        LadderShape.Flat => SteepestSlope(modes) * megapixels < _chosen.Flat / 2 ? Bound.Processor : Bound.NotKnown,
        LadderShape.Rising => MostlyPixels(megapixels) ? Bound.Card : Bound.Mixed,
        LadderShape.Bent when megapixels <= Knee.Interval.Low => Bound.Processor,
        LadderShape.Bent => megapixels > Knee.Interval.High && MostlyPixels(megapixels) ? Bound.Card : Bound.Mixed,
        _ => throw new UnreachableException(),
    };

    private bool MostlyPixels(double megapixels) => _chosen.Slope * megapixels >= _chosen.At(megapixels) / 2;

    // A flat ladder may hide a slope in its noise; this is the upper end of a straight line's.
    private double SteepestSlope(IReadOnlyList<LadderMode> modes)
    {
        var line = LeastSquares.Fit(
            [[.. modes.Select(_ => 1.0)], [.. modes.Select(mode => mode.Megapixels)]],
            [.. modes.Select(mode => mode.MeanTime / _chosen.Flat)],
            [.. modes.Select(mode => (double)mode.Times.Count)]);
        var t = Bench.Confidence.TwoSidedT(Confidence, DegreesOfFreedom);
        return _chosen.Flat * (line.Estimates[1] + t * Noise * Math.Sqrt(line.UnscaledCovariance[1, 1]));
    }
}
