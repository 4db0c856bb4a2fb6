using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.RunLogs;

public sealed class Run_log_files
{
    private static readonly RunLogRow Full = new()
    {
        Title = "brass-corsair",
        Scene = "harbour demo",
        Renderer = "direct3d",
        Wrapper = "none",
        Card = "orlan-2400",
        Specimen = "orlan-2400-b",
        Driver = "orlan-4-31",
        Os = "windows-98-se",
        Rig = "bench-one",
        Width = 1024,
        Height = 768,
        Depth = 16,
        Refresh = 85,
        Samples = 2,
        Filtering = "trilinear",
        Preset = "high",
        Vsync = false,
        Sound = true,
        Factor = "linear frame buffer",
        Run = 3,
        Fps = 61.25,
        MinFps = 40.5,
        Percentiles = new EquatableList<RunLogPercentile>([new(1, 41.5), new(5, 48)]),
        FrameTimes = "run-3.txt",
        Score = -12.5,
        Unit = "points",
        HigherIsBetter = true,
        Discarded = "disc was busy",
        Date = new DateOnly(2004, 2, 29),
        By = "Tilda Moor",
        Note = "said \"stop\";\nthen went on, slowly",
    };

    [Fact]
    public void Are_read_back_as_they_were_written()
    {
        var log = RunLogReader.Read(RunLogWriter.Write([Full, Full with { Run = 4 }]));

        Assert.Empty(log.Faults);
        Assert.Equal([Full with { Line = 2 }, Full with { Line = 4, Run = 4 }], log.Rows);
    }

    [Fact]
    public void Written_without_rows_are_a_heading_line_to_be_filled() =>
        Assert.Equal(
            "title,scene,renderer,wrapper,card,specimen,driver,os,rig,width,height,depth,refresh,samples,filtering,preset,"
            + "vsync,sound,factor,run,fps,min-fps,percentiles,frame-times,score,unit,better,discarded,date,by,note\n",
            RunLogWriter.Write([]));

    [Theory]
    [InlineData("title,card,fps\nbrass-corsair,orlan-2400,61.5\n")]
    [InlineData("title,card,fps\r\nbrass-corsair,orlan-2400,61.5\r\n")]
    [InlineData("\uFEFFtitle;card;fps\nbrass-corsair;orlan-2400;61,5\n")]
    [InlineData("fps\tcard\ttitle\n61,5\torlan-2400\tbrass-corsair")]
    [InlineData("\"FPS\",\"Card\",\"Title\"\n\"61,5\",\"orlan-2400\",\"brass-corsair\"\n")]
    [InlineData(" title , card , fps ,,\n brass-corsair , orlan-2400 , 61.5 ,,\n,,,,\n")]
    public void Of_every_dialect_say_the_same(string text)
    {
        var log = RunLogReader.Read(text);

        Assert.Empty(log.Faults);
        Assert.Equal([new RunLogRow { Line = 2, Title = "brass-corsair", Card = "orlan-2400", Fps = 61.5 }], log.Rows);
    }

    [Fact]
    public void Count_lines_through_empty_lines_and_line_breaks_in_notes()
    {
        var log = RunLogReader.Read(
            "\n\ntitle,card,fps,note\nbrass-corsair,orlan-2400,60,\"one\ntwo\"\n\nbrass-corsair,orlan-2400,61,\r\nbrass-corsair,orlan-2400,x,\n");

        Assert.Equal([4, 7], log.Rows.Select(row => row.Line));
        Assert.Equal(8, Assert.Single(log.Faults).Line);
    }

    [Fact]
    public void Keep_discarded_runs_with_their_reason()
    {
        var log = RunLogReader.Read("title,card,fps,discarded\nbrass-corsair,orlan-2400,12.5,disc was busy\nbrass-corsair,orlan-2400,,crashed\n");

        Assert.Empty(log.Faults);
        Assert.Equal(["disc was busy", "crashed"], log.Rows.Select(row => row.Discarded));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+5 volts", "'+5 volts")]
    [InlineData("-", "'-")]
    [InlineData("@home", "'@home")]
    [InlineData("'=1+1", "''=1+1")]
    [InlineData("\tindented", "\"'\tindented\"")]
    public void Keep_notes_from_becoming_formulas_and_give_them_back(string note, string cell)
    {
        var row = new RunLogRow { Title = "brass-corsair", Card = "orlan-2400", Fps = 60, Note = note };

        var text = RunLogWriter.Write([row]);

        Assert.EndsWith("," + cell + "\n", text, StringComparison.Ordinal);
        Assert.Equal([row with { Line = 2 }], RunLogReader.Read(text).Rows);
    }

    /// <summary>An apostrophe that protects nothing is part of the text; a negative score is a number, not a formula.</summary>
    [Fact]
    public void Leave_alone_what_no_spreadsheet_would_reckon()
    {
        var row = new RunLogRow { Title = "brass-corsair", Card = "orlan-2400", Score = -3, HigherIsBetter = false, Note = "'twas slow" };

        var text = RunLogWriter.Write([row]);

        Assert.Contains(",-3,,lower,", text, StringComparison.Ordinal);
        Assert.EndsWith(",'twas slow\n", text, StringComparison.Ordinal);
        Assert.Equal([row with { Line = 2 }], RunLogReader.Read(text).Rows);
    }

    [Fact]
    public void Of_the_demo_hold_no_fault()
    {
        foreach (var file in Directory.GetFiles(Repository.PathTo("data", "demo", "runs"), "*.csv"))
        {
            var text = File.ReadAllText(file);
            var log = RunLogReader.Read(text);

            Assert.Empty(log.Faults);
            Assert.Equal(text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length - 1, log.Rows.Count);
        }
    }
}
