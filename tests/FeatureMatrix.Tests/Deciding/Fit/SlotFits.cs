using FeatureMatrix.Deciding.Fit;
using static FeatureMatrix.Deciding.Fit.FitReason;
using static FeatureMatrix.Deciding.Fit.Signalling;

namespace FeatureMatrix.Tests.Deciding.Fit;

/// <summary>
/// AGP against the AGP3.0 Interface Specification, revision 1.0, as FACTS section D quotes it: table 35 (page 73) by its
/// rows as printed there, and once more from tables 15 and 16 (pages 39 and 40), which give each kind's voltages and edge.
/// </summary>
public class Agp_card_in_an_agp_slot
{
    private static FitFinding Slot(Signalling card, Signalling slot, Signalling? notches = null, Signalling? key = null, AgpDesign? design = null) =>
        FitCheck.Compare(
            new CardDocuments { Slot = SlotKind.Agp, DocumentedSignalling = card, Notches = notches, Design = design },
            new RigDocuments { Slot = new SlotDocuments { Slot = SlotKind.Agp, DocumentedSignalling = slot, Key = key } }).Findings[0];

    // FACTS D, rows of the matrix from top to bottom, columns from left to right.
    [Theory]
    [InlineData(0, "3.3 – 3.3 – – 3.3")]
    [InlineData(1, "– 1.5 1.5 1.5 (1) 1.5")]
    [InlineData(2, "3.3 1.5 1.5 1.5 (1) 1.5")]
    [InlineData(3, "– 1.5 1.5 0.8 0.8 0.8")]
    [InlineData(4, "– (2) (2) 0.8 0.8 0.8")]
    [InlineData(5, "3.3 1.5 1.5 0.8 0.8 0.8")]
    public void Table_reads_as_in_the_specification(int row, string cells) => Assert.Equal(
        cells, string.Join(' ', AgpTable.Cards.Select(card => Written(AgpTable.Cell(AgpTable.Boards[row], card)!.Value))));

    /// <summary>
    /// Tables 15 and 16: a card whose only edge is 3.3 V does not enter a 1.5 V key and conversely, double-slotted cards and
    /// universal boards meet all; what fits runs at the newest signalling both support.
    /// </summary>
    [Fact]
    public void Table_follows_from_the_kinds_of_boards_and_cards()
    {
        foreach (var board in AgpTable.Boards)
        {
            foreach (var card in AgpTable.Cards)
            {
                var edgesMeet = (Edges(board) & Edges(card)) != None;
                var common = new[] { V08, V15, V33 }.FirstOrDefault(v => (board & card & v) != None);
                var expected = (edgesMeet, common) switch
                {
                    (false, _) => AgpCell.Precluded,
                    (_, V08) => AgpCell.At08,
                    (_, V15) => AgpCell.At15,
                    (_, V33) => AgpCell.At33,
                    _ => card == V08 ? AgpCell.Note1 : AgpCell.Note2,
                };
                Assert.Equal((board, card, expected), (board, card, AgpTable.Cell(board, card)!.Value));
            }
        }

        static Signalling Edges(Signalling kind) => (kind & V33) | ((kind & (V15 | V08)) == None ? None : V15);
    }

    [Fact]
    public void Every_cell_gives_its_verdict()
    {
        foreach (var board in AgpTable.Boards)
        {
            foreach (var card in AgpTable.Cards)
            {
                var (verdict, reason) = AgpTable.Cell(board, card) switch
                {
                    AgpCell.Precluded => (FitVerdict.DoNotInsert, (FitReason)new NoCommonVoltage(card, board)),
                    AgpCell.Note1 => (FitVerdict.DoNotInsert, new Agp30CardOnOlderBoard()),
                    AgpCell.Note2 => (FitVerdict.DoNotInsert, new OlderCardOnAgp30Board()),
                    AgpCell.At33 when card == V33 && board == V33 => (FitVerdict.DocumentsAgree, new VoltageAgrees(V33)),
                    AgpCell.At15 when card == V15 && board == V15 => (FitVerdict.DocumentsAgree, new VoltageAgrees(V15)),
                    AgpCell.At08 when card == V08 && board == V08 => (FitVerdict.DocumentsAgree, new VoltageAgrees(V08)),
                    AgpCell.At33 => (FitVerdict.NotKnown, new TableReconstructed(V33)),
                    AgpCell.At15 => (FitVerdict.NotKnown, new TableReconstructed(V15)),
                    _ => (FitVerdict.NotKnown, new TableReconstructed(V08)),
                };
                Assert.Equal(new FitFinding(FitAspect.Slot, verdict, reason), Slot(card, board));
            }
        }
    }

