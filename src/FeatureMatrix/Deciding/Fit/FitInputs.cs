using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding.Fit;

/// <summary>
/// Takes from the model what documents state, in the words of the collection: buses by their ids in the vocabulary,
/// connectors as <c>vga</c>, <c>dvi</c>, <c>dvi-i</c>, <c>dvi-d</c>, <c>dvi-a</c>, <c>s-video</c> and <c>composite</c>.
/// </summary>
public static class FitInputs
{
    /// <summary>What a card's documents say. A bus of no known kind, and what is not recorded, decides nothing.</summary>
    public static CardDocuments Of(Card card)
    {
        ArgumentNullException.ThrowIfNull(card);
        if (card.Connector is not { } connector)
            return new CardDocuments { Slot = SlotKind.Other };
        var slot = KindOf(connector.Bus);
        return new CardDocuments
        {
            Slot = slot,
            DocumentedSignalling = Volts(connector.DocumentedVolts),
            Notches = connector.Notches.Count == 0 ? null : Volts(connector.Notches),
            Design = connector.Bus.Id switch
            {
                "agp-1.0" => AgpDesign.Agp10,
                "agp-2.0" => AgpDesign.Agp20,
                "agp-3.0" => AgpDesign.Agp30,
                _ => null,
            },
            HighestMode = slot == SlotKind.Agp ? connector.Speed : null,
            HighestClock = ClockOf(connector.Bus),
            PowerPlug = connector.PowerPlug,
            Outputs = Connectors(connector.Outputs),
        };
    }

    /// <summary>What a rig's documents say of one of its slots, for the systems to be run there.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="slot">One of its slots.</param>
    /// <param name="oses">The systems.</param>
    /// <param name="driverForced">True where a driver is to be forced onto the card.</param>
    public static RigDocuments Of(Rig rig, RigSlot slot, IEnumerable<Os> oses, bool driverForced)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(slot);
        ArgumentNullException.ThrowIfNull(oses);
        var kind = KindOf(slot.Bus);
        return new RigDocuments
        {
            Slot = new SlotDocuments
            {
                Slot = kind,
                DocumentedSignalling = Volts(slot.DocumentedVolts),
                // The model does not tell an open slot from one that nobody looked at.
                Key = slot.Key is { } key ? Volts([key]) : null,
                HighestMode = kind == SlotKind.Agp ? slot.Speed : null,
                Clock = ClockOf(slot.Bus),
            },
            PowerPlugs = rig.PowerPlugs,
            MonitorInputs = rig.Monitor is { } monitor ? Connectors(monitor.Inputs) : null,
            MemoryMebibytes = rig.MemoryMebibytes,
            Oses = [.. oses.Select(os => new OsMemoryLimit(os.Name, DocumentedMemory(os)))],
            DriverForced = driverForced,
        };
    }

    /// <summary>The lowest limit that a document gives; hearsay about a limit is no document.</summary>
    private static long? DocumentedMemory(Os os) => os.Limits
        .Where(l => l.Kind == OsLimitKind.Memory && l.Evidence.Grade >= Grade.Documented)
        .Min(l => l.Amount);

    private static SlotKind KindOf(Bus bus) => bus.Id switch
    {
        "isa" => SlotKind.Isa,
        "vlb" => SlotKind.VesaLocal,
        "pci" or "pci-66" => SlotKind.Pci,
        "agp-1.0" or "agp-2.0" or "agp-3.0" => SlotKind.Agp,
        _ => SlotKind.Other,
    };

    private static int? ClockOf(Bus bus) => bus.Id switch
    {
        "pci" => 33,
        "pci-66" => 66,
        _ => null,
    };

    /// <summary>A voltage that no bus signals at makes the whole statement useless, as if no document had been seen.</summary>
    private static Signalling Volts(IEnumerable<double> volts)
    {
        var all = Signalling.None;
        foreach (var volt in volts)
        {
            var one = volt switch
            {
                0.8 => Signalling.V08,
                1.5 => Signalling.V15,
                3.3 => Signalling.V33,
                5.0 => Signalling.V50,
                _ => Signalling.None,
            };
            if (one == Signalling.None)
                return Signalling.None;
            all |= one;
        }

        return all;
    }

    private static IReadOnlyList<VideoConnector>? Connectors(IReadOnlyList<string> words) => words.Count == 0
        ? null
        : [.. words.Select(w => w switch
        {
            "vga" => VideoConnector.Vga,
            "dvi" => VideoConnector.Dvi,
            "dvi-a" => VideoConnector.DviA,
            "dvi-d" => VideoConnector.DviD,
            "dvi-i" => VideoConnector.DviI,
            "s-video" => VideoConnector.SVideo,
            "composite" => VideoConnector.Composite,
            _ => VideoConnector.Other,
        })];
}
