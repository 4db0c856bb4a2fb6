using FeatureMatrix.Bench;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

public sealed class Two_conditions_compared
{
    private static readonly Sample Slower = Sample.Of([59.1, 60.3, 60.6]);
    private static readonly Sample Faster = Sample.Of([65.9, 66.4, 67.2]);

    /// <summary>
    /// The data set <c>sleep</c> in the documentation of R, t.test(extra ~ group): t −1.8608, df 17.776, p 0.07939,
    /// interval [−3.3654832, 0.2054832].
    /// </summary>
    [Fact]
    public void Agree_with_the_worked_example_of_R()
    {
        var first = Sample.Of([0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0]);
        var second = Sample.Of([1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]);

        var answer = Assert.IsType<Comparison.Tested>(Comparison.Of(first, second));

        Assert.Equal(0.75, first.Mean!.Value, 1e-12);
        Assert.Equal(2.33, second.Mean!.Value, 1e-12);
        Assert.Equal(1.789010, first.StandardDeviation!.Value, 5e-7);
        Assert.Equal(2.002249, second.StandardDeviation!.Value, 5e-7);
        Assert.Equal(-1.860813467, answer.Test.T, 5e-10);
        Assert.Equal(17.77647352, answer.Test.DegreesOfFreedom, 5e-9);
        Assert.Equal(0.07939414, answer.Test.P, 5e-9);
        Assert.Equal(-3.3654832, answer.Test.Interval.Low, 5e-8);
        Assert.Equal(0.2054832, answer.Test.Interval.High, 5e-8);
        Assert.False(answer.DifferenceShown);
    }

    /// <summary>
    /// Car mileage, two countries, NIST handbook data as summarised in the Boost.Math documentation (Debian package
    /// libboost1.74-doc, examples/libs/math/example/students_t_two_samples.cpp): Welch t −12.94627, df 136.87499, p 1.571e−25.
    /// </summary>
    [Fact]
    public void Agree_with_the_published_summary_of_car_mileage()
    {
        var test = new WelchTest(new Summary(249, 20.14458, 6.414700), new Summary(79, 30.48101, 6.107710));

        Assert.Equal(-12.94627, test.T, 5e-6);
        Assert.Equal(136.87499, test.DegreesOfFreedom, 5e-6);
        Assert.Equal(1.571e-25, test.P, 5e-29);
    }

    [Fact]
    public void Show_a_difference_beyond_the_noise()
    {
        var answer = Assert.IsType<Comparison.Tested>(Comparison.Of(Faster, Slower));

        Assert.True(answer.DifferenceShown);
        Assert.Equal(6.5, answer.Test.Difference, 1e-9);
        Assert.Equal(100 * 6.5 / 60, answer.Percent!.Value, 1e-9);
        Assert.True(answer.PercentInterval!.Low > 0);
        Assert.True(answer.Test.HedgesG > 0);
    }

    [Fact]
    public void Change_only_sign_when_sides_are_exchanged()
    {
        var forth = Assert.IsType<Comparison.Tested>(Comparison.Of(Faster, Slower)).Test;
        var back = Assert.IsType<Comparison.Tested>(Comparison.Of(Slower, Faster)).Test;

        Assert.Equal(forth.T, -back.T, 1e-12);
        Assert.Equal(forth.P, back.P, 1e-12);
        Assert.Equal(forth.Interval.Low, -back.Interval.High, 1e-12);
        Assert.Equal(forth.SmallestVisible, back.SmallestVisible, 1e-9);
    }

    [Fact]
    public void At_three_noisy_runs_say_what_could_have_been_seen_and_what_it_would_take()
    {
        var before = Sample.Of([60.0, 61.2, 59.4]);
        var after = Sample.Of([60.5, 59.9, 61.0]);

        var answer = Assert.IsType<Comparison.Tested>(Comparison.Of(after, before));

        Assert.False(answer.DifferenceShown);
        Assert.InRange(answer.SmallestVisiblePercent!.Value, 3.5, 5.5);
        var needed = answer.RunsNeeded(1)!.Value;
        Assert.InRange(needed, 18, 40);
        Assert.True(answer.RunsNeeded(2) < needed);
        Assert.Equal(answer.RunsNeeded(1), answer.RunsNeeded(-1));
        Assert.Equal(2, answer.RunsNeeded(50));
        Assert.Null(answer.RunsNeeded(0));
    }