    [Fact]
    public void Key_forbids_before_anything_is_documented() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.DoNotInsert, new KeyForbids(V15, V33)), Slot(None, None, notches: V33, key: V15));

    [Theory]
    [InlineData(None, V15, true, false)]
    [InlineData(V15, None, false, true)]
    [InlineData(None, None, true, true)]
    public void Undocumented_voltage_is_never_inferred(Signalling card, Signalling slot, bool ofCard, bool ofSlot) => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new VoltageUndocumented(ofCard, ofSlot)),
        Slot(card, slot, notches: V15, key: V15, design: AgpDesign.Agp20));

    // FACTS D, caution: early 3.3 V cards with both notches fit 1.5 V boards.
    [Theory]
    [InlineData(V15)]
    [InlineData(V33)]
    [InlineData(V33 | V15)]
    public void Both_notches_on_an_early_card_prove_nothing(Signalling slot) => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new BothNotchesOnEarlyCard()),
        Slot(V33 | V15, slot, notches: V33 | V15, design: AgpDesign.Agp10));

    [Fact]
    public void Early_card_documented_for_3_3_volts_stays_out_of_a_1_5_volt_board() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.DoNotInsert, new NoCommonVoltage(V33, V15)),
        Slot(V33, V15, notches: V33 | V15, key: V15, design: AgpDesign.Agp10));

    [Fact]
    public void Notches_that_contradict_the_documents_leave_it_unknown() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new NotchesContradictDocuments(V33 | V15, V33)),
        Slot(V33, V33, notches: V33 | V15));

    [Fact]
    public void Open_slot_documented_for_one_voltage_leaves_it_unknown() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new KeyContradictsDocuments(None, V15)),
        Slot(V15, V15, notches: V15, key: None));

    [Fact]
    public void Voltages_of_no_kind_are_not_looked_up() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new NoSuchKind(V33 | V08, V08)), Slot(V33 | V08, V08));

    [Fact]
    public void Documents_agree_with_matching_key_and_notch() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.DocumentsAgree, new VoltageAgrees(V15)),
        Slot(V15, V15, notches: V15, key: V15, design: AgpDesign.Agp20));

    private static string Written(AgpCell cell) => cell switch
    {
        AgpCell.Precluded => "–",
        AgpCell.At33 => "3.3",
        AgpCell.At15 => "1.5",
        AgpCell.At08 => "0.8",
        AgpCell.Note1 => "(1)",
        _ => "(2)",
    };
}

/// <summary>FACTS D, PCI keying: 5 V and 3.3 V keys, universal cards with both notches.</summary>
public class Card_in_a_slot_of_another_bus
{
    private static FitFinding Slot(CardDocuments card, SlotDocuments slot) =>
        FitCheck.Compare(card, new RigDocuments { Slot = slot }).Findings[0];

    private static FitFinding Pci(Signalling card, Signalling notches, Signalling slot, Signalling key) => Slot(
        new CardDocuments { Slot = SlotKind.Pci, DocumentedSignalling = card, Notches = notches },
        new SlotDocuments { Slot = SlotKind.Pci, DocumentedSignalling = slot, Key = key });

    [Theory]
    [InlineData(V50, V50)]
    [InlineData(V33 | V50, V33)]
    [InlineData(V33 | V50, V50)]
    [InlineData(V33, V33)]
    public void Pci_documents_agree_on_a_voltage_both_state(Signalling card, Signalling slot) => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.DocumentsAgree, new VoltageAgrees(slot)), Pci(card, card, slot, slot));

    [Theory]
    [InlineData(V50, V33)]
    [InlineData(V33, V50)]
    public void Pci_key_keeps_the_other_voltage_out(Signalling card, Signalling slot) => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.DoNotInsert, new KeyForbids(slot, card)), Pci(card, card, slot, slot));

    [Fact]
    public void Pci_notches_alone_are_no_document() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new VoltageUndocumented(true, false)), Pci(None, V33 | V50, V50, V50));

    [Fact]
    public void Pci_notch_beyond_the_documents_is_doubted() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new NotchesContradictDocuments(V33 | V50, V50)),
        Pci(V50, V33 | V50, V50, V50));

    [Theory]
    [InlineData(SlotKind.Pci, SlotKind.Agp, FitVerdict.DoNotInsert)]
    [InlineData(SlotKind.Isa, SlotKind.VesaLocal, FitVerdict.DoNotInsert)]
    [InlineData(SlotKind.Pci, SlotKind.Other, FitVerdict.NotKnown)]
    public void Slots_of_different_kinds(SlotKind card, SlotKind slot, FitVerdict verdict) => Assert.Equal(
        new FitFinding(FitAspect.Slot, verdict, new SlotsDiffer(card, slot)),
        Slot(
            new CardDocuments { Slot = card, DocumentedSignalling = V50 },
            new SlotDocuments { Slot = slot, DocumentedSignalling = V50 }));

    [Fact]
    public void Kind_without_rules_is_unknown() => Assert.Equal(
        new FitFinding(FitAspect.Slot, FitVerdict.NotKnown, new NoRules()),
        Slot(new CardDocuments { Slot = SlotKind.Other }, new SlotDocuments { Slot = SlotKind.Other }));

    [Theory]
    [InlineData(V50, FitVerdict.DocumentsAgree)]
    [InlineData(None, FitVerdict.NotKnown)]
    public void Isa_needs_documented_voltages_too(Signalling card, FitVerdict verdict) => Assert.Equal(
        verdict,
        Slot(
            new CardDocuments { Slot = SlotKind.Isa, DocumentedSignalling = card },
            new SlotDocuments { Slot = SlotKind.Isa, DocumentedSignalling = V50 }).Verdict);
}
