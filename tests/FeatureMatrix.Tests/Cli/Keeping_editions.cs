using FeatureMatrix.Cli;

namespace FeatureMatrix.Tests.Cli;

/// <summary>Publishing editions, and asking what changed between them.</summary>
public sealed class Keeping_editions : IDisposable
{
    private const string World = OneBoard.World;

    private readonly string _folder = Directory.CreateTempSubdirectory("editions").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void What_changed_since_an_edition_is_told_with_its_cause()
    {
        Collect(World);
        Assert.Equal(ExitCode.Fine, Publish("--edition", "spring", "--date", "2026-03-14", "--note", "A start.").Exit);
        Collect(World.Replace("fog-table: yes", "fog-table: no", StringComparison.Ordinal));

        var (code, text, _) = CommandRun.Of("editions", "spring", "--collection", _folder, "--format", "csv");
        Assert.Equal(ExitCode.Fine, code);
        Assert.Equal(
            "Title,Card,Before,Now,Because\nLow Mist,Dune,\"works, natively\",\"loses table (pixel) fog (severe), natively\",\"Sand: table (pixel) fog: no (documented: A leaflet), before: yes\"",
            string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Take(2)));

        Assert.Equal(ExitCode.Fine, Publish("--edition", "summer", "--date", "2026-07-01").Exit);
        var list = CommandRun.Of("editions", "--collection", _folder, "--format", "csv").Results;
        Assert.Equal("Date,Edition,What changed,Note\n2026-07-01,summer,1 verdict changed; 1 statement corrected.,\n2026-03-14,spring,The first edition.,A start.\n", list.ReplaceLineEndings("\n"));
        Assert.Contains("Low Mist", CommandRun.Of("editions", "spring", "summer", "--collection", _folder).Results, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--edition spring", "An edition needs a date: say --date, for example --date 2026-03-14.")]
    [InlineData("--edition ../spring --date 2026-03-14", "--edition ../spring: write small letters, digits and hyphens, at most 60, for example 2026-autumn.")]
    public void A_name_or_date_that_cannot_be_is_refused_before_anything_is_written(string options, string told)
    {
        Collect(World);
        var (code, _, messages) = Publish(options.Split(' '));
        Assert.Equal(ExitCode.Usage, code);
        Assert.Equal(told + "\n", messages.ReplaceLineEndings("\n"));
        Assert.Equal(["collection.yaml"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void An_edition_stays_as_it_was_published()
    {
        Collect(World);
        Publish("--edition", "spring", "--date", "2026-03-14");
        var before = File.ReadAllText(Path.Combine(_folder, "editions", "spring.json"));
        var (code, _, messages) = Publish("--edition", "spring", "--date", "2026-03-15");
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains("There is an edition spring already, and editions stay as they were published. Choose another name.", messages, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(_folder, "editions", "spring.json")));
    }

    [Fact]
    public void A_damaged_file_is_named_and_nothing_is_written()
    {
        Collect(World);
        Directory.CreateDirectory(Path.Combine(_folder, "editions"));
        File.WriteAllText(Path.Combine(_folder, "editions", "spring.json"), "{\n");
        var (code, _, messages) = CommandRun.Of("editions", "--collection", _folder);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Equal(
            $"{Path.Combine(_folder, "editions", "spring.json")} cannot be read as an edition: line 2: it is no JSON. Take it from a copy, or move it away.\n",
            messages.ReplaceLineEndings("\n"));
    }

    private void Collect(string text) => File.WriteAllText(Path.Combine(_folder, "collection.yaml"), text);

    private CommandRun Publish(params string[] options) => CommandRun.Of(["publish", _folder, "--out", Path.Combine(_folder, "out"), .. options]);
}
