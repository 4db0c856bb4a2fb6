using FeatureMatrix.Deciding.Fit;
using static FeatureMatrix.Deciding.Fit.FitReason;
using static FeatureMatrix.Deciding.Fit.Signalling;

namespace FeatureMatrix.Tests.Deciding.Fit;

public class Card_against_a_whole_pc
{
    private static readonly CardDocuments Card = new()
    {
        Slot = SlotKind.Agp,
        DocumentedSignalling = V15,
        Notches = V15,
        Design = AgpDesign.Agp20,
        HighestMode = 4,
        PowerPlug = "drive-power",
        Outputs = [VideoConnector.Vga, VideoConnector.DviI],
    };

    private static readonly RigDocuments Rig = new()
    {
        Slot = new SlotDocuments { Slot = SlotKind.Agp, DocumentedSignalling = V15, Key = V15, HighestMode = 4 },
        PowerPlugs = ["drive-power"],
        MonitorInputs = [VideoConnector.DviD],
        MonitorHasTube = false,
        MemoryMebibytes = 256,
        // FACTS E1: Windows 98, KB 253912 as copied.
        Oses = [new OsMemoryLimit("windows-98", 512)],
    };

    private static readonly FitCaution[] Always = [FitCaution.Mains, FitCaution.Capacitors, FitCaution.Static];

    [Fact]
    public void Documents_agree_when_every_aspect_is_documented()
    {
        var answer = FitCheck.Compare(Card, Rig);
        Assert.Equal(
            [
                new(FitAspect.Slot, FitVerdict.DocumentsAgree, new VoltageAgrees(V15)),
                new(FitAspect.Power, FitVerdict.DocumentsAgree, new PowerAgrees("drive-power")),
                new(FitAspect.Outputs, FitVerdict.DocumentsAgree, new OutputAgrees(VideoConnector.DviI, VideoConnector.DviD)),
                new(FitAspect.Memory, FitVerdict.DocumentsAgree, new MemoryAgrees("windows-98", 256, 512)),
            ],
            answer.Findings);
        Assert.Equal((FitVerdict.DocumentsAgree, 4, 1066.667), (answer.Verdict, answer.Bus!.Mode, Math.Round(answer.Bus.MegabytesPerSecond, 3)));
        Assert.Equal(Always, answer.Cautions);
    }

    [Fact]
    public void One_undocumented_aspect_is_enough_for_not_known() => Assert.Equal(
        (FitVerdict.NotKnown, new PowerUndocumented(true, false)), Worst(Card with { PowerPlug = null }, Rig));

    [Fact]
    public void What_forbids_outweighs_what_is_not_known() => Assert.Equal(
        (FitVerdict.DoNotInsert, new PowerMissing("drive-power")),
        Worst(Card with { DocumentedSignalling = None }, Rig with { PowerPlugs = [] }));

    [Fact]
    public void Needing_no_plug_agrees_with_any_pc() => Assert.Equal(
        new PowerAgrees(""), FitCheck.Compare(Card with { PowerPlug = "" }, Rig with { PowerPlugs = null }).Findings[1].Reason);

    [Fact]
    public void Monitor_that_takes_no_signal_of_the_card_forbids() => Assert.Equal(
        (FitVerdict.DoNotInsert, new NoCommonOutput()), Worst(Card with { Outputs = [VideoConnector.Vga] }, Rig));

    [Fact]
    public void Same_connector_is_preferred_to_an_adapter() => Assert.Equal(
        new OutputAgrees(VideoConnector.Vga, VideoConnector.Vga),
        FitCheck.Compare(Card with { Outputs = [VideoConnector.DviI, VideoConnector.Vga] }, Rig with { MonitorInputs = [VideoConnector.Vga] })
            .Findings[2].Reason);

    [Theory]
    [InlineData(VideoConnector.Dvi, VideoConnector.DviD)]
    [InlineData(VideoConnector.Dvi, VideoConnector.Dvi)]
    [InlineData(VideoConnector.Other, VideoConnector.Vga)]
    public void Connector_of_an_unstated_kind_is_not_known(VideoConnector output, VideoConnector input) => Assert.Equal(
        (FitVerdict.NotKnown, new SignalUndocumented(output, input)),
        Worst(Card with { Outputs = [output] }, Rig with { MonitorInputs = [input] }));

    [Fact]
    public void Unseen_outputs_are_not_known() => Assert.Equal(
        (FitVerdict.NotKnown, new OutputsUndocumented(false, true)), Worst(Card, Rig with { MonitorInputs = null }));

    // FACTS E1: Windows 98 needs MaxFileCache above 512 MB, so the limit is not the last word.
    [Fact]
    public void Memory_above_a_limit_asks_for_the_documents() => Assert.Equal(
        (FitVerdict.NotKnown, new MemoryAboveLimit("windows-98", 1024, 512)), Worst(Card, Rig with { MemoryMebibytes = 1024 }));

