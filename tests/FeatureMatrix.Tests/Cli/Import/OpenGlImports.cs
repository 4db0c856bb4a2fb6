using System.Text;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Importing.Measuring;
using FeatureMatrix.Tests.Importing.OpenGl;
using State = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>
/// The real report of Mesa's software renderer (Debian packages mesa-utils, libgl1-mesa-dri), imported into a small collection
/// whose titles need one feature each, and the cells that follow.
/// </summary>
public sealed class OpenGlImports(RealReport real) : IClassFixture<RealReport>
{
    private const string Import = "import opengl --card lumen-4 --driver new --os windows-98se";

    /// <summary>The flags that OpenGL reports by an extension name.</summary>
    private static readonly List<Feature> Flags =
        [.. Vocabularies.Ours().Where(feature => !feature.IsApi && !feature.HasLevels && feature.Detection.OpenGlExtensions.Count > 0)];

    [Fact]
    public void Cells_of_a_hardware_driver_are_what_a_text_search_for_the_names_says()
    {
        var text = Synthetic();
        var cells = Cells(text);
        Assert.True(Flags.Count > 15);
        Assert.Equal(Flags.Select(feature => (feature.Id, Expected(feature, text))), cells);
        Assert.Contains(cells, cell => cell.Label == "works, natively");
        Assert.Contains(cells, cell => cell.Label.StartsWith("loses", StringComparison.Ordinal));
    }

    [Fact]
    public void The_real_renderer_is_told_to_be_software_and_every_cell_is_software_only()
    {
        using var bench = Bench();
        var printed = bench.Done(Import, bench.Write("report.txt", real.Bytes()), "--write");
        Assert.Contains("! This is a software renderer: its renderer says 'llvmpipe'.", printed, StringComparison.Ordinal);
        Assert.All(CellsOf(bench.Load()), cell => Assert.Equal((cell.Feature, "software only"), cell));
        var driver = Assert.Single(bench.Load().Drivers);
        Assert.True(driver.IsSoftware);
        Assert.All(bench.Load().Facts, fact => Assert.NotEqual(State.Yes, fact.Support));
    }

    [Theory]
    [InlineData("GL_EXT_texture_compression_s3tc")]
    [InlineData("GL_NV_fog_distance")]
    [InlineData("GL_EXT_texture_filter_anisotropic")]
    public void Deleting_one_extension_flips_exactly_the_cells_that_name_it(string extension)
    {
        var whole = Synthetic();
        var before = Cells(whole);
        var after = Cells(whole.Replace(extension + ",", "", StringComparison.Ordinal).Replace(extension + "\n", "\n", StringComparison.Ordinal));
        var named = Flags.Where(feature => feature.Detection.OpenGlExtensions.Contains(extension)
            && feature.Detection.OpenGlCore is null && !feature.Detection.OpenGlExtensions.Any(other => other != extension && Words(whole).Contains(other)));
        Assert.Equal(named.Select(feature => feature.Id), before.Zip(after).Where(pair => pair.First != pair.Second).Select(pair => pair.First.Feature));
    }

    [Fact]
    public void Without_write_nothing_changes_and_with_it_a_second_time_nothing_changes()
    {
        using var bench = Bench();
        var report = bench.Write("report.txt", Encoding.Latin1.GetBytes(Synthetic()));
        var texts = bench.Texts();
        Assert.EndsWith("Nothing was written. Say --write to write it.\n", bench.Done(Import, report), StringComparison.Ordinal);
        Assert.Equal(texts, bench.Texts());
        Assert.Equal(2, Directory.GetFiles(bench.Folder).Length);

        bench.Done(Import, report, "--write");
        var written = bench.Texts();
        Assert.Equal(["collection.yaml", "drivers/lumen-4-driver.yaml", "measured/lumen-4.yaml", "sources.yaml"], written.Keys.Order());
        Assert.EndsWith("The collection says all this already: nothing would change.\n", bench.Done(Import, report, "--write"), StringComparison.Ordinal);
        Assert.Equal(written, bench.Texts());
    }

    [Fact]
    public void A_later_report_of_the_same_driver_changes_single_lines()
    {
        using var bench = Bench();
        var whole = Synthetic();
        bench.Done(Import, bench.Write("a.txt", Encoding.Latin1.GetBytes(whole)), "--write");
        var before = bench.Texts()["measured/lumen-4.yaml"];
        bench.Done(Import, bench.Write("b.txt", Encoding.Latin1.GetBytes(whole.Replace("GL_NV_fog_distance,", "", StringComparison.Ordinal))), "--write");
        var changed = before.Split('\n').Zip(bench.Texts()["measured/lumen-4.yaml"].Split('\n')).Where(pair => pair.First != pair.Second);
        Assert.Equal([("    fog-range: yes", "    fog-range: no")], changed);
        Assert.Equal(before, File.ReadAllText(bench.PathOf("measured/lumen-4.yaml.before")));
    }

