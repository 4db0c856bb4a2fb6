using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_run_with_frame_times_alone
{
    private const string World =
        """
        chips: {c: {name: C, source: manual}}
        cards: {one: {name: One, chip: c, source: manual}}
        titles: {t: {name: T, source: manual, renderers: {}}}
        """;

    private const string Log = "title,card,frame-times,discarded\nt,one,frames/a.csv,";

    /// <summary>Four frames in 10 + 10 + 20 + 40 = 80 ms are 50 a second; the slowest took 40 ms, which is 25 a second.</summary>
    [Fact]
    public void Takes_its_speeds_from_them()
    {
        var run = BenchWorlds.Load(World, Log, ("runs/frames/a.csv", "# ms\n10\n10\n20\n40\n")).Runs.Single();

        Assert.Equal((50, 25), (run.Fps!.Value, run.LowestFps!.Value));
    }

    [Theory]
    [InlineData("runs/frames/b.csv", "10", "runs/log.csv(2,1): error FM103: there is no file 'runs/frames/a.csv'; frame times lie in a folder below the log, in a file that ends in .csv")]
    [InlineData("runs/frames/a.csv", "10\nslow", "runs/frames/a.csv(2,1): error FM109: 'slow' is no value of 'frame-times'; it wants a number such as 59.9")]
    [InlineData("runs/frames/a.csv", "# nothing", "runs/frames/a.csv: error FM102: holds no frame times: one frame a line, in milliseconds")]
    public void Names_what_is_wrong_with_them(string path, string text, string fault) =>
        Assert.Equal([fault], BenchWorlds.Try(World, Log, (path, text)).Faults.Select(one => one.ToString()));

    [Fact]
    public void Needs_no_file_where_it_does_not_count() =>
        Assert.Null(BenchWorlds.Load(World, Log + "crashed").Runs.Single().Fps);
}