    [Theory]
    [InlineData(null, 512L)]
    [InlineData(256L, null)]
    public void Memory_or_limit_without_a_document_is_not_known(long? installed, long? limit) => Assert.Equal(
        (FitVerdict.NotKnown, new MemoryUndocumented("windows-98")),
        Worst(Card, Rig with { MemoryMebibytes = installed, Oses = [new OsMemoryLimit("windows-98", limit)] }));

    [Fact]
    public void Cautions_follow_the_monitor_and_the_driver() => Assert.Equal(
        [.. Always, FitCaution.PictureTube, FitCaution.ForcedDriver],
        FitCheck.Compare(Card, Rig with { MonitorHasTube = null, DriverForced = true }).Cautions);

    private static (FitVerdict Verdict, FitReason Reason) Worst(CardDocuments card, RigDocuments rig)
    {
        var answer = FitCheck.Compare(card, rig);
        return (answer.Verdict, answer.Findings.MaxBy(f => f.Verdict)!.Reason);
    }
}

/// <summary>Peak rates of FACTS section D: 266.667, 533.333, 1066.667, 2133.333; PCI 133.333 and 266.667; VL 133.333 at 33 MHz.</summary>
public class Speed_of_a_bus
{
    [Theory]
    [InlineData(V33, 4, 4, 2, 533.333)]
    [InlineData(V33, 1, 2, 1, 266.667)]
    [InlineData(V15, 8, 2, 2, 533.333)]
    [InlineData(V15, 8, 8, 4, 1066.667)]
    [InlineData(V08, 4, 8, 4, 1066.667)]
    [InlineData(V08, 8, 8, 8, 2133.333)]
    public void Agp_runs_at_the_highest_mode_both_offer_and_the_voltage_carries(
        Signalling voltage, int card, int slot, int mode, double rate) => Assert.Equal(
        (mode, rate), Rounded(Bus(SlotKind.Agp, voltage, card, slot)));

    [Fact]
    public void Agp_modes_without_a_document_or_in_common_give_no_speed()
    {
        Assert.Null(Bus(SlotKind.Agp, V15, null, 4));
        Assert.Null(Bus(SlotKind.Agp, V08, 2, 8));
    }

    [Theory]
    [InlineData(SlotKind.Pci, V50, 66, 66, 133.333)]
    [InlineData(SlotKind.Pci, V33, 66, 66, 266.667)]
    [InlineData(SlotKind.Pci, V33, 33, 66, 133.333)]
    [InlineData(SlotKind.VesaLocal, V50, 50, 33, 133.333)]
    [InlineData(SlotKind.VesaLocal, V50, 50, 40, 160.0)]
    [InlineData(SlotKind.Isa, V50, null, null, 16.667)]
    public void Older_buses_run_at_the_slower_clock(SlotKind slot, Signalling voltage, int? card, int? clock, double rate) =>
        Assert.Equal((null, rate), Rounded(Bus(slot, voltage, card, clock)));

    [Fact]
    public void Local_bus_faster_than_the_card_allows_forbids() => Assert.Contains(
        new FitFinding(FitAspect.Clock, FitVerdict.DoNotInsert, new ClockTooHigh(33, 40)), Compare(SlotKind.VesaLocal, V50, 33, 40).Findings);

    [Fact]
    public void Local_bus_clock_without_a_document_is_not_known() => Assert.Contains(
        new FitFinding(FitAspect.Clock, FitVerdict.NotKnown, new ClockUndocumented(true, false)), Compare(SlotKind.VesaLocal, V50, null, 40).Findings);

    [Fact]
    public void Card_that_may_not_go_in_has_no_speed() => Assert.Null(FitCheck.Compare(
        new CardDocuments { Slot = SlotKind.Agp, DocumentedSignalling = V33, HighestMode = 2 },
        new RigDocuments { Slot = new SlotDocuments { Slot = SlotKind.Agp, DocumentedSignalling = V15, HighestMode = 4 } }).Bus);

    private static FitAnswer Compare(SlotKind kind, Signalling voltage, int? card, int? slot) => FitCheck.Compare(
        new CardDocuments { Slot = kind, DocumentedSignalling = voltage, HighestMode = card, HighestClock = card },
        new RigDocuments { Slot = new SlotDocuments { Slot = kind, DocumentedSignalling = voltage, HighestMode = slot, Clock = slot } });

    private static BusInForce? Bus(SlotKind kind, Signalling voltage, int? card, int? slot) => Compare(kind, voltage, card, slot).Bus;

    private static (int? Mode, double Rate) Rounded(BusInForce? bus) => (bus!.Mode, Math.Round(bus.MegabytesPerSecond, 3));
}
