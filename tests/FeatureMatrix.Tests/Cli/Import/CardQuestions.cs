using System.Text;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>What a board is, what memory it carries, and whether its documents and a PC's agree: whole answers.</summary>
public sealed class CardQuestions
{
    private const string Collection =
        """
        collection: {name: Bench}
        chips: {ox: {name: OX, source: The box}}
        cards:
          early: {name: Early Ostrel, chip: ox, source: The box, connector: {bus: agp-1.0, volts: [3.3], notches: [3.3], speed: 2, power: none, outputs: [vga]}}
          mute: {name: Mute Ostrel, chip: ox, source: The box, connector: {bus: agp-2.0}}
        rigs:
          bench: {name: The bench, memory: 128 MiB, slots: [{bus: agp-1.0, volts: [3.3], speed: 2, key: 3.3}], monitor: {name: A tube, inputs: [vga]}, power: [drive-power]}
          late: {name: The late one, slots: [{bus: agp-2.0, volts: [1.5], speed: 4, key: 1.5}], monitor: {name: A tube, inputs: [vga]}, power: [drive-power]}

        """;

    [Fact]
    public void Documents_that_agree_are_told_with_cautions_and_never_a_promise()
    {
        using var bench = new ImportBench(Collection);
        Assert.StartsWith(
            """
            Early Ostrel in the bench: documents agree
              AGP 1.0: documents agree
                + Slot and signalling voltage: documents agree; the documents of both state 3.3 V
                + Power plug: documents agree; the card needs no power plug
                + Monitor: documents agree; the card's VGA output goes with the monitor's input
            """.ReplaceLineEndings("\n"),
            bench.Done("fit early bench"), StringComparison.Ordinal);
        Assert.Contains("! Static electricity destroys boards without a trace", bench.Printed, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", bench.Printed, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("early", "late", "Early Ostrel in the late one: do not insert")]
    [InlineData("mute", "late", "Mute Ostrel in the late one: not known: check both documents")]
    public void What_documents_rule_out_or_leave_open_is_told_so(string card, string rig, string expected)
    {
        using var bench = new ImportBench(Collection);
        Assert.Equal(expected, bench.Done($"fit {card} {rig}").Split('\n')[0]);
    }

    [Fact]
    public void Chips_on_a_photo_leave_these_answers()
    {
        Assert.Equal(
            "\"Memory, KiB\",\"Bus, bits\",Layouts\n4096,64,4 × 16 bit × 8 Mbit\n",
            ImportBench.WithoutCollection("chips --front 4 --back 0 --width 16 --density 8 --banks 1 --format csv").ReplaceLineEndings("\n"));
    }

    [Fact]
    public void An_id_is_named_by_the_list_and_a_record_is_drafted_but_not_written()
    {
        using var bench = new ImportBench();
        var printed = bench.Done("identify", @"PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2", "--ids", bench.Write("list.ids", Encoding.UTF8.GetBytes(OneRun.Ids)));
        Assert.Equal(
            """
            PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2
              + Chip's maker F0A1: Greywater
              + Chip 0007: Lantern 7
              + Board's maker F0B2: Tarn Boards
              + Board 1234: Greywater Lantern Seven
              Names only: memory, clocks, connector and voltages are read from the board and its documents.
            sources.yaml (new)
                1 + sources:
                2 +   pci-id-list: {text: The open PCI ID list (Debian package pci.ids), grade: documented}
            cards/greywater-lantern-seven.yaml (new)
                1 + chips:
                2 +   lantern-7: {name: Lantern 7, maker: Greywater, source: pci-id-list}
                3 + cards:
                4 +   greywater-lantern-seven:
                5 +     name: Greywater Lantern Seven
                6 +     maker: Tarn Boards
                7 +     chip: lantern-7
                8 +     hardware-ids: ['PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2']
                9 +     source: pci-id-list
            Nothing was written. Say --write to write it.

            """,
            printed, ignoreLineEndingDifferences: true);
        Assert.Equal(["collection.yaml"], bench.Texts().Keys);
    }

    [Fact]
    public void What_is_no_id_is_told_with_the_character()
    {
        using var bench = new ImportBench();
        Assert.Equal(2, bench.Run("identify", @"PCI\VEN_12G4"));
        Assert.Equal(@"'PCI\VEN_12G4' is no hardware ID: something else is expected at character 5. Write it as PCI\VEN_1234&DEV_5678, in quotes." + Environment.NewLine, bench.Told);
    }
}
