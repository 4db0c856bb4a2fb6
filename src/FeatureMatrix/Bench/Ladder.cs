namespace FeatureMatrix.Bench;

/// <summary>
/// What limits one card in one scene, read from the same scene at several modes. The model of a frame:
/// <code>t(p) = max(c, a + k · p)</code>
/// p megapixels, c the time that the processor needs whatever the mode, k the time a megapixel costs the card, a what is
/// left of the card's frame and does not grow with pixels (all in milliseconds). Processor and card work at the same
/// time, so the slower of the two sets the pace; where they wait for each other instead, the sum appears as a rising line
/// without a flat start, a then holding the processor's share. The knee is where the two branches meet, (c − a) / k.
/// Run-to-run noise is a share of the frame time. A ladder holds every other setting (filtering, linear frame buffer,
/// sound) fixed; <see cref="LadderSplit"/> tells whether one of them matters.
/// </summary>
public abstract record Ladder
{
    private protected Ladder()
    {
    }

    /// <summary>
    /// Too little for a fit: fewer than two modes, or no run to spare for judging the noise (it takes one run more
    /// than the smaller of three and the number of modes).
    /// </summary>
    public sealed record NotFitted(int Modes, int Runs) : Ladder;

    /// <summary>
    /// Something other than processor and card seems to set the pace, so that a fit would name the wrong limit. It stands until the
    /// same scene is run without it.
    /// </summary>
    public sealed record Paced(PaceLimit Limit) : Ladder;

    /// <summary>Fits a ladder, outlying runs left out and named.</summary>
    /// <exception cref="ArgumentException">A run without pixels or without a positive, finite speed.</exception>
    public static Ladder Of(IReadOnlyList<LadderRun> runs, double confidence = Confidence.Usual)
    {
        if (!runs.All(run => run is { Pixels: > 0, Fps: > 0 } && double.IsFinite(run.Fps)))
            throw new ArgumentException("a run needs a positive number of pixels and a positive, finite speed", nameof(runs));
        var modes = runs.Select(run => run.Pixels).Distinct().Count();
        if (modes < 2 || runs.Count <= Math.Min(3, modes))
            return new NotFitted(modes, runs.Count);
        var (kept, outlying) = LadderScreen.Of(runs);
        return new LadderFit(kept, outlying, Confidence.Checked(confidence));
    }
}
