using FeatureMatrix.Bench;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

public sealed class A_factor_on_a_ladder
{
    private static readonly long[] DosModes = [320 * 200, 320 * 240, 512 * 384, 640 * 480, 800 * 600];

    /// <summary>A linear frame buffer spares the processor its window switching: 22 ms and 70 ms a megapixel become 18 and 40.</summary>
    [Fact]
    public void That_matters_splits_it()
    {
        var split = LadderSplit.Of([.. Part("off", new(22, 5, 70), 1), .. Part("on", new(18, 5, 40), 2)]);

        Assert.Equal(["off", "on"], split.Ladders.Select(part => part.Factor));
        Assert.True(split.P < 1e-6);
        Assert.Equal(22, ((LadderFit)split.Ladders[0].Ladder).ProcessorTime.Value!.Value, 0.5);
        Assert.Equal(18, ((LadderFit)split.Ladders[1].Ladder).ProcessorTime.Value!.Value, 0.5);
    }

    /// <summary>Of 200 pairs of ladders that differ by noise alone, about ten show a difference at 5 %: between 2 and 20 they must.</summary>
    [Fact]
    public void That_does_not_matter_is_seldom_taken_for_one_that_does()
    {
        var shown = Enumerable.Range(0, 200).Count(seed =>
            LadderSplit.Of([.. Part("off", new(20, 5, 50), 2 * seed), .. Part("on", new(20, 5, 50), 2 * seed + 1)]).P < 0.05);

        Assert.InRange(shown, 2, 20);
    }

    [Fact]
    public void With_a_part_too_small_to_fit_is_not_judged()
    {
        var split = LadderSplit.Of([.. Part("off", new(20, 5, 50), 1), new FactorRun("on", new LadderRun(320 * 200, 60))]);

        Assert.Null(split.P);
        Assert.Equal(new Ladder.NotFitted(1, 1), split.Ladders[1].Ladder);
    }

    [Fact]
    public void With_one_value_only_is_not_judged() =>
        Assert.Null(LadderSplit.Of([.. Part("off", new(20, 5, 50), 1)]).P);

    private static IEnumerable<FactorRun> Part(string factor, Ladders.Truth truth, int seed) =>
        Ladders.Simulate(truth, 3, 0.02, new MersenneTwister(seed), modes: DosModes).Select(run => new FactorRun(factor, run));
}
