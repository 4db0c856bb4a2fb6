using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

public sealed class Speed_against_a_floor
{
    // Three runs around 60: the 95 % interval is 60 ± 2.48.
    private static readonly Sample Sixty = Sample.Of([59, 60, 61]);

    [Fact]
    public void Of_what_nobody_ran_is_not_measured() =>
        Assert.Equal(new Speed.NotMeasured(), Speed.Of(Sample.Of([]), new SpeedLimits(30, null)));

    [Fact]
    public void Of_one_run_is_a_value_without_a_verdict() =>
        Assert.Equal(new Speed.OneRun(90), Speed.Of(Sample.Of([90]), new SpeedLimits(30, null)));

    [Fact]
    public void Is_over_or_under_only_with_the_whole_interval()
    {
        var interval = Sixty.MeanInterval()!;

        Assert.Equal(new Speed.Over(interval), Speed.Of(Sixty, new SpeedLimits(57, null)));
        Assert.Equal(new Speed.Straddles(interval, 58), Speed.Of(Sixty, new SpeedLimits(58, null)));
        Assert.Equal(new Speed.Straddles(interval, 62), Speed.Of(Sixty, new SpeedLimits(62, null)));
        Assert.Equal(new Speed.Under(interval), Speed.Of(Sixty, new SpeedLimits(63, null)));
        Assert.Equal(new Speed.Over(interval), Speed.Of(Sixty, new SpeedLimits(null, null)));
    }

    [Fact]
    public void Is_too_fast_only_with_the_whole_interval_over_what_the_title_bears()
    {
        var interval = Sixty.MeanInterval()!;

        Assert.Equal(new Speed.FasterThanTitleBears(interval), Speed.Of(Sixty, new SpeedLimits(30, 57)));
        Assert.Equal(new Speed.Straddles(interval, 61), Speed.Of(Sixty, new SpeedLimits(30, 61)));
        Assert.Equal(new Speed.Over(interval), Speed.Of(Sixty, new SpeedLimits(30, 70)));
    }

    [Fact]
    public void Asked_for_less_confidence_decides_sooner()
    {
        Assert.IsType<Speed.Straddles>(Speed.Of(Sixty, new SpeedLimits(58.5, null), 0.95));
        Assert.IsType<Speed.Over>(Speed.Of(Sixty, new SpeedLimits(58.5, null), 0.80));
    }
}
