using DocumentFormat.OpenXml;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Tests.Rendering.Workbook;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Worksheets;

/// <summary>Low Mist on Dune, watched and measured once, handed to somebody else.</summary>
public sealed class A_sheet_to_repeat_a_result
{
    private const string Sha = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";

    private static readonly IReadOnlyList<SourceText> Collection =
    [
        new SourceText("vocabulary/test.yaml", Worlds.Vocabulary),
        new SourceText("world.yaml", Editions.TwoCards.Replace("versions: [{version: \"1.0\"}]", $"versions: [{{version: \"1.0\", released: 1999-04-01, sha256: {Sha}}}]", StringComparison.Ordinal)),
        new SourceText("seen.yaml",
            """
            specimens: {dune-a: {card: dune, bios: "1.02", condition: one capacitor replaced}}
            rigs: {attic: {name: The attic PC, processor: {family: sixth, clock: 700 MHz, cores: 1}, memory: 128 MiB}}
            observations:
              - {title: low-mist, renderer: direct3d, specimen: dune-a, driver: sand-9x 1.0, os: windows-98se, wrapper: none, mode: 800x600, depth: 16, rig: attic, runs: yes, seen: {fog-table: yes}, date: 2026-03-01, by: Ada}
            """),
        new SourceText("runs/log.csv",
            """
            title,scene,renderer,card,specimen,driver,os,rig,width,height,depth,vsync,run,fps,date,by
            low-mist,ferry,direct3d,dune,dune-a,sand-9x 1.0,windows-98se,attic,800,600,16,off,1,40,2026-03-01,Ada
            low-mist,ferry,direct3d,dune,dune-a,sand-9x 1.0,windows-98se,attic,800,600,16,off,2,42,2026-03-01,Ada
            """),
    ];

    private static readonly RepeatReport Report = Make();
    private static readonly byte[] Bytes = BenchWorksheetWriter.Write(Report);

    [Fact]
    public void Names_all_that_was_used_down_to_versions_and_checksums()
    {
        Assert.Equal(("Low Mist on Dune", "works, natively"), (Report.Heading, Report.Result));
        Assert.Equal(
            """
            Title: Low Mist, version not recorded
            Renderer: Direct3D 6
            Card: Dune
            Board used: dune-a, BIOS 1.02; one capacitor replaced
            Driver: Sand drivers 1.0
            Driver released: 1999-04-01
            Driver SHA-256: 9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08
            System: Windows 98 SE
            Wrapper: none
            Rig used: The attic PC, sixth 700 MHz, 128 MiB
            Mode: 800x600
            Colour depth: 16 bit
            Watched by: Ada, 2026-03-01, measured
            Seen then: table fog: yes
            """, string.Join('\n', Report.Setup.Select(line => $"{line.Name}: {line.Value}")));
        Assert.Equal(["ferry, 800x600, 16 bit, vsync off, on the attic PC: 41 fps (n = 2, 28.3 to 53.7)"], Report.Measured);
    }

    [Fact]
    public void Gives_cautions_before_steps()
    {
        Assert.Equal(BenchWorksheet.Cautions, Report.Steps.Take(BenchWorksheet.Cautions.Count));
        Assert.Equal(
            """
            Fit the Dune. Note your board on the sheet: its BIOS version, repairs and condition.
            Install Sand drivers 1.0 on Windows 98 SE. Compare the SHA-256 of the package with the one above.
            In Low Mist choose Direct3D 6 and 800x600 at 16 bit.
            Watch it, and note on the sheet Observations what you see of: table fog.
            Run each scene of the sheet Runs 3 times at least, with the settings given there; discard a run that something disturbed, and say why.
            Note date and name in every row. Then: import worksheet FILE.
            """, string.Join('\n', Report.Steps.Skip(BenchWorksheet.Cautions.Count)));
    }

    [Fact]
    public void Is_a_valid_workbook_with_the_same_bytes_each_time()
    {
        Assert.Equal(Bytes, BenchWorksheetWriter.Write(Make()));
        Assert.Empty(new SavedWorkbook(Bytes).ErrorsFor(FileFormatVersions.Office2019));
        Assert.Equal("Repeat", new SavedWorkbook(Bytes).Sheets[0]);
    }

    [Fact]
    public void That_nobody_filled_in_brings_nothing()
    {
        var import = WorksheetImport.Of(Collection, Bytes);

        Assert.Empty(import.Faults);
        Assert.Empty(import.Files);
        Assert.Equal((0, 0, 1), (import.ObservationCount, import.RunCount, import.EmptyCount));
    }

    [Fact]
    public void Filled_in_brings_the_second_witness_and_the_runs_back()
    {
        var saved = new SavedWorkbook(Bytes);
        var filled = FilledSheet.Typed(Bytes,
        [
            ("Observations", saved.ColumnOf("Observations", "runs") + "2", "yes"), ("Observations", saved.ColumnOf("Observations", "seen 1") + "2", "yes"),
            ("Observations", saved.ColumnOf("Observations", "date") + "2", "2026-04-02"), ("Observations", saved.ColumnOf("Observations", "by") + "2", "Bo"),
            ("Runs", saved.ColumnOf("Runs", "fps") + "2", "44.5"), ("Runs", saved.ColumnOf("Runs", "date") + "2", "2026-04-02"), ("Runs", saved.ColumnOf("Runs", "by") + "2", "Bo"),
        ]);
        var import = WorksheetImport.Of(Collection, filled);

        Assert.Empty(import.Faults);
        Assert.Equal(["observations/from-worksheet-repeat-low-mist-dune.yaml", "runs/from-worksheet-repeat-low-mist-dune.csv"], import.Files.Select(file => file.Path));
        var run = import.Result!.Catalog!.Runs.Single(one => one.Fps == 44.5);
        Assert.Equal(("ferry", "800x600", "vsync off", "Bo"), (run.Scene, run.Mode.ToString(), string.Join(' ', run.Settings.Select(one => $"{one.Key} {one.Value}")), run.Evidence.Source!.Text));
        Assert.Equal(2, import.Result.Catalog.Observations.Count);
    }

    private static RepeatReport Make()
    {
        var catalog = CollectionLoader.Load(Collection).Catalog!;
        return RepeatReport.Of(new Decisions(catalog, null), catalog.Titles.Single(title => title.Id == "low-mist"), catalog.Cards.Single(card => card.Id == "dune"))!;
    }
}