    /// <summary>At the smallest visible difference, the runs that were made are just the runs that are needed.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(12)]
    public void Need_the_runs_they_had_for_the_smallest_visible_difference(int runs)
    {
        var test = new WelchTest(new Summary(runs, 50, 1.5), new Summary(runs, 51, 1.5));

        Assert.Equal(runs, test.RunsNeeded(test.SmallestVisible * 1.0001));
        Assert.Equal(runs + 1, test.RunsNeeded(test.SmallestVisible * 0.9999));
    }

    /// <summary>
    /// R, power.t.test(n = 20, delta = 1, sd = 1): power 0.8689528; power.t.test(power = .90, delta = 1): n 22.02110 (examples of its
    /// documentation, results from memory). R leaves out the far tail, which is below 1e−6 here.
    /// </summary>
    [Fact]
    public void Have_the_power_that_R_reckons()
    {
        var standardErrors = 1 / Math.Sqrt(2 / 20.0);

        Assert.Equal(0.8689528, Power.Of(standardErrors, 38, 0.95), 2e-6);
        Assert.True(Power.Of(1 / Math.Sqrt(2 / 22.0), 42, 0.95) < 0.90);
        Assert.True(Power.Of(1 / Math.Sqrt(2 / 23.0), 44, 0.95) > 0.90);
    }

    /// <summary>Without a true difference, a test at 95 % shows one in 5 % of cases: the integral must give it back.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(17.8)]
    [InlineData(400)]
    [InlineData(20000)]
    public void Have_no_power_beyond_the_level_where_nothing_differs(double degreesOfFreedom) =>
        Assert.Equal(0.05, Power.Of(0, degreesOfFreedom, 0.95), 1e-6);

    [Fact]
    public void With_one_run_on_a_side_are_not_tested()
    {
        var one = Sample.Of([60]);

        Assert.Equal(
            new Comparison.NotTested(one, Slower, Comparison.Obstacle.TooFewRuns), Comparison.Of(one, Slower));
    }

    [Fact]
    public void Without_any_spread_are_not_tested()
    {
        var (a, b) = (Sample.Of([60, 60, 60]), Sample.Of([61, 61, 61]));

        Assert.Equal(new Comparison.NotTested(a, b, Comparison.Obstacle.NoSpread), Comparison.Of(a, b));
    }

    [Fact]
    public void With_spread_on_one_side_only_use_its_degrees_of_freedom()
    {
        var answer = Assert.IsType<Comparison.Tested>(Comparison.Of(Sample.Of([60, 60, 60]), Faster));

        Assert.Equal(2, answer.Test.DegreesOfFreedom, 1e-12);
        Assert.True(answer.DifferenceShown);
    }

    /// <summary>Two runs a side are a test, if a poor one: it takes a difference of many standard errors to be seen.</summary>
    [Theory]
    [InlineData(0.95)]
    [InlineData(0.999)]
    public void With_two_runs_a_side_could_have_seen_only_gross_differences(double confidence)
    {
        var both = new WelchTest(new Summary(2, 60, 1), new Summary(2, 60, 1), confidence);
        var one = new WelchTest(new Summary(2, 60, 1), new Summary(9, 60, 0), confidence);

        Assert.Equal(0.8, Power.Of(both.SmallestVisible / both.StandardError, 2, confidence), 1e-6);
        Assert.Equal(0.8, Power.Of(one.SmallestVisible / one.StandardError, 1, confidence), 1e-6);
        Assert.True(both.SmallestVisible / both.StandardError < one.SmallestVisible / one.StandardError);
    }

    /// <summary>Nothing but noise, unequal spreads and numbers of runs: about 5 % of 4,000 comparisons show a difference at 95 %.</summary>
    [Fact]
    public void Of_mere_noise_differ_as_seldom_as_claimed()
    {
        var random = new MersenneTwister(4);
        var shown = Enumerable.Range(0, 4000).Count(_ => new WelchTest(Noise(4, 0.5), Noise(6, 1.5)).P < 0.05);

        Assert.InRange(shown / 4000.0, 0.04, 0.06);

        Summary Noise(int runs, double spread)
        {
            var sample = Sample.Of(Enumerable.Range(0, runs).Select(_ => 60 + spread * Normal.Sample(random, 0, 1)));
            return new Summary(runs, sample.Mean!.Value, sample.StandardDeviation!.Value);
        }
    }
}