    [Fact]
    public void A_statement_of_another_source_stays_and_its_fate_is_told()
    {
        using var bench = Bench();
        bench.Write("more.yaml",
            """
            drivers: {lumen: {name: Lumen driver, os: [windows-98se], lists: [lumen-4], source: Its readme, versions: ["1.0"]}}
            facts:
              - {card: lumen-4, driver: lumen 1.0, api: opengl, source: {text: Ada's bench, grade: measured}, tex-pal8: yes}
              - {card: lumen-4, driver: lumen 1.0, api: opengl, source: Its readme, tex-dxt1: no}

            """);
        var before = bench.Texts()["more.yaml"];
        var printed = bench.Done(
            "import opengl --card lumen-4 --driver lumen@1.0", bench.Write("r.txt", Encoding.Latin1.GetBytes(Synthetic())), "--write");
        Assert.Contains("(measured: Ada's bench): both are measured: where they have the same scope they make the answer unknown", printed, StringComparison.Ordinal);
        Assert.Contains("(documented: Its readme): both stay in the collection; where they have the same scope the measured one counts", printed, StringComparison.Ordinal);
        Assert.Equal(before, bench.Texts()["more.yaml"]);
        Assert.Contains("not known", CellsOf(bench.Load()).Single(cell => cell.Feature == "tex-pal8").Label, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_report_is_refused_with_its_name()
    {
        using var bench = Bench();
        var path = bench.Write("letter.txt", "Dear Ada,\n"u8.ToArray());
        Assert.Equal(1, bench.Run(Import, path, "--write"));
        Assert.Equal($"{path}(1,1): this is not a file of this kind; nothing was read{Environment.NewLine}", bench.Told);
    }

    /// <summary>
    /// Synthetic: the real text with an invented renderer line and the sign beside it, so that it passes for hardware.
    /// </summary>
    private string Synthetic() => string.Join('\n', Encoding.Latin1.GetString(real.Bytes()).Split('\n')
        .Select(line => line.StartsWith("OpenGL renderer string:", StringComparison.Ordinal) ? "OpenGL renderer string: Quillon Lumen 4" : line)
        .Select(line => line == "    Accelerated: no" ? "    Accelerated: yes" : line));

    private static List<(string Feature, string Label)> Cells(string report)
    {
        using var bench = Bench();
        bench.Done(Import, bench.Write("report.txt", Encoding.Latin1.GetBytes(report)), "--write");
        return CellsOf(bench.Load());
    }

    private static List<(string Feature, string Label)> CellsOf(Catalog catalog)
    {
        var decisions = new Decisions(catalog, null);
        var card = Assert.Single(catalog.Cards);
        return [.. Flags.Select(feature => (feature.Id, LabelWording.Label(decisions.On(catalog.Titles.Single(title => title.Id == "needs-" + feature.Id), card))))];
    }

    /// <summary>By nothing but the words of the report: present by name, or part of the version that the report states.</summary>
    private static string Expected(Feature feature, string report)
    {
        Assert.Contains("\nOpenGL version string: 4.5 ", report, StringComparison.Ordinal);
        var isThere = feature.Detection.OpenGlCore is not null || feature.Detection.OpenGlExtensions.Any(Words(report).Contains);
        return isThere ? "works, natively" : $"loses {Names.Of(feature.At(1))} (cosmetic), natively";
    }

    /// <summary>The words of the compatibility profile's names and of the window system's.</summary>
    private static HashSet<string> Words(string report)
    {
        var window = report[report.IndexOf("GLX extensions:", StringComparison.Ordinal)..report.IndexOf("OpenGL vendor string:", StringComparison.Ordinal)];
        var profile = report[report.IndexOf("\nOpenGL extensions:", StringComparison.Ordinal)..report.IndexOf("\nOpenGL limits:", StringComparison.Ordinal)];
        return [.. (window + profile).Split([' ', ',', '\n'])];
    }

    /// <summary>A board whose drivers are all on record, and a title for each flag.</summary>
    private static ImportBench Bench()
    {
        var titles = Flags.Select(feature => $"  needs-{feature.Id}: {{name: Needs {feature.Id}, os: [windows-98se], source: The title itself, "
            + $"renderers: {{gl: {{api: opengl 1.1, needs: {{cosmetic: [{feature.Id}]}} }} }} }}\n");
        return new ImportBench(
            $"""
            collection: @name: One title for each flag!
            chips: @lumen: @name: Lumen, source: The board itself!!
            cards:
              lumen-4:
                name: Quillon Lumen 4
                chip: lumen
                source: The board itself
                memory: @unified: 64 MiB!
                drivers-complete: [{string.Join(", ", Oses)}]
            titles:

            """.Replace('@', '{').Replace('!', '}') + string.Concat(titles));
    }

    private static IEnumerable<string> Oses
    {
        get
        {
            using var bench = new ImportBench();
            return [.. bench.Load().Oses.Select(os => os.Id)];
        }
    }
}
