using System.Globalization;
using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Measured speeds in words. There are no words of praise or blame: a speed is under or over a limit that somebody stated.</summary>
public static class SpeedWording
{
    /// <summary>The column beside a verdict: speed, runs, interval, and how that stands to the limits.</summary>
    /// <example><c>41 fps (n = 4, 40.1 to 41.9), under the floor of 45</c>; <c>not measured</c></example>
    public static string Text(RouteSpeed speed) => speed.Speed switch
    {
        Speed.NotMeasured => "not measured",
        Speed.Under => $"{Measured(speed.Fps)}, under the floor of {Number(speed.Limits.Floor!.Value)}",
        Speed.Over when speed.Limits.Floor is { } floor => $"{Measured(speed.Fps)}, over the floor of {Number(floor)}",
        Speed.Over => $"{Measured(speed.Fps)}, no floor stated",
        Speed.FasterThanTitleBears => $"{Measured(speed.Fps)}, faster than the title bears ({Number(speed.Limits.Ceiling!.Value)})",
        Speed.Straddles straddles => $"{Measured(speed.Fps)}, not known on which side of {Number(straddles.Limit)}",
        Speed.OneRun => $"{Number(speed.Fps.Mean!.Value)} fps, one run only: not known how it stands to the floor",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The judgement alone, for a column heading's few words and for filters.</summary>
    public static string State(Speed speed) => speed switch
    {
        Speed.NotMeasured => "not measured",
        Speed.Under => "under the floor",
        Speed.Over => "over the floor",
        Speed.FasterThanTitleBears => "faster than the title bears",
        Speed.Straddles or Speed.OneRun => "not known",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The judgement as an id, for filters and drawing.</summary>
    public static string Id(Speed speed) => speed switch
    {
        Speed.NotMeasured => "not-measured",
        Speed.Under => "under",
        Speed.Over => "over",
        Speed.FasterThanTitleBears => "too-fast",
        Speed.Straddles or Speed.OneRun => "unclear",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Speed and judgement in a narrow cell: <c>41 fps, under</c>. Where no floor is stated there is nothing to be over.</summary>
    public static string Brief(RouteSpeed speed) => speed.Speed switch
    {
        Speed.NotMeasured => "",
        Speed.Under => $"{Short(speed)}, under",
        Speed.Over => speed.Limits.Floor is null ? Short(speed) : $"{Short(speed)}, over",
        Speed.FasterThanTitleBears => $"{Short(speed)}, too fast",
        Speed.Straddles or Speed.OneRun => $"{Short(speed)}, side not known",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The speed alone, to three digits: <c>41 fps</c>. Empty where nothing was measured.</summary>
    public static string Short(RouteSpeed speed) => speed.Fps.Mean is { } mean ? $"{Number(mean)} fps" : "";

    /// <summary>Mean, runs and interval of a sample: <c>41 fps (n = 4, 40.1 to 41.9)</c>.</summary>
    public static string Measured(Sample fps) => fps switch
    {
        { Mean: null } => "no run counts",
        _ when fps.MeanInterval() is { } interval =>
            $"{Number(fps.Mean.Value)} fps (n = {fps.Count.ToString(CultureInfo.InvariantCulture)}, {Number(interval.Low)} to {Number(interval.High)})",
        _ => $"{Number(fps.Mean.Value)} fps (n = 1)",
    };

    /// <summary>A figure to three digits or the next whole number, whichever says more: 4.13, 41.2, 167.</summary>
    public static string Number(double value)
    {
        var format = Math.Abs(value) switch
        {
            < 10 => "0.##",
            < 100 => "0.#",
            _ => "0",
        };
        return value.ToString(format, CultureInfo.InvariantCulture);
    }
}
