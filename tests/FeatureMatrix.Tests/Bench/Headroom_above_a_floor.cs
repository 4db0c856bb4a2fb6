using FeatureMatrix.Bench;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

public sealed class Headroom_above_a_floor
{
    private static readonly long[] Asked =
        [640 * 480, 800 * 600, 1024 * 768, 1152 * 864, 1280 * 1024, 1600 * 1200, 1920 * 1440];

    private static readonly SampledLadder Plain = new(1, Ladders.Simulate(new Ladders.Truth(10, 1, 12), 3, 0.01, new MersenneTwister(1)));

    private static readonly SampledLadder FourSamples = new(4, Ladders.Simulate(new Ladders.Truth(10, 1, 30), 3, 0.01, new MersenneTwister(2)));

    /// <summary>
    /// 1600×1200 takes 24.0 ms plain, 41.6 fps; with four samples 1024×768 takes 24.6 ms (40.7 fps), 1152×864 30.9 ms (32.4 fps), and
    /// 1280×1024 40.3 ms (24.8 fps). At a floor of 30 the plain ladder goes to the top, the other to a mode nobody ran.
    /// </summary>
    [Fact]
    public void Names_the_highest_mode_at_each_number_of_samples()
    {
        var headroom = Headroom.Of([FourSamples, Plain], Asked, 30);

        Assert.Equal([1, 4], headroom.Steps.Select(step => step.Samples));
        var plain = headroom.Steps[0].Highest!;
        Assert.Equal((1600 * 1200, HeadroomEvidence.Measured), (plain.Pixels, plain.Evidence));
        Assert.Equal(1000 / 24.04, plain.Fps, 0.5);
        var four = headroom.Steps[1].Highest!;
        Assert.Equal((1152 * 864, HeadroomEvidence.Predicted), (four.Pixels, four.Evidence));
        Assert.InRange(four.AtLeast, 30, four.Fps);
    }

    [Fact]
    public void Never_reaches_beyond_the_highest_measured_mode() =>
        Assert.Equal(1600 * 1200, Headroom.Of([Plain], Asked, 1).Steps.Single().Highest!.Pixels);

    [Fact]
    public void Is_empty_where_no_mode_keeps_the_floor() =>
        Assert.Null(Headroom.Of([FourSamples], Asked, 200).Steps.Single().Highest);

    [Fact]
    public void Counts_measured_modes_only_where_no_ladder_can_be_fitted()
    {
        var single = new SampledLadder(2, [new(800 * 600, 61), new(800 * 600, 62), new(800 * 600, 61.5)]);

        Assert.Equal(800 * 600, Headroom.Of([single], Asked, 50).Steps.Single().Highest!.Pixels);
    }

    /// <summary>61, 62, 61.5: mean 61.5, standard error 0.2887; one-sided 95 % at 2 degrees of freedom is 2.920 (NIST table).</summary>
    [Fact]
    public void Takes_the_confidence_one_sided()
    {
        var single = new SampledLadder(2, [new(800 * 600, 61), new(800 * 600, 62), new(800 * 600, 61.5)]);

        Assert.Equal(61.5 - 2.920 * 0.28868, Headroom.Of([single], Asked, 50).Steps.Single().Highest!.AtLeast, 0.001);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    public void Refuses_a_confidence_that_promises_nothing(double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Headroom.Of([Plain], Asked, 30, confidence));
}
