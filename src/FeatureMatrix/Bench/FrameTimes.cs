namespace FeatureMatrix.Bench;

/// <summary>The time of every frame of one run, milliseconds, in the order they were drawn.</summary>
public sealed record FrameTimes
{
    private readonly double[] _sorted;

    /// <summary>Takes the times.</summary>
    /// <exception cref="ArgumentException">No frame, or one that did not take a positive, finite time.</exception>
    public FrameTimes(IEnumerable<double> milliseconds)
    {
        Milliseconds = [.. milliseconds];
        if (Milliseconds.Count == 0 || !Milliseconds.All(time => time > 0 && double.IsFinite(time)))
            throw new ArgumentException("a run has at least one frame and each takes a positive, finite time", nameof(milliseconds));
        _sorted = [.. Milliseconds.Order()];
    }

    /// <summary>The times.</summary>
    public IReadOnlyList<double> Milliseconds { get; }

    /// <summary>
    /// Frames drawn ÷ time taken, frames per second. It is not the mean of the single frames' speeds, which counts quick frames too
    /// much.
    /// </summary>
    public double AverageFps => 1000 * Milliseconds.Count / Milliseconds.Sum();

    /// <summary>The speed of the slowest frame, frames per second.</summary>
    public double LowestFps => 1000 / _sorted[^1];

    /// <summary>
    /// The speed that the stated percentage of the frames stays under, frames per second: 1000 ÷ the frame time at rank
    /// (1 − percent / 100) · (n + 1), between ranks in proportion, the slowest and the quickest frame beyond them (NIST/SEMATECH
    /// e-Handbook 7.2.6.2).
    /// </summary>
    /// <param name="percent">Above 0 and below 100.</param>
    public double FpsUnder(double percent)
    {
        if (percent is not (> 0 and < 100))
            throw new ArgumentOutOfRangeException(nameof(percent), percent, "a percentile lies above 0 and below 100");
        return 1000 / Quantile(1 - percent / 100);
    }

    /// <summary>The frame time at a share of the sorted frames, milliseconds.</summary>
    internal double Quantile(double share)
    {
        var rank = Math.Clamp(share * (_sorted.Length + 1), 1, _sorted.Length);
        var below = (int)rank;
        var next = Math.Min(below, _sorted.Length - 1);
        return _sorted[below - 1] + (rank - below) * (_sorted[next] - _sorted[below - 1]);
    }
}
