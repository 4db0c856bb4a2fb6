namespace FeatureMatrix.Bench;

/// <summary>The lowest speeds of runs beside their averages.</summary>
/// <param name="Average">Average frames per second of the runs that noted both.</param>
/// <param name="Lowest">The lowest frames per second of the same runs.</param>
/// <param name="Share">Lowest ÷ average, run by run: near 1 is even, small is uneven.</param>
public sealed record Dips(Sample Average, Sample Lowest, Sample Share)
{
    /// <summary>Reads pairs of average and lowest speed; averages lie above 0.</summary>
    public static Dips Of(IReadOnlyList<(double Average, double Lowest)> runs) => new(
        Sample.Of(runs.Select(run => run.Average)),
        Sample.Of(runs.Select(run => run.Lowest)),
        Sample.Of(runs.Select(run => run.Lowest / run.Average)));

    /// <summary>The average keeps the floor and the lowest speed does not, both for certain at the confidence.</summary>
    public bool HiddenByAverage(double floor, double confidence = Confidence.Usual) =>
        Average.MeanInterval(confidence)?.Low >= floor && Lowest.MeanInterval(confidence)?.High < floor;
}
