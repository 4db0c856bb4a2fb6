using DocumentFormat.OpenXml;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Worksheets;

/// <summary>Filled in, saved by whatever program, and read back.</summary>
public sealed class A_bench_worksheet
{
    [Fact]
    public void Is_valid_Open_XML_and_names_the_route_to_watch_and_what_to_look_for()
    {
        var saved = new SavedWorkbook(FilledSheet.Empty);
        Assert.Empty(saved.ErrorsFor(FileFormatVersions.Office2007));
        Assert.Empty(saved.ErrorsFor(FileFormatVersions.Microsoft365));
        string[] route = ["title", "renderer", "card", "driver", "os", "wrapper", "feature 1", "look for 1"];
        Assert.Equal(
            ["low-mist", "direct3d", "dune", "sand-9x 1.0", "windows-98se", "none", "fog-table", "Table fog. When it is missing: The far bank shows."],
            route.Select(column => saved["Observations", FilledSheet.AddressOf($"Observations/{column}")]));
    }

    [Fact]
    public void Left_empty_changes_nothing()
    {
        var import = FilledSheet.Import(FilledSheet.Empty);
        Assert.Empty(import.Faults);
        Assert.Empty(import.Files);
        Assert.Equal((0, 0, 1), (import.ObservationCount, import.RunCount, import.EmptyCount));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Filled_in_gives_the_observation_and_the_run(bool numbersAsNumbers) =>
        AssertExpected(FilledSheet.Import(FilledSheet.With(FilledSheet.Sound, numbersAsNumbers)));

    [Fact]
    public void Gives_the_same_after_LibreOffice_has_saved_it() =>
        AssertExpected(FilledSheet.Import(LibreOffice.Recalculate(FilledSheet.With(FilledSheet.Sound, numbersAsNumbers: true))));

    [Fact]
    public void Imported_twice_changes_nothing_the_second_time()
    {
        var filled = FilledSheet.With(FilledSheet.Sound);
        var first = FilledSheet.Import(filled);
        var second = FilledSheet.Import(filled, [.. first.Files]);
        Assert.Empty(second.Faults);
        Assert.Empty(second.Files);
        Assert.Empty(second.Lines);
    }

    [Fact]
    public void Imported_again_after_a_correction_shows_the_lines_that_change()
    {
        var first = FilledSheet.Import(FilledSheet.With(FilledSheet.Sound));
        var second = FilledSheet.Import(FilledSheet.With(FilledSheet.Sound.Append(("Observations/seen 1", "no"))), [.. first.Files]);
        Assert.Equal(["observations/from-worksheet-attic-march.yaml"], second.Files.Select(file => file.Path));
        Assert.Collection(
            second.Lines,
            gone => Assert.Contains("fog-table: broken", gone, StringComparison.Ordinal),
            come => Assert.Contains("fog-table: no", come, StringComparison.Ordinal));
    }

    private static void AssertExpected(WorksheetImport import)
    {
        Assert.Empty(import.Faults);
        var catalog = CollectionLoader.Load([.. FilledSheet.Collection, .. import.Files]).Catalog!;
        var seen = Assert.Single(catalog.Observations);
        Assert.Equal(
            ("low-mist", "direct3d", "dune", "dune-a", "1.0", "windows-98se", "attic", new Mode(640, 480), 16, true),
            (seen.Renderer.Title.Id, seen.Renderer.Id, seen.Card!.Id, seen.Specimen!.Id, seen.Driver!.Version, seen.Os!.Id, seen.Rig!.Id, seen.Mode, seen.Depth, seen.Runs));
        Assert.IsType<ObservedWrapper.None>(seen.Wrapper);
        Assert.Equal(["fog-table Broken"], seen.Seen.Select(one => $"{one.Capability.Feature.Id} {one.Seen}"));
        Assert.Equal((new DateOnly(2026, 3, 14), Grade.Measured, "Ada at the bench"), (seen.Date, seen.Evidence.Grade, seen.Evidence.Source!.Text));
        Assert.Equal("Fog in stripes: \"curtain\", {odd}", seen.Note);
        var run = Assert.Single(catalog.Runs);
        Assert.Equal(
            ("low-mist", "the ferry", "dune", "1.0", new Mode(640, 480), 48.9, 31.0, new DateOnly(2026, 3, 14), "Ada at the bench"),
            (run.Title.Id, run.Scene, run.Card.Id, run.Driver!.Version, run.Mode, run.Fps, run.LowestFps, run.Date, run.Evidence.Source!.Text));
    }
}
