namespace FeatureMatrix.Bench;

/// <summary>The ladder of one number of antialiasing samples, with the runs it was fitted to.</summary>
/// <param name="Samples">Samples a pixel; 1 for none.</param>
/// <param name="Runs">All runs that count, of one card and scene, with everything but the mode alike.</param>
public sealed record SampledLadder(int Samples, IReadOnlyList<LadderRun> Runs);

/// <summary>How a mode is known to keep a floor.</summary>
public enum HeadroomEvidence
{
    /// <summary>By its own runs, two at least.</summary>
    Measured,

    /// <summary>By the ladder, between measured modes.</summary>
    Predicted,
}

/// <summary>A mode that keeps the floor.</summary>
/// <param name="Pixels">Width times height.</param>
/// <param name="Fps">The best value of the mean speed.</param>
/// <param name="AtLeast">What the mean speed exceeds at the confidence asked; not under the floor.</param>
/// <param name="Evidence">How that is known.</param>
public sealed record HeadroomMode(long Pixels, double Fps, double AtLeast, HeadroomEvidence Evidence);

/// <summary>The highest mode that keeps the floor at one number of samples.</summary>
/// <param name="Samples">Samples a pixel.</param>
/// <param name="Highest">Null where none of the modes is known to keep it; that need not mean that none does.</param>
public sealed record HeadroomStep(int Samples, HeadroomMode? Highest);

/// <summary>
/// What a card has left above a floor: for each number of samples the highest mode that keeps it. Only modes that were measured or lie
/// between measured ones are considered, and one number of samples says nothing of another.
/// </summary>
/// <param name="Floor">Frames per second.</param>
/// <param name="Confidence">One-sided: the share of cases in which a mode said to keep the floor does.</param>
/// <param name="Steps">In order of samples.</param>
public sealed record Headroom(double Floor, double Confidence, IReadOnlyList<HeadroomStep> Steps)
{
    /// <summary>Looks among the given modes.</summary>
    /// <param name="ladders">One for each number of samples.</param>
    /// <param name="modes">Width times height of the modes worth asking for.</param>
    /// <param name="floor">Frames per second, more than 0.</param>
    /// <param name="confidence">More than one half and less than 1.</param>
    public static Headroom Of(
        IReadOnlyList<SampledLadder> ladders, IReadOnlyList<long> modes, double floor, double confidence = Bench.Confidence.Usual)
    {
        if (confidence is not (> 0.5 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "a one-sided confidence lies between one half and 1");
        return new Headroom(floor, confidence, [.. ladders.OrderBy(ladder => ladder.Samples).Select(Step)]);

        HeadroomStep Step(SampledLadder ladder)
        {
            var fitted = Ladder.Of(ladder.Runs);
            return new HeadroomStep(ladder.Samples, modes.Distinct().OrderDescending()
                .Select(pixels => At(pixels, ladder, fitted, 2 * confidence - 1))
                .FirstOrDefault(mode => mode is not null && mode.AtLeast >= floor));
        }
    }

    // A one-sided limit is the lower end of the two-sided interval of confidence 2c - 1.
    private static HeadroomMode? At(long pixels, SampledLadder ladder, Ladder fitted, double twoSided)
    {
        var own = Sample.Of(ladder.Runs.Where(run => run.Pixels == pixels).Select(run => run.Fps));
        if (own.MeanInterval(twoSided) is { } measured)
            return new HeadroomMode(pixels, own.Mean!.Value, measured.Low, HeadroomEvidence.Measured);
        return fitted switch
        {
            LadderFit fit => fit.Predict(pixels, twoSided) switch
            {
                Prediction.Predicted predicted =>
                    new HeadroomMode(pixels, predicted.Fps, predicted.Mean.Low, HeadroomEvidence.Predicted),
                _ => null,
            },
            _ => null,
        };
    }
}
