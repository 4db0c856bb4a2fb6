using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

public sealed class What_sets_the_pace
{
    [Fact]
    public void At_refresh_and_its_half_and_third_is_probably_the_monitor()
    {
        var answer = Assert.IsType<PaceLimit.Vsync>(PaceLimit.Of(
            [Sample.Of([74.9, 75.0]), Sample.Of([75.1, 74.9]), Sample.Of([51.2, 52.0]), Sample.Of([37.6, 37.5]), Sample.Of([25.0, 24.9])],
            75));

        Assert.Equal([1, 1, null, 2, 3], answer.Divisors);
        Assert.Equal(75, answer.Refresh);
    }

    [Fact]
    public void Is_not_the_monitor_where_one_run_is_faster_than_it() =>
        Assert.IsType<PaceLimit.NotSuspected>(PaceLimit.Of(
            [Sample.Of([82.0, 83.1]), Sample.Of([75.1, 74.4]), Sample.Of([37.6, 37.1])], 75));

    [Fact]
    public void Is_not_the_monitor_where_one_mode_of_many_meets_it_by_chance() =>
        Assert.IsType<PaceLimit.NotSuspected>(PaceLimit.Of(
            [Sample.Of([71.0, 70.1]), Sample.Of([64.2, 65.0]), Sample.Of([37.6, 37.1]), Sample.Of([30.2, 31.0])], 75));

    [Fact]
    public void Without_a_known_refresh_cannot_be_the_monitor() =>
        Assert.IsType<PaceLimit.NotSuspected>(PaceLimit.Of([Sample.Of([75.3, 74.6]), Sample.Of([37.2, 37.9])], null));

    [Fact]
    public void At_one_speed_without_scatter_is_probably_a_cap()
    {
        var answer = Assert.IsType<PaceLimit.FrameCap>(PaceLimit.Of(
            [
                Sample.Of([72.00, 72.01, 71.99]), Sample.Of([72.01, 72.00, 72.00]), Sample.Of([71.99, 72.00, 72.01]),
                Sample.Of([55.1, 56.3, 54.6]), Sample.Of([41.0, 40.2, 41.9]),
            ],
            null));

        Assert.Equal(72, answer.Fps, 0.01);
    }

    [Fact]
    public void At_one_speed_with_the_usual_scatter_is_the_processor() =>
        Assert.IsType<PaceLimit.NotSuspected>(PaceLimit.Of(
            [
                Sample.Of([72.0, 73.1, 70.9]), Sample.Of([71.1, 72.5, 72.4]), Sample.Of([72.6, 71.2, 72.3]),
                Sample.Of([55.1, 56.3, 54.6]), Sample.Of([41.0, 40.2, 41.9]),
            ],
            null));

    [Fact]
    public void Of_one_mode_is_not_known() =>
        Assert.IsType<PaceLimit.NotKnown>(PaceLimit.Of([Sample.Of([60, 60, 60]), Sample.Of([])], 60));
}
