using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Subjects;

namespace FeatureMatrix.Tests.Demo;

/// <summary>What the bench of the demo is told to its readers, word for word; the numbers follow from data/demo/runs.</summary>
public sealed class What_the_bench_of_Loden_Sluice_says(LodenSluice bench) : IClassFixture<LodenSluice>
{
    private readonly BenchReport _report = BenchReport.Of(new Decisions(bench.Catalog, bench.Catalog.Libraries.Single(library => library.Id == "sluice-evening")));

    [Theory]
    [InlineData("Ostrel Tiller 64", "no fall with pixels was shown: the processor sets the pace throughout, 10.4 ms a frame (10.3 to 10.4)")]
    [InlineData("Kestrin Kite 2", "falls with pixels from the lowest mode on: the card sets or shares the pace throughout, 30.1 ms a megapixel (29.7 to 30.5)")]
    [InlineData("Corvane Beacon 32", "flat, then falling: the processor takes 10.4 ms a frame (10.3 to 10.5); the card sets the pace from about 0.63 megapixels on (0.62 to 0.65)")]
    public void Of_the_ladders(string card, string text) => Assert.Equal(
        text, Scene("Hollow Regatta").Ladders.Single(ladder => ladder.Name.StartsWith(card, StringComparison.Ordinal)).Text);

    [Fact]
    public void Of_the_row_at_which_two_cards_wait_for_the_processor() => Assert.Equal(
        "the processor sets the pace with both: says nothing about the cards",
        Scene("Hollow Regatta").Rows.Single(row => row is { Mode: "640x480", A: "Ostrel Tiller 64", B: "Corvane Beacon 32" }).Text);

    [Fact]
    public void Of_the_vsync_trap()
    {
        var scene = Scene("Ironmonger Arena");

        Assert.Equal(["vsync not noted: seems to wait for the monitor: speeds lie at 85 Hz ÷ 1 and 2; switch vsync off and run again"], scene.Findings);
        var waiting = scene.Ladders.Single(ladder => ladder.Name == "vsync not noted");
        Assert.Equal("what processor and card can do is not shown", waiting.Text);
        Assert.Equal(["not known", "not known", "not known"], waiting.Rungs.Select(rung => rung.BoundText));
        Assert.Empty(waiting.Predicted);
    }

    [Fact]
    public void Of_the_linear_frame_buffer() => Assert.Equal(
        ["64 KiB window and flat memory: they are different ladders (p under 0.001)"], Scene("Wrenfield").Findings);

    [Theory]
    [InlineData("The Reedcutter", "driver", "no difference shown at n = 5, could have seen 1.7 %")]
    [InlineData("Peatfire", "driver", "23.4 % slower (21.9 to 24.9 %), n = 4 and 5")]
    [InlineData("Undertow Circuit", "sound", "9.5 % slower (8 to 11 %), n = 5")]
    [InlineData("Peatfire", "wrapper", "26.3 % slower (24.3 to 28.3 %), n = 4")]
    public void Of_what_changed_in_one_thing(string title, string what, string text) => Assert.Equal(
        text, Assert.Single(_report.Comparisons.Single(one => one.Subject.StartsWith(title, StringComparison.Ordinal) && one.Change.What == what).Rows).Text);

    [Fact]
    public void Of_runs_that_do_not_count() => Assert.Equal(
        ["run 1 discarded: warm-up: textures still loading from disc", "run 3 discarded: virus scanner woke up"],
        _report.Series.SelectMany(series => series.Remarks).Where(remark => remark.Contains("discarded", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    [Fact]
    public void Of_headroom() => Assert.Equal(
        "1 sample: highest mode that keeps 30 fps at 95 %: 1152x864, at least 31.4 fps (measured)",
        _report.Headroom.Single(one => one.Subject.StartsWith("Hollow", StringComparison.Ordinal) && one.Setup.StartsWith("Kestrin Kite 2", StringComparison.Ordinal)).Rows.Single().Text);

    [Fact]
    public void Of_a_mode_that_nobody_ran() => Assert.Equal(
        "25.7 fps predicted (25.5 to 25.9)", Scene("Hollow Regatta").Ladders.Single(ladder => ladder.Name.StartsWith("Kestrin Kite 2", StringComparison.Ordinal)).Predicted.Single().Text);

    [Fact]
    public void Of_a_wrapped_route_that_is_too_slow() => Assert.Equal(
        "19 fps (n = 3, 18.5 to 19.6), under the floor of 30",
        Speed("Bellfounder", "Corvane Lantern 3D"));

    /// <summary>Cattlegrid bears 100 fps (data/demo/titles/heron.yaml); only the Kite 9 passes them, on the loft bench.</summary>
    [Fact]
    public void Of_the_card_that_is_too_fast_for_a_title()
    {
        var rig = bench.Catalog.Rigs.Single(one => one.Id == "loft-2400");
        var row = RigReport.Of(new Decisions(bench.Catalog, null), rig).Timing.Single(timing => timing.TitleId == "cattlegrid");

        Assert.Equal(
            "Needs a limiter above 100 frames a second: The co-driver counts frames: above a hundred he calls the corner after the one you are in; "
            + "Wait for retrace at 85 Hz or below; measured faster here with Kestrin Kite 9 (166.5 fps)",
            row.Text);
    }

    private SceneReport Scene(string title) => _report.Scenes.Single(scene => scene.Subject.StartsWith(title, StringComparison.Ordinal));

    private string Speed(string title, string card)
    {
        var column = _report.SpeedTable.Columns.ToList().FindIndex(one => one.Heading == card);
        return _report.SpeedTable.Rows.Single(row => row[0].Text == title)[column].Text;
    }
}
