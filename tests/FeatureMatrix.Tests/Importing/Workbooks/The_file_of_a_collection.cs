using DocumentFormat.OpenXml;
using FeatureMatrix.Loading;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>The workbook of a collection as a file, and the commands around it.</summary>
public sealed class The_file_of_a_collection
{
    private static readonly Lazy<byte[]> Demo = new(() => CollectionBookWriter.Write(
        A_collection_as_a_workbook.BookOf(CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files)));

    [Fact]
    public void Is_valid_Open_XML()
    {
        var saved = new SavedWorkbook(Demo.Value);

        Assert.All([FileFormatVersions.Office2007, FileFormatVersions.Office2013, FileFormatVersions.Office2019, FileFormatVersions.Microsoft365], version => Assert.Empty(saved.ErrorsFor(version)));
    }

    [Fact]
    public void Has_the_same_bytes_each_time() => Assert.Equal(Demo.Value, CollectionBookWriter.Write(
        A_collection_as_a_workbook.BookOf(CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files)));

    [Fact]
    public void Is_written_shown_and_read_back_by_the_commands()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["bench"]);
        File.WriteAllText(folder["bench/collection.yaml"], "collection: {name: Reed bench}\nchips:\n  sand: {name: Sand, source: Seen}   # ours\n");

        var written = CommandRun.Of("workbook", "--collection", folder["bench"], "--out", folder["reed.xlsx"]);
        var again = CommandRun.Of("workbook", "--collection", folder["bench"], "--out", folder["reed.xlsx"]);
        File.WriteAllBytes(folder["typed.xlsx"], Worksheets.FilledSheet.Typed(File.ReadAllBytes(folder["reed.xlsx"]), [("Chips", "E2", "Ostrel"), ("Chips", "B3", "silt"), ("Chips", "C3", "+Silt")]));
        var shown = CommandRun.Of("import", "workbook", folder["typed.xlsx"], "--collection", folder["bench"]);
        var untouched = File.ReadAllText(folder["bench/collection.yaml"]);
        var imported = CommandRun.Of("import", "workbook", folder["typed.xlsx"], "--collection", folder["bench"], "--write");
        var twice = CommandRun.Of("import", "workbook", folder["typed.xlsx"], "--collection", folder["bench"], "--write");

        Assert.Equal((0, 2), (written.Exit, again.Exit));
        Assert.StartsWith("1 row changed, 1 new, 0 taken out.\n", shown.Results, StringComparison.Ordinal);
        Assert.Equal("collection: {name: Reed bench}\nchips:\n  sand: {name: Sand, source: Seen}   # ours\n", untouched);
        Assert.Equal(0, imported.Exit);
        Assert.Equal(
            "collection: {name: Reed bench}\nchips:\n  sand: {name: Sand, source: Seen, generation: Ostrel}   # ours\n  silt: {name: \"+Silt\"}\n",
            File.ReadAllText(folder["bench/collection.yaml"]));
        Assert.Equal((0, "0 rows changed, 0 new, 0 taken out.\nThe collection says all this already: nothing would change.\n"), (twice.Exit, twice.Results));
    }
}
