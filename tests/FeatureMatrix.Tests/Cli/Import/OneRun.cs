using System.Text;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>
/// A card that the collection does not know, from three files (its ID in a list, its driver's INF file, a dump made with it) to
/// its page and its cells in three commands. Everything here is invented.
/// </summary>
public sealed class OneRun
{
    internal const string Ids = "f0a1  Greywater\n\t0007  Lantern 7\n\t\tf0b2 1234  Greywater Lantern Seven\nf0b2  Tarn Boards\n";

    internal const string Inf =
        """
        [Version]
        Signature="$Chicago$"
        Class=Display
        Provider=%Maker%
        DriverVer=03/14/2000,4.12.10.0107
        [Manufacturer]
        %Maker%=Cards
        [Cards]
        "Lantern 7" = Lantern, PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2
        [Lantern]
        CopyFiles=Files
        [Strings]
        Maker="Greywater"
        """;

    /// <summary>One Direct3D 7 device that draws in hardware (0x80000) for drivers of DirectX 7 (0x8000), with table fog (0x100).</summary>
    internal const string Dump =
        """
        capability-dump 1
        text made-by "hand"
        section directdraw 0
        text description "Lantern 7"
        version driver-version 4 12 10 107
        section direct3d7 0 0
        field D3DDEVICEDESC7.dwDevCaps 0x00088000
        field D3DDEVICEDESC7.dpcTriCaps.dwRasterCaps 0x00000100
        field D3DDEVICEDESC7.wMaxSimultaneousTextures 0x0002
        end

        """;

    private const string Collection =
        """
        collection: {name: Grey boards}
        titles:
          weir: {name: Weir, os: [windows-98se], source: Its manual, renderers: {d3d: {api: direct3d 7, needs: {severe: [fog-table]}}}}
          mill: {name: Mill, os: [windows-98se], source: Its manual, renderers: {d3d: {api: direct3d 7, needs: {cosmetic: [filter-lod-bias]}}}}

        """;

    [Fact]
    public void Three_commands_lead_from_three_files_to_the_page_and_the_cells()
    {
        using var bench = new ImportBench(Collection);
        var ids = bench.Write("list.ids", Encoding.UTF8.GetBytes(Ids));
        var inf = bench.Write("lantern.inf", Encoding.Latin1.GetBytes(Inf));
        var dump = bench.Write("dump.txt", Encoding.Latin1.GetBytes(Dump));

        bench.Done("identify", @"PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2", "--ids", ids, "--write");
        bench.Done("import inf --card greywater-lantern-seven", inf, "--write");
        bench.Done("import dump --card greywater-lantern-seven --driver greywater-driver@4.12.10.0107", dump, "--write");

        var catalog = bench.Load();
        var card = Assert.Single(catalog.Cards);
        Assert.Equal(("Greywater Lantern Seven", "Tarn Boards", "Lantern 7"), (card.Name, card.Maker, card.Chip.Name));
        var driver = Assert.Single(catalog.Drivers);
        Assert.Equal(["windows-95", "windows-98", "windows-98se", "windows-me"], driver.Oses.Select(os => os.Id).Order());
        Assert.Equal(new DateOnly(2000, 3, 14), driver.Released);
        // What no file of the three says stays open: how much memory the board carries.
        Assert.Equal(["not known, at best works, natively", "not known, at best works, natively"], Labels(catalog));
        Assert.All(Verdicts(catalog), verdict => Assert.Contains(verdict.Headline.Deciding, open => open is UnknownFact.FrameBuffer));
        var file = $"cards/{card.Id}.yaml";
        bench.Write(file, bench.Texts()[file] + "    memory: {unified: 16 MiB}  # counted on the board\n");
        Assert.Equal(["works, natively", "loses mip level bias (cosmetic), natively"], Labels(bench.Load()));
        Assert.All(catalog.Facts, fact => Assert.Equal(Grade.Measured, fact.Evidence.Grade));

        var output = bench.PathOf("out");
        bench.Done("publish", "--out", output);
        var page = File.ReadAllText(Path.Combine(output, "cards", card.Id + ".html"));
        Assert.Contains("Greywater Lantern Seven", page, StringComparison.Ordinal);
        Assert.Contains("Weir", page, StringComparison.Ordinal);
    }

    private static IEnumerable<Verdict> Verdicts(Catalog catalog)
    {
        var decisions = new Decisions(catalog, null);
        return catalog.Titles.OrderByDescending(title => title.Id).Select(title => decisions.On(title, catalog.Cards[0]));
    }

    private static IEnumerable<string> Labels(Catalog catalog) => Verdicts(catalog).Select(LabelWording.Label);

    [Fact]
    public void Each_of_them_a_second_time_changes_nothing()
    {
        using var bench = new ImportBench(Collection);
        (string Words, string[] More)[] commands =
        [
            ("identify", [@"PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2", "--ids", bench.Write("list.ids", Encoding.UTF8.GetBytes(Ids))]),
            ("import inf --card greywater-lantern-seven", [bench.Write("lantern.inf", Encoding.Latin1.GetBytes(Inf))]),
            ("import dump --card greywater-lantern-seven --driver greywater-driver@4.12.10.0107", [bench.Write("dump.txt", Encoding.Latin1.GetBytes(Dump))]),
        ];
        foreach (var (words, more) in commands)
            bench.Done(words, [.. more, "--write"]);
        var written = bench.Texts();
        foreach (var (words, more) in commands)
            Assert.EndsWith("nothing would change.\n", bench.Done(words, [.. more, "--write"]), StringComparison.Ordinal);
        Assert.Equal(written, bench.Texts());
    }
}
