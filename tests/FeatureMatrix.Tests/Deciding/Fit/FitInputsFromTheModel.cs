using FeatureMatrix.Deciding.Fit;
using FeatureMatrix.Model;
using static FeatureMatrix.Deciding.Fit.Signalling;

namespace FeatureMatrix.Tests.Deciding.Fit;

public class Taking_documents_from_the_model
{
    private static readonly Evidence Manual = new(Grade.Documented, new Source("", "manual"), Origin.None);

    private static Bus Slot(string id) => new() { Id = id, Name = id, Evidence = Manual };

    private static Card Card(CardConnector? connector) => new()
    {
        Id = "lantern-7",
        Name = "Lantern 7",
        Chip = new Chip { Id = "nl7", Name = "NL7" },
        Connector = connector,
        Evidence = Manual,
    };

    [Fact]
    public void Card_gives_its_connector()
    {
        var documents = FitInputs.Of(Card(new CardConnector
        {
            Bus = Slot("agp-2.0"),
            DocumentedVolts = [1.5, 3.3],
            Notches = [1.5, 3.3],
            Speed = 4,
            PowerPlug = "",
            Outputs = ["vga", "dvi", "sail-plug"],
        }));
        Assert.Equal([VideoConnector.Vga, VideoConnector.Dvi, VideoConnector.Other], documents.Outputs!);
        Assert.Equal(
            new CardDocuments
            {
                Slot = SlotKind.Agp,
                DocumentedSignalling = V15 | V33,
                Notches = V15 | V33,
                Design = AgpDesign.Agp20,
                HighestMode = 4,
                PowerPlug = "",
            },
            documents with { Outputs = null });
    }

    [Fact]
    public void Card_without_a_recorded_connector_decides_nothing() =>
        Assert.Equal(new CardDocuments { Slot = SlotKind.Other }, FitInputs.Of(Card(null)));

    [Fact]
    public void Voltage_of_no_bus_is_no_document() => Assert.Equal(
        None, FitInputs.Of(Card(new CardConnector { Bus = Slot("agp-2.0"), DocumentedVolts = [1.5, 2.5] })).DocumentedSignalling);

    [Theory]
    [InlineData("isa", SlotKind.Isa, null)]
    [InlineData("vlb", SlotKind.VesaLocal, null)]
    [InlineData("pci", SlotKind.Pci, 33)]
    [InlineData("pci-66", SlotKind.Pci, 66)]
    [InlineData("agp-1.0", SlotKind.Agp, null)]
    [InlineData("agp-3.0", SlotKind.Agp, null)]
    [InlineData("lighthouse-bus", SlotKind.Other, null)]
    public void Bus_of_the_vocabulary_has_its_kind_and_clock(string id, SlotKind kind, int? clock)
    {
        var documents = FitInputs.Of(Card(new CardConnector { Bus = Slot(id) }));
        Assert.Equal((kind, clock), (documents.Slot, documents.HighestClock));
    }

    [Fact]
    public void Rig_gives_its_slot_and_the_documented_limits_of_its_systems()
    {
        var rig = new Rig
        {
            Id = "sill",
            Name = "Sill",
            MemoryMebibytes = 256,
            Monitor = new FeatureMatrix.Model.Monitor("Office", null, null, ["vga"]),
            PowerPlugs = ["drive-power"],
        };
        Os[] oses =
        [
            Os("windows-95", new OsLimit(OsLimitKind.Memory, 480, "", Manual), new OsLimit(OsLimitKind.Processors, 1, "", Manual)),
            Os("windows-98", new OsLimit(OsLimitKind.Memory, 512, "", Manual with { Grade = Grade.Hearsay })),
        ];
        var documents = FitInputs.Of(rig, new RigSlot { Bus = Slot("agp-1.0"), DocumentedVolts = [3.3], Speed = 2, Key = 3.3 }, oses, driverForced: true);
        Assert.Equal(
            new SlotDocuments { Slot = SlotKind.Agp, DocumentedSignalling = V33, Key = V33, HighestMode = 2 }, documents.Slot);
        Assert.Equal([new OsMemoryLimit("windows-95", 480), new OsMemoryLimit("windows-98", null)], documents.Oses);
        Assert.Equal([VideoConnector.Vga], documents.MonitorInputs!);
        Assert.Equal((256L, true), (documents.MemoryMebibytes, documents.DriverForced));
        Assert.Equal(["drive-power"], documents.PowerPlugs!);
    }

    private static Os Os(string id, params OsLimit[] limits) => new() { Id = id, Name = id, Limits = limits };
}
