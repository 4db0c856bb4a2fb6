using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_bench_log
{
    private static LoadResult Load(string csv, string path = "runs/log.csv") => CollectionLoader.Load(
    [
        new SourceText("v.yaml", Worlds.Vocabulary), new SourceText("world.yaml", A_world_with_one_of_everything.World), new SourceText(path, csv),
    ]);

    private static string Faults(string csv) => string.Join('\n', Load(csv).Faults);

    [Fact]
    public void Is_linked_row_by_row()
    {
        var result = Load(
            """
            title,scene,renderer,wrapper,card,specimen,driver,os,rig,width,height,depth,refresh,samples,filtering,preset,vsync,sound,factor,run,fps,min-fps,percentiles,frame-times,discarded,date,by,note
            salt-marsh,ferry,direct3d,duskglass@1.4,nl4-retail,nl4-a,nl-9x 2.10,windows-98se,bench-98,800,600,16,85,2,bilinear,high,on,off,64 KiB window,2,41.5,30,1=31.2,ferry.txt,,2026-03-01,Ada,warm
            salt-marsh,,,none,spur,,,,,,,,,,,,,,,,12,,,,too hot,,,
            """);

        Assert.Equal("", string.Join('\n', result.Faults));
        var catalog = result.Catalog!;
        var (full, bare) = (catalog.Runs[0], catalog.Runs[1]);
        Assert.Same(catalog.Titles[0].Renderers[0], full.Renderer);
        Assert.Equal(
            ("ferry", "duskglass@1.4", "nl4-retail", "nl4-a", "nl-9x@2.10", "windows-98se", "bench-98"),
            (full.Scene, full.Wrapper!.Id, full.Card.Id, full.Specimen!.Id, full.Driver!.Id, full.Os!.Id, full.Rig!.Id));
        Assert.Equal((new Mode(800, 600), 16, 2, 41.5, 30.0), (full.Mode!.Value, full.Depth!.Value, full.Number, full.Fps!.Value, full.LowestFps!.Value));
        Assert.Equal(
            "refresh=85 samples=2 filtering=bilinear preset=high vsync=on sound=off factor=64 KiB window",
            string.Join(' ', full.Settings.Select(setting => $"{setting.Key}={setting.Value}")));
        Assert.Equal([new FpsPercentile(1, 31.2)], full.Percentiles);
        Assert.Equal("ferry.txt", full.FrameTimes);
        Assert.Equal((new DateOnly(2026, 3, 1), "warm"), (full.Date!.Value, full.Note));
        Assert.Equal(new Evidence(Grade.Measured, new Source("", "Ada"), new Origin("runs/log.csv", 2, 1)), full.Evidence);
        Assert.Equal(("salt-marsh", "spur", "too hot", 1), (bare.Title.Id, bare.Card.Id, bare.Discarded, bare.Number));
        Assert.True(bare is { Renderer: null, Wrapper: null, Specimen: null, Driver: null, Os: null, Rig: null, Mode: null, Depth: null, Settings: [] });
    }

    [Fact]
    public void With_a_score_keeps_its_unit() => Assert.Equal(
        new Score(1234, "marks", true),
        Load("title,card,score,unit,better\nsalt-marsh,spur,1234,marks,higher\n").Catalog!.Runs.Single().Score);

    [Theory]
    [InlineData("title,card,fps\nsalt-mash,spur,1", "2,1): error FM103: unknown title 'salt-mash'; did you mean 'salt-marsh'?")]
    [InlineData("title,card,fps\nsalt-marsh,spurr,1", "2,1): error FM103: unknown card 'spurr'; did you mean 'spur'?")]
    [InlineData("title,card,fps,renderer\nsalt-marsh,spur,1,opengl", "2,1): error FM103: unknown renderer of title 'salt-marsh' 'opengl'; there is direct3d, software")]
    [InlineData("title,card,fps,driver\nsalt-marsh,spur,1,nl-9x 3", "2,1): error FM103: unknown version of driver nl-9x '3'; there is 1.20, 2.10")]
    [InlineData("title,card,fps,specimen\nsalt-marsh,spur,1,nl4-a", "2,1): error FM111: specimen 'nl4-a' is a 'nl4-retail', not a 'spur'")]
    [InlineData("title,card,fps,width\nsalt-marsh,spur,1,640", "2,1): error FM111: 'width' and 'height' stand together or not at all")]
    [InlineData("title,card,fps,colour\nsalt-marsh,spur,1,red", "1,1): error FM101: unknown column 'colour'; there is title, scene, renderer, wrapper, card, specimen, driver, os, rig, width, height, depth, refresh, samples, filtering, preset, vsync, sound, factor, run, fps, min-fps, percentiles, frame-times, score, unit, better, discarded, date, by, note")]
    [InlineData("title,card,fps,renderr\nsalt-marsh,spur,1,", "1,1): error FM101: unknown column 'renderr'; did you mean 'renderer'?")]
    [InlineData("title,fps\nsalt-marsh,1", "1,1): error FM102: the column 'card' is missing")]
    [InlineData("title,card,fps\nsalt-marsh,,1", "2,1): error FM102: 'card' is empty and has to be there")]
    [InlineData("title,card,fps\nsalt-marsh,spur,", "2,1): error FM102: 'fps' is empty; one of fps, score, frame-times, discarded has to be there")]
    [InlineData("title,card,fps,fps\nsalt-marsh,spur,1,1", "1,1): error FM104: the column 'fps' occurs a second time")]
    [InlineData("title,card,fps,vsync\nsalt-marsh,spur,1,onn", "2,1): error FM107: 'onn' is no value of 'vsync': it is on or off; did you mean 'on'?")]
    [InlineData("title,card,fps\nsalt-marsh,spur,fast", "2,1): error FM109: 'fast' is no value of 'fps'; it wants a number such as 59.9")]
    [InlineData("title,card,fps,depth\nsalt-marsh,spur,1,16.5", "2,1): error FM109: '16.5' is no value of 'depth'; it wants a whole number")]
    [InlineData("title,card,fps\nsalt-marsh,spur,0", "2,1): error FM109: '0' is no value of 'fps'; it wants a number in the range > 0")]
    [InlineData("title;card;fps;min-fps\nsalt-marsh;spur;1,5;1.5", "2,1): error FM109: '1.5' in 'min-fps' has another decimal mark than the rows above, which have ','")]
    [InlineData("title,card,fps,date\nsalt-marsh,spur,1,1.3.2026", "2,1): error FM109: '1.3.2026' is no value of 'date'; it wants a date such as 2026-02-11")]
    [InlineData("title,card,fps,percentiles\nsalt-marsh,spur,1,31", "2,1): error FM109: '31' is no value of 'percentiles'; it wants percent=fps, several separated by |")]
    [InlineData("title,card,fps\nsalt-marsh,spur,1,5", "2,1): error FM006: '5' stands beyond the last column; a decimal comma needs quotes here")]
    [InlineData("title,card,fps\nsalt-marsh,spur,\"1", "2,1): error FM006: the quote before \"1 is never closed")]
    [InlineData("title,card,fps,note\nsalt-marsh,spur,1,a \"b\" c", "2,1): error FM006: a quote stands inside the cell a \"b\" c; a cell with quotes is quoted whole and doubles them")]
    public void With_a_fault_names_line_and_column(string csv, string fault) => Assert.Equal("runs/log.csv(" + fault, Faults(csv));

    [Fact]
    public void That_is_something_else_says_so() =>
        Assert.StartsWith("runs/log.csv(1,1): error FM006: is no run log: its first line names none of the columns title, scene, ", Faults("hello"), StringComparison.Ordinal);

    [Fact]
    public void With_a_control_character_is_refused() => Assert.Equal(
        "runs/log.csv: error FM001: holds the character U+0001, which no output can show", Faults("title,card,fps\nsalt-marsh,spur,1\u0001"));

    [Theory]
    [InlineData("log.csv")]
    [InlineData("runs/frames/ferry.csv")]
    [InlineData("runs/log.txt")]
    public void Lies_in_the_folder_runs(string path)
    {
        var result = Load("hello", path);

        Assert.Equal(("", 0), (string.Join('\n', result.Faults), result.Catalog!.Runs.Count));
    }
}
