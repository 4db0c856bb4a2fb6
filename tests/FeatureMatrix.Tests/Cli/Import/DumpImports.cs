using System.Globalization;
using System.Text;
using FeatureMatrix.Tests.Importing.Capabilities;
using Supplied = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>Dumps through the command line: the real one from Wine on Mesa's software renderer, and invented ones.</summary>
public sealed class DumpImports(RealDump real)
{
    private const string Collection =
        """
        collection: {name: Two titles}
        titles:
          weir: {name: Weir, os: [windows-xp], source: Its manual, renderers: {d3d: {api: direct3d 9, needs: {severe: [fog-table]}}}}
          mill: {name: Mill, os: [windows-xp], source: Its manual, renderers: {d3d: {api: direct3d 9, needs: {severe: [fog-table, mt-units 2]}}}}

        """;

    [Fact]
    public void The_real_dump_becomes_facts_that_its_raw_words_say()
    {
        using var bench = new ImportBench(Collection);
        var printed = bench.Done("import dump --card wine-card --driver new --os windows-xp --format csv --write", bench.Write("dump.txt", real.Bytes()));
        Assert.Contains("This is a software renderer", printed, StringComparison.Ordinal);
        var catalog = bench.Load();
        Assert.True(Assert.Single(catalog.Drivers).IsSoftware);

        // Independent: the word of D3DCAPS9.RasterCaps in the text, and D3DPRASTERCAPS_FOGTABLE 0x100 of d3d9caps.h
        // (Debian package mingw-w64-common).
        var word = Word("field D3DCAPS9.RasterCaps ");
        var fog = Assert.Single(catalog.Facts, fact => fact.Capability.Feature.Id == "fog-table" && fact.Scope.Api?.Id == "direct3d");
        Assert.Equal((word & 0x100) != 0 ? Supplied.Yes : Supplied.No, fog.Support);
        var row = printed.Split('\n').Single(line => line.Contains("direct3d9 0,D3DCAPS9.RasterCaps,D3DPRASTERCAPS_FOGTABLE,", StringComparison.Ordinal));
        Assert.Equal($"2,Table (pixel) fog,direct3d9 0,D3DCAPS9.RasterCaps,D3DPRASTERCAPS_FOGTABLE,{((word & 0x100) != 0 ? "set" : "not set")}", row.TrimEnd('\r'));

        // The table is ordered by titles: two ask for fog, one for two textures, none for anything else.
        var counts = printed.Split('\n').Skip(1).TakeWhile(line => line.Length > 0 && char.IsAsciiDigit(line[0]))
            .Select(line => int.Parse(line.Split(',')[0], CultureInfo.InvariantCulture)).ToList();
        Assert.True(counts.Count > 300);
        Assert.Equal(counts.OrderDescending(), counts);
        Assert.Equal([2, 1, 0], counts.Distinct());
    }

    [Fact]
    public void A_drivers_figure_of_video_memory_is_shown_and_not_recorded()
    {
        using var bench = new ImportBench(Collection);
        var text = OneRun.Dump.Replace("version driver-version", "memory local 7864320 7000000\nversion driver-version", StringComparison.Ordinal);
        var printed = bench.Done("import dump --card x --driver new --os windows-98se --write", bench.Write("dump.txt", Encoding.Latin1.GetBytes(text)));
        Assert.Contains("The driver manages 7.5 MiB of video memory. That is not what the board carries", printed, StringComparison.Ordinal);
        Assert.All(bench.Texts().Values, file => Assert.DoesNotContain("memory:", file, StringComparison.Ordinal));
    }

    [Fact]
    public void A_bit_without_a_public_name_is_kept_in_the_table()
    {
        using var bench = new ImportBench(Collection);
        var text = OneRun.Dump.Replace("0x00000100", "0x80000100", StringComparison.Ordinal);
        var printed = bench.Done("import dump --card x --driver new --os windows-98se --format csv", bench.Write("dump.txt", Encoding.Latin1.GetBytes(text)));
        Assert.Contains("\n0,,direct3d7 0 0,D3DDEVICEDESC7.dpcTriCaps.dwRasterCaps,0x80000000,set", printed, StringComparison.Ordinal);
    }

    [Fact]
    public void A_difference_names_what_is_lost_and_the_titles_it_touches()
    {
        using var bench = new ImportBench(Collection);
        var old = bench.Write("old.txt", Encoding.Latin1.GetBytes(OneRun.Dump));
        var now = bench.Write("new.txt", Encoding.Latin1.GetBytes(OneRun.Dump
            .Replace("0x00000100", "0x00001000", StringComparison.Ordinal).Replace("0x0002", "0x0004", StringComparison.Ordinal)));
        Assert.Equal(
            """
            Change,Where,Name,Before,After,Feature,Titles touched
            lost,direct3d7 0 0,D3DDEVICEDESC7.dpcTriCaps.dwRasterCaps D3DPRASTERCAPS_FOGTABLE,set,not set,Table (pixel) fog,"Mill, Weir"
            limit changed,direct3d7 0 0,D3DDEVICEDESC7.wMaxSimultaneousTextures,2,4,Textures in one pass,Mill
            gained,direct3d7 0 0,D3DDEVICEDESC7.dpcTriCaps.dwRasterCaps D3DPRASTERCAPS_ANTIALIASEDGES,not set,set,Edge and line antialiasing,

            """,
            bench.Done("difference --format csv", old, now).ReplaceLineEndings("\n"), ignoreLineEndingDifferences: true);
    }

    [Fact]
    public void Faults_are_named_with_file_line_and_column()
    {
        using var bench = new ImportBench(Collection);
        var path = bench.Write("dump.txt", "capability-dump 1\nsection direct3d9 0\nfield D3DCAPS9.RasterCaps zero\nend\n"u8.ToArray());
        bench.Done("import dump --card x --driver new --os windows-xp", path);
        Assert.Equal(
            $"{path}(3,27): 'zero' is no 0x with 2, 4 or 8 hexadecimal digits, or not of the length this place needs{Environment.NewLine}", bench.Told);
    }

    private uint Word(string label)
    {
        var line = Encoding.Latin1.GetString(real.Bytes()).Split('\n').First(line => line.StartsWith(label, StringComparison.Ordinal));
        return uint.Parse(line[(label.Length + 2)..].Trim(), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
    }
}
