using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Bench;

public sealed class A_bench_log
{
    private static readonly Catalog World = Worlds.Load(
        """
        chips: {c: {name: C, source: manual}}
        cards: {one: {name: One, chip: c, source: manual}, two: {name: Two, chip: c, source: manual}}
        titles: {t: {name: T, source: manual, renderers: {}}}
        """);

    private static readonly Mode Low = new(640, 480);
    private static readonly Mode High = new(1024, 768);

    [Fact]
    public void Is_sorted_into_series_by_everything_but_mode_and_repetition()
    {
        var series = BenchSeries.Of(
            [
                Run("one", High, 2, 41), Run("one", Low, 1, 60), Run("two", Low, 1, 80), Run("one", High, 1, 40),
                Run("one", Low, 2, 61) with { Date = new DateOnly(2026, 1, 2) }, Run("one", Low, 1, 55) with { Depth = 32 },
            ]);

        Assert.Equal(
            ["one 640x480: 60 61, 1024x768: 40 41", "two 640x480: 80", "one 640x480: 55"],
            series.Select(s => $"{s.Circumstances.Card} {string.Join(", ", s.Modes.Select(m => $"{m.Mode}: {string.Join(' ', m.Fps.Values)}"))}"));
    }

    [Fact]
    public void Does_not_mind_the_order_of_settings_but_their_values()
    {
        var series = BenchSeries.Of(
            [
                Run("one", Low, 1, 60) with { Settings = [new("vsync", "off"), new("sound", "on")] },
                Run("one", Low, 2, 61) with { Settings = [new("sound", "on"), new("vsync", "off")] },
                Run("one", Low, 1, 62) with { Settings = [new("sound", "off"), new("vsync", "off")] },
            ]);

        Assert.Equal([2, 1], series.Select(s => s.Modes.Single().Fps.Count));
    }

    [Fact]
    public void Keeps_discarded_runs_beside_those_that_count()
    {
        var mode = BenchSeries.Of(
            [
                Run("one", Low, 1, 20) with { Discarded = "warm-up" }, Run("one", Low, 2, 60), Run("one", Low, 3, 61),
                Run("one", Low, 4, 0) with { Fps = null, Discarded = "crashed" },
            ]).Single().Modes.Single();

        Assert.Equal([60, 61], mode.Fps.Values);
        Assert.Equal(["warm-up", "crashed"], mode.Discarded.Select(run => run.Discarded));
    }

    [Fact]
    public void Leaves_synthetic_scores_out() =>
        Assert.Empty(BenchSeries.Of([Run("one", Low, 1, 0) with { Fps = null, Score = new Score(1200, "points", true) }]));

    [Fact]
    public void Knows_lowest_speeds_of_the_runs_that_noted_them()
    {
        var mode = BenchSeries.Of([Run("one", Low, 1, 60) with { LowestFps = 30 }, Run("one", Low, 2, 62)]).Single().Modes.Single();

        Assert.Equal([0.5], mode.Dips.Share.Values);
    }

    [Fact]
    public void Makes_a_ladder_of_the_modes_that_are_stated()
    {
        var series = BenchSeries.Of(
            [
                Run("one", Low, 1, 80), Run("one", Low, 2, 80.4), Run("one", Low, 3, 79.7), Run("one", null, 1, 10),
                Run("one", High, 1, 32), Run("one", High, 2, 32.2), Run("one", High, 3, 31.9),
            ]).Single();

        var fit = Assert.IsType<LadderFit>(series.Ladder());

        Assert.Equal(LadderShape.Rising, fit.Shape);
        Assert.Equal([Low.Pixels, High.Pixels], fit.Points.Select(point => point.Pixels));
        Assert.IsType<WarmUp.Tested>(series.WarmUp());
        Assert.IsType<PaceLimit.NotSuspected>(series.PaceLimit());
    }

    /// <summary>84.9 and 42.6 lie at 85 ÷ 1 and ÷ 2; of a monitor whose refresh nobody noted nothing can be suspected.</summary>
    [Fact]
    public void Knows_the_refresh_rate_from_the_runs()
    {
        Run[] runs = [Run("one", Low, 1, 84.9), Run("one", High, 1, 42.6)];

        Assert.IsType<PaceLimit.NotSuspected>(BenchSeries.Of(runs).Single().PaceLimit());
        Assert.IsType<PaceLimit.Vsync>(
            BenchSeries.Of(runs.Select(run => run with { Settings = [new("refresh", "85")] })).Single().PaceLimit());
    }

    /// <summary>A fit would call the waiting flat and blame the processor.</summary>
    [Fact]
    public void Fits_no_ladder_while_the_monitor_seems_to_set_the_pace()
    {
        Run[] runs = [Run("one", Low, 1, 84.9), Run("one", Low, 2, 85.1), Run("one", High, 1, 42.6), Run("one", High, 2, 42.4)];

        Assert.IsType<LadderFit>(BenchSeries.Of(runs).Single().Ladder());
        var paced = Assert.IsType<Ladder.Paced>(BenchSeries.Of(runs.Select(run => run with { Settings = [new("refresh", "85")] })).Single().Ladder());
        Assert.Equal([1, 2], Assert.IsType<PaceLimit.Vsync>(paced.Limit).Divisors);
    }

    private static Run Run(string card, Mode? mode, int number, double fps) => new()
    {
        Title = World.Titles.Single(),
        Scene = "demo",
        Card = World.Cards.Single(c => c.Id == card),
        Mode = mode,
        Depth = 16,
        Number = number,
        Fps = fps,
        Evidence = World.Cards[0].Evidence,
    };
}
