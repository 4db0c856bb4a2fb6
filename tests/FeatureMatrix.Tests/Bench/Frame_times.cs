using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

public sealed class Frame_times
{
    /// <summary>Three frames in 10 + 20 + 30 ms are 50 a second; the mean of 100, 50 and 33.3 would be 61.1.</summary>
    [Fact]
    public void Average_by_time_and_not_by_frame()
    {
        var frames = new FrameTimes([30, 10, 20]);

        Assert.Equal(50, frames.AverageFps, 1e-12);
        Assert.Equal(1000 / 30.0, frames.LowestFps, 1e-12);
    }

    /// <summary>
    /// The worked example of the NIST/SEMATECH e-Handbook 7.2.6.2 (data from memory): the 90th percentile of twelve gauge readings
    /// is 95.1981.
    /// </summary>
    [Fact]
    public void Have_the_percentile_of_the_published_example()
    {
        var frames = new FrameTimes(
            [95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065, 95.0925, 95.1990, 95.1682]);

        Assert.Equal(95.1981, frames.Quantile(0.9), 0.00005);
        Assert.Equal(1000 / frames.Quantile(0.9), frames.FpsUnder(10), 1e-12);
    }

    [Fact]
    public void Beyond_their_ranks_end_with_the_slowest_and_the_quickest_frame()
    {
        var frames = new FrameTimes([10, 20, 40]);

        Assert.Equal(25, frames.FpsUnder(1), 1e-12);
        Assert.Equal(50, frames.FpsUnder(50), 1e-12);
        Assert.Equal(100, frames.FpsUnder(99), 1e-12);
        Assert.Equal(100, new FrameTimes([10]).FpsUnder(5), 1e-12);
    }

    [Fact]
    public void Refuse_what_is_no_run()
    {
        Assert.Throws<ArgumentException>(() => new FrameTimes([]));
        Assert.Throws<ArgumentException>(() => new FrameTimes([16.7, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FrameTimes([16.7]).FpsUnder(0));
    }
}
