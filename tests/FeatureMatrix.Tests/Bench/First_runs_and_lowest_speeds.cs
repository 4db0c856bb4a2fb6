using FeatureMatrix.Bench;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

public sealed class First_runs_and_lowest_speeds
{
    [Fact]
    public void Slower_first_runs_in_several_conditions_are_a_warm_up()
    {
        var answer = Assert.IsType<WarmUp.Tested>(WarmUp.Of(
            [Sample.Of([55.0, 60.1, 60.4]), Sample.Of([41.1, 45.2, 44.9]), Sample.Of([28.0, 30.6, 30.3])]));

        Assert.True(answer.Shown);
        Assert.InRange(answer.Percent, -10, -7);
    }

    /// <summary>
    /// One condition of three runs, by hand: ln 50 against ln 60 and ln 61, t = −0.19062 / (0.011688 √1.5) = −13.316 with one
    /// degree of freedom.
    /// </summary>
    [Fact]
    public void One_condition_of_three_runs_is_weak_evidence()
    {
        var answer = Assert.IsType<WarmUp.Tested>(WarmUp.Of([Sample.Of([50, 60, 61])]));

        Assert.Equal(100 * (50 / Math.Sqrt(60 * 61.0) - 1), answer.Percent, 1e-9);
        // Student t with one degree of freedom is the Cauchy distribution: p = 2 arctan(1 / t) / π.
        Assert.Equal(2 * Math.Atan(1 / 13.316) / Math.PI, answer.P, 1e-5);
    }

    /// <summary>Nothing but noise: about 5 % of 2,000 logs show a warm-up at 95 %.</summary>
    [Fact]
    public void Noise_alone_is_a_warm_up_as_seldom_as_claimed()
    {
        var random = new MersenneTwister(17);
        var shown = Enumerable.Range(0, 2000).Count(_ =>
            ((WarmUp.Tested)WarmUp.Of(Enumerable.Range(3, 4).Select(runs =>
                Sample.Of(Enumerable.Range(0, runs).Select(_ => 60 * (1 + 0.02 * Normal.Sample(random, 0, 1))))))).Shown);

        Assert.InRange(shown / 2000.0, 0.035, 0.065);
    }

    [Fact]
    public void Two_runs_or_none_cannot_tell()
    {
        Assert.IsType<WarmUp.NotKnown>(WarmUp.Of([]));
        Assert.IsType<WarmUp.NotKnown>(WarmUp.Of([Sample.Of([50, 60])]));
        Assert.IsType<WarmUp.NotKnown>(WarmUp.Of([Sample.Of([50, 60, 60])]));
    }

    [Fact]
    public void An_average_over_the_floor_can_hide_dips_under_it()
    {
        var dips = Dips.Of([(60, 20), (61, 21), (59, 19)]);

        Assert.Equal(1.0 / 3, dips.Share.Mean!.Value, 0.01);
        Assert.True(dips.HiddenByAverage(30));
        Assert.False(dips.HiddenByAverage(15));
        Assert.False(dips.HiddenByAverage(80));
    }

    [Fact]
    public void Dips_of_one_run_are_certain_of_nothing() =>
        Assert.False(Dips.Of([(60, 20)]).HiddenByAverage(30));
}
