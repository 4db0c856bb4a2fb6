using System.Text;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>A driver package asked about cards that it lists, lists by a sibling, and does not know.</summary>
public sealed class PackageImports
{
    private const string Collection =
        """
        collection: {name: Lanterns}
        chips: {lantern-7: {name: Lantern 7, source: The box}}
        cards:
          seven: {name: Lantern Seven, chip: lantern-7, source: The box, hardware-ids: ['PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2']}
          plain: {name: Plain Lantern, chip: lantern-7, source: The box, hardware-ids: ['PCI\VEN_F0A1&DEV_0007&SUBSYS_9999F0B2']}
          mute: {name: Mute Lantern, chip: lantern-7, source: The box}

        """;

    [Fact]
    public void A_listed_board_gets_a_driver_for_the_systems_that_list_it()
    {
        using var bench = Bench(out var inf);
        var printed = bench.Done("import inf --card seven", inf, "--write");
        Assert.Contains(
            """
              + Windows 98: listed
                line 9: 'Lantern 7' by PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2, which names this very board
            """,
            printed.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Equal(
            """
            drivers:
              greywater-driver:
                name: Driver of Greywater
                source: inf-greywater-driver-4-12-10-0107
                versions:
                  - version: "4.12.10.0107"
                    os: [windows-95, windows-98, windows-98se, windows-me]
                    lists: [seven]
                    released: "2000-03-14"
                    source: inf-greywater-driver-4-12-10-0107

            """,
            bench.Texts()["drivers/greywater-driver.yaml"], ignoreLineEndingDifferences: true);
    }

    [Fact]
    public void A_sibling_can_only_be_forced_and_the_caution_stands_beside_it()
    {
        using var bench = Bench(out var inf);
        var printed = bench.Done("import inf --card plain", inf, "--write");
        Assert.Contains("line 9: 'Lantern 7' has the same chip; its driver could be forced", printed, StringComparison.Ordinal);
        Assert.Contains("! " + FeatureMatrix.Reports.ExplanationBuilder.ForcedCaution, printed, StringComparison.Ordinal);
        Assert.Contains("The driver is recorded for Lantern Seven; on Plain Lantern it counts as forced.", printed, StringComparison.Ordinal);
        Assert.Equal(["seven"], Assert.Single(bench.Load().Drivers).Lists.Select(card => card.Id));
    }

    [Fact]
    public void A_card_without_an_id_cannot_be_asked_about_and_nothing_is_recorded()
    {
        using var bench = Bench(out var inf);
        var printed = bench.Done("import inf --card mute", inf, "--write");
        Assert.Contains("? No hardware ID of Mute Lantern is recorded", printed, StringComparison.Ordinal);
        Assert.Empty(bench.Load().Drivers);
    }

    [Fact]
    public void Faults_of_the_file_are_named_with_line_and_column()
    {
        using var bench = Bench(out _);
        var path = bench.Write("bad.inf", "stray\n[Version]\nSignature=\"$Chicago$\"\n"u8.ToArray());
        bench.Run("import inf --card seven", path);
        Assert.StartsWith($"{path}(1,1): something stands before the first section{Environment.NewLine}", bench.Told, StringComparison.Ordinal);
    }

    private static ImportBench Bench(out string inf)
    {
        var bench = new ImportBench(Collection);
        inf = bench.Write("lantern.inf", Encoding.Latin1.GetBytes(OneRun.Inf));
        return bench;
    }
}
