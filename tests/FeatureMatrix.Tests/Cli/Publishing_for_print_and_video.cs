using FeatureMatrix.Cli;
using FeatureMatrix.Tests.Loading.Captures;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>What publish makes beside the site when asked: PDF and frames for video.</summary>
public sealed class Publishing_for_print_and_video : IDisposable
{
    private static readonly string World = OneBoard.World.Replace("fog-table", "gamma-ramp", StringComparison.Ordinal);

    private readonly TemporaryFolder _folder = new();

    public Publishing_for_print_and_video()
    {
        Directory.CreateDirectory(_folder["collection"]);
        File.WriteAllText(_folder["collection/collection.yaml"], World);
    }

    public void Dispose()
    {
        Environment.SetEnvironmentVariable("CHROMIUM", null);
        _folder.Dispose();
    }

    [Fact]
    public void Prints_matrix_and_cards_the_same_bytes_each_time()
    {
        External.File("/usr/bin/chromium", "chromium");
        Assert.Equal(ExitCode.Fine, Publish("--pdf").Exit);
        var first = Directory.EnumerateFiles(_folder["out/pdf"], "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Select(file => (Path.GetRelativePath(_folder["out/pdf"], file), Convert.ToHexString(File.ReadAllBytes(file)))).ToList();
        Assert.Equal(["cards/dune.pdf", "coverage.pdf"], first.Select(file => file.Item1));
        Assert.All(first, file => Assert.StartsWith(Convert.ToHexString("%PDF-1."u8), file.Item2, StringComparison.Ordinal));
        Assert.Equal(ExitCode.Fine, Publish("--pdf").Exit);
        Assert.All(first, file => Assert.Equal(file.Item2, Convert.ToHexString(File.ReadAllBytes(_folder[$"out/pdf/{file.Item1}"]))));
    }

    [Fact]
    public void Says_what_is_missing_where_there_is_no_Chromium()
    {
        Environment.SetEnvironmentVariable("CHROMIUM", _folder["none"]);
        var run = Publish("--pdf");
        Assert.Equal(ExitCode.Usage, run.Exit);
        Assert.Equal($"CHROMIUM names {_folder["none"]}, which does not exist. Nothing was written.\n", run.Messages);
        Assert.False(Directory.Exists(_folder["out"]));
    }

    [Fact]
    public void Draws_each_pair_in_use_on_a_frame()
    {
        Assert.Equal(ExitCode.Fine, Publish("--frames").Exit);
        var frame = File.ReadAllBytes(Assert.Single(Directory.GetFiles(_folder["out/frames"])));
        // Width and height in the header chunk of PNG, big-endian.
        Assert.Equal((byte[])[0, 0, 0x07, 0x80, 0, 0, 0x04, 0x38], frame[16..24]);
    }

    [Fact]
    public void Draws_each_chart_on_a_frame_the_same_bytes_each_time()
    {
        External.File("/usr/bin/chromium", "chromium");
        Directory.CreateDirectory(_folder["collection/runs"]);
        File.WriteAllText(_folder["collection/runs/log.csv"], "title,scene,card,driver,os,width,height,run,fps\n" + string.Concat(
            new[] { (640, 480, 60), (800, 600, 45), (1024, 768, 28) }.SelectMany(mode => Enumerable.Range(1, 3).Select(run =>
                FormattableString.Invariant($"low-mist,ferry,dune,sand-9x 1.0,windows-98se,{mode.Item1},{mode.Item2},{run},{mode.Item3}.{run}\n")))));

        Assert.Equal(ExitCode.Fine, Publish("--frames").Exit);
        var first = Frames();
        Assert.Equal(ExitCode.Fine, Publish("--frames").Exit);

        Assert.Contains("bench-ladder-low-mist-1.png", first.Keys);
        Assert.All(first.Values, frame => Assert.Equal("0000078000000438", frame[32..48]));
        Assert.Equal(first, Frames());

        Dictionary<string, string> Frames() => Directory.GetFiles(_folder["out/frames"]).ToDictionary(file => Path.GetFileName(file), file => Convert.ToHexString(File.ReadAllBytes(file)));
    }

    [Fact]
    public void Draws_each_pair_of_captures_on_a_frame_and_keeps_the_files_as_they_are()
    {
        External.File("/usr/bin/chromium", "chromium");
        byte[] noted = [.. PictureMaker.Png(320, 200), .. "Ida Quill"u8];
        File.WriteAllBytes(_folder["collection/with.png"], noted);
        File.WriteAllBytes(_folder["collection/without.jpg"], PictureMaker.Jpeg(320, 200));
        const string Setup = "title: low-mist, scene: ferry, card: dune, driver: sand-9x 1.0, os: windows-98se, wrapper: none, kind: frame-grab, date: 2026-03-01, by: Nobody, alt: A bank";
        File.WriteAllText(
            _folder["collection/captures.yaml"], $"captures:\n  a: {{{Setup}, picture: with.png}}\n  b: {{{Setup}, picture: without.jpg, loses: gamma-ramp, baseline: a}}\n");

        Assert.Equal(ExitCode.Fine, Publish("--frames").Exit);
        Assert.Equal(PictureMaker.Png(320, 200), File.ReadAllBytes(_folder["out/captures/a.png"]));
        Assert.Equal(PictureMaker.Jpeg(320, 200), File.ReadAllBytes(_folder["out/captures/b.jpg"]));
        Assert.Equal(noted, File.ReadAllBytes(_folder["collection/with.png"]));
        var frame = File.ReadAllBytes(_folder["out/frames/capture-b.png"]);
        Assert.Equal((byte[])[0, 0, 0x07, 0x80, 0, 0, 0x04, 0x38], frame[16..24]);
        Assert.Equal(ExitCode.Fine, Publish("--frames").Exit);
        Assert.Equal(frame, File.ReadAllBytes(_folder["out/frames/capture-b.png"]));
    }

    private CommandRun Publish(string option) => CommandRun.Of("publish", _folder["collection"], "--out", _folder["out"], option);
}
