namespace FeatureMatrix.Bench;

/// <summary>What a title is held against.</summary>
/// <param name="Floor">Frames per second below which the library calls it too slow; null for no floor.</param>
/// <param name="Ceiling">The highest frames per second the title bears (rule R12); null where none is recorded.</param>
public sealed record SpeedLimits(double? Floor, double? Ceiling);

/// <summary>A measured speed against the limits. It never changes a capability verdict (rule R16).</summary>
public abstract record Speed
{
    private Speed()
    {
    }

    /// <summary>Nobody ran it.</summary>
    public sealed record NotMeasured : Speed;

    /// <summary>The whole interval lies under the floor.</summary>
    public sealed record Under(Interval Fps) : Speed;

    /// <summary>The whole interval lies at or over the floor, and at or under the ceiling where there is one.</summary>
    public sealed record Over(Interval Fps) : Speed;

    /// <summary>The whole interval lies over what the title bears.</summary>
    public sealed record FasterThanTitleBears(Interval Fps) : Speed;

    /// <summary>A limit lies inside the interval.</summary>
    /// <param name="Fps">The interval.</param>
    /// <param name="Limit">The limit, the floor if both do.</param>
    public sealed record Straddles(Interval Fps, double Limit) : Speed;

    /// <summary>One run only: there is a value and no interval.</summary>
    public sealed record OneRun(double Fps) : Speed;

    /// <summary>Judges the mean of the runs. Where a floor lies over the ceiling, too fast goes before too slow.</summary>
    public static Speed Of(Sample fps, SpeedLimits limits, double confidence = Confidence.Usual)
    {
        if (fps.Mean is not { } mean)
            return new NotMeasured();
        if (fps.MeanInterval(confidence) is not { } interval)
            return new OneRun(mean);
        if (interval.Low > limits.Ceiling)
            return new FasterThanTitleBears(interval);
        if (interval.High < limits.Floor)
            return new Under(interval);
        if (interval.Low < limits.Floor)
            return new Straddles(interval, limits.Floor.Value);
        return interval.High > limits.Ceiling
            ? new Straddles(interval, limits.Ceiling.Value)
            : new Over(interval);
    }
}
