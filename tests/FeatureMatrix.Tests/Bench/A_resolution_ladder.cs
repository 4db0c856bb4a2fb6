using FeatureMatrix.Bench;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

public sealed class A_resolution_ladder
{
    private const long Vga = 640 * 480;
    private const long Svga = 800 * 600;
    private const long Xga = 1024 * 768;

    /// <summary>12 ms of processor time, 16 ms a megapixel: the knee lies at 0.75 megapixels, below 1024×768.</summary>
    [Fact]
    public void That_bends_names_both_times_and_the_knee()
    {
        var fit = Ladders.Fitted(new Ladders.Truth(12, 0, 16));

        Assert.Equal(LadderShape.Bent, fit.Shape);
        Assert.Equal(12, fit.ProcessorTime.Value!.Value, 0.05);
        Assert.Equal(16, fit.PixelTime.Value!.Value, 0.3);
        Assert.Equal(0.75, fit.Knee.Value!.Value, 0.02);
        Assert.True(fit.Knee.Interval.Contains(0.75) && fit.Knee.Interval.IsBounded);
        Assert.InRange(fit.Noise, 0.003, 0.008);
        Assert.Equal(
            [Bound.Processor, Bound.Processor, Bound.Processor, Bound.Card, Bound.Card, Bound.Card],
            fit.Points.Select(point => point.Bound));
        Assert.Empty(fit.Outlying);
        Assert.True(fit.MisfitP > 0.01);
    }

    [Fact]
    public void With_a_mode_just_at_the_knee_calls_it_mixed()
    {
        var fit = Ladders.Fitted(new Ladders.Truth(12.5, 0, 12.5 / (Xga / 1e6)));

        Assert.Equal(Bound.Mixed, fit.Points[3].Bound);
    }

    [Fact]
    public void Without_a_rise_is_processor_bound_throughout()
    {
        var fit = Ladders.Fitted(new Ladders.Truth(25, 0, 5));

        Assert.Equal(LadderShape.Flat, fit.Shape);
        Assert.Equal(25, fit.ProcessorTime.Value!.Value, 0.1);
        Assert.Null(fit.PixelTime.Value);
        Assert.Equal(0, fit.PixelTime.Interval.Low);
        Assert.Null(fit.Knee.Value);
        Assert.Equal(double.PositiveInfinity, fit.Knee.Interval.High);
        Assert.All(fit.Points, point => Assert.Equal(Bound.Processor, point.Bound));
    }

    /// <summary>With 30 % of noise and one run a mode, a slope that doubles the frame time may hide: that is not "processor-bound".</summary>
    [Fact]
    public void Too_noisy_to_show_a_rise_is_not_called_processor_bound()
    {
        var fit = Assert.IsType<LadderFit>(Ladder.Of(
            [new(Vga, 60), new(Svga, 41), new(Xga, 66), new(1280 * 1024, 38), new(1600 * 1200, 52)]));

        Assert.Equal(LadderShape.Flat, fit.Shape);
        Assert.Equal(Bound.NotKnown, fit.Points[^1].Bound);
    }

    [Fact]
    public void That_rises_from_the_start_bounds_the_processor_time_from_above_only()
    {
        var fit = Ladders.Fitted(new Ladders.Truth(2, 1, 20));

        Assert.Equal(LadderShape.Rising, fit.Shape);
        Assert.Null(fit.ProcessorTime.Value);
        Assert.Equal(0, fit.ProcessorTime.Interval.Low);
        Assert.InRange(fit.ProcessorTime.Interval.High, 4.9, 5.5);
        Assert.Equal(20, fit.PixelTime.Value!.Value, 0.3);
        Assert.Equal(1, fit.FixedTime.Value!.Value, 0.2);
        Assert.Equal(0, fit.Knee.Interval.Low);
        Assert.All(fit.Points, point => Assert.Equal(Bound.Card, point.Bound));
    }

    /// <summary>Processor and card waiting for each other: 20 ms plus 8 ms a megapixel. Pixels pass half of the time nowhere.</summary>
    [Fact]
    public void That_rises_by_less_than_half_is_mixed()
    {
        var fit = Ladders.Fitted(new Ladders.Truth(1, 20, 8));

        Assert.Equal(LadderShape.Rising, fit.Shape);
        Assert.Equal(20, fit.FixedTime.Value!.Value, 0.3);
        Assert.All(fit.Points, point => Assert.Equal(Bound.Mixed, point.Bound));
    }

    /// <summary>One risen mode shows that the card limits there, but no slope: the knee may lie anywhere below it.</summary>
    [Fact]
    public void With_one_risen_mode_leaves_the_slope_open()
    {
        var fit = Ladders.Fitted(new Ladders.Truth(15, 0, 15), [Vga, Svga, Xga, 1280 * 1024]);

        Assert.Equal(LadderShape.Bent, fit.Shape);
        Assert.Null(fit.PixelTime.Value);
        Assert.True(fit.PixelTime.Interval.Contains(15));
        Assert.Equal(double.PositiveInfinity, fit.PixelTime.Interval.High);
        Assert.Equal(double.NegativeInfinity, fit.FixedTime.Interval.Low);
        Assert.Null(fit.Knee.Value);
        Assert.True(fit.Knee.Interval.Contains(1));
        Assert.Equal(1280 * 1024 / 1e6, fit.Knee.Interval.High);
        Assert.Equal(Bound.Mixed, fit.Points[^1].Bound);
    }

