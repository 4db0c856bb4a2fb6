namespace FeatureMatrix.Bench;

/// <summary>One run of a resolution ladder: a card, a scene and its settings at one mode.</summary>
/// <param name="Pixels">Width times height of the mode, at least 1.</param>
/// <param name="Fps">Average frames per second over the run, more than 0.</param>
public sealed record LadderRun(long Pixels, double Fps)
{
    /// <summary>The average frame time, milliseconds.</summary>
    public double Time => 1000 / Fps;
}

/// <summary>The frame times, in milliseconds, of the runs of one mode.</summary>
internal sealed record LadderMode(long Pixels, IReadOnlyList<double> Times)
{
    public double Megapixels => Pixels / 1e6;

    public double MeanTime { get; } = Times.Average();

    public double SquaresWithin => Times.Sum(time => (time - MeanTime) * (time - MeanTime));

    public static IReadOnlyList<LadderMode> From(IEnumerable<LadderRun> runs) =>
    [
        .. runs.GroupBy(run => run.Pixels).OrderBy(mode => mode.Key)
            .Select(mode => new LadderMode(mode.Key, [.. mode.Select(run => run.Time)])),
    ];
}