    [Fact]
    public void Names_the_spoilt_run_and_is_not_bent_by_it()
    {
        var truth = new Ladders.Truth(12, 0, 16);
        List<LadderRun> runs = [.. Ladders.Simulate(truth, 3, 0.005, new MersenneTwister(6))];
        runs[4] = new LadderRun(runs[4].Pixels, runs[4].Fps / 1.4);

        var fit = Assert.IsType<LadderFit>(Ladder.Of(runs));

        Assert.Equal([runs[4]], fit.Outlying);
        Assert.Equal(12, fit.ProcessorTime.Value!.Value, 0.05);
        Assert.Equal(2, fit.Points[1].Fps.Count);
    }

    [Fact]
    public void Whose_highest_mode_falls_off_a_cliff_does_not_fit()
    {
        List<LadderRun> runs = [.. Ladders.Simulate(new Ladders.Truth(8, 2, 10), 3, 0.005, new MersenneTwister(6))
            .Select(run => run.Pixels == Ladders.Modes[^1] ? run with { Fps = run.Fps / 2 } : run)];

        var fit = Assert.IsType<LadderFit>(Ladder.Of(runs));

        Assert.True(fit.MisfitP < 0.001);
        Assert.True(fit.FixedTime.Interval.High < 0);
    }

    [Fact]
    public void Without_any_noise_is_exact()
    {
        var fit = Assert.IsType<LadderFit>(Ladder.Of(
            [.. Ladders.Modes.Select(pixels => new LadderRun(pixels, 1000 / new Ladders.Truth(12, 0, 16).TimeAt(pixels)))]));

        Assert.Equal(LadderShape.Bent, fit.Shape);
        Assert.Equal(12, fit.ProcessorTime.Value!.Value, 1e-3);
        Assert.Equal(0.75, fit.Knee.Value!.Value, 1e-3);
    }

    [Fact]
    public void Of_too_few_runs_is_not_fitted()
    {
        Assert.Equal(new Ladder.NotFitted(0, 0), Ladder.Of([]));
        Assert.Equal(new Ladder.NotFitted(1, 3), Ladder.Of([new(Vga, 60), new(Vga, 61), new(Vga, 62)]));
        Assert.Equal(new Ladder.NotFitted(2, 2), Ladder.Of([new(Vga, 60), new(Svga, 50)]));
        Assert.Equal(new Ladder.NotFitted(3, 3), Ladder.Of([new(Vga, 60), new(Svga, 50), new(Xga, 40)]));
    }

    [Fact]
    public void Does_not_depend_on_the_order_of_its_runs()
    {
        var runs = Ladders.Simulate(new Ladders.Truth(12, 3, 12), 3, 0.03, new MersenneTwister(9));

        var forth = Assert.IsType<LadderFit>(Ladder.Of(runs));
        var back = Assert.IsType<LadderFit>(Ladder.Of([.. runs.Reverse()]));

        Assert.Equal(forth.ProcessorTime.Interval.Low, back.ProcessorTime.Interval.Low, 1e-9);
        Assert.Equal(forth.Knee.Value!.Value, back.Knee.Value!.Value, 1e-9);
    }

    [Theory]
    [InlineData(0, 60)]
    [InlineData(Vga, 0)]
    [InlineData(Vga, double.NaN)]
    public void Refuses_what_is_no_run(long pixels, double fps) =>
        Assert.Throws<ArgumentException>(() => Ladder.Of([new LadderRun(pixels, fps)]));

    [Fact]
    public void Predicts_a_mode_in_between()
    {
        var truth = new Ladders.Truth(12, 0, 16);
        var predicted = Assert.IsType<Prediction.Predicted>(Ladders.Fitted(truth).Predict(1152 * 864));

        Assert.Equal(1000 / truth.TimeAt(1152 * 864), predicted.Fps, 0.3);
        Assert.True(predicted.Mean.Contains(predicted.Fps));
        Assert.True(predicted.OneRun.Low < predicted.Mean.Low && predicted.Mean.High < predicted.OneRun.High);
    }

    [Theory]
    [InlineData(320 * 200)]
    [InlineData(1920 * 1440)]
    public void Predicts_nothing_beyond_what_was_measured(long pixels) =>
        Assert.Equal(
            new Prediction.OutsideMeasured(pixels, Ladders.Modes[0], Ladders.Modes[^1]),
            Ladders.Fitted(new Ladders.Truth(12, 0, 16)).Predict(pixels));
}
