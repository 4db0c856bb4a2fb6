using System.Numerics;

namespace FeatureMatrix.Deciding.Fit;

/// <summary>The speed a bus would run at with a card in it.</summary>
internal static class BusSpeed
{
    private const double AgpMegahertz = 200.0 / 3;
    private const double IsaMegahertz = 25.0 / 3;

    /// <summary>Null where a mode or clock is undocumented, or the two cannot run together.</summary>
    /// <param name="card">The card.</param>
    /// <param name="slot">The slot.</param>
    /// <param name="voltage">The one voltage in force.</param>
    public static BusInForce? Of(CardDocuments card, SlotDocuments slot, Signalling voltage) => slot.Slot switch
    {
        SlotKind.Agp => Agp(card, slot, voltage),
        SlotKind.Pci => Clocked(card, slot, voltage, fastest: voltage == Signalling.V33 ? 66 : 33),
        SlotKind.VesaLocal => Clocked(card, slot, voltage, fastest: 50),
        SlotKind.Isa => new BusInForce(SlotKind.Isa, voltage, null, IsaMegahertz, 2 * IsaMegahertz),
        SlotKind.Other => null,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The highest mode that both offer and the voltage can carry. Source: AGP3.0 Interface Specification, table 1.</summary>
    private static BusInForce? Agp(CardDocuments card, SlotDocuments slot, Signalling voltage)
    {
        int[] carried = voltage switch
        {
            Signalling.V33 => [1, 2],
            Signalling.V15 => [1, 2, 4],
            Signalling.V08 => [4, 8],
            _ => [],
        };
        var mode = carried.LastOrDefault(m => m <= card.HighestMode && m <= slot.HighestMode);
        return mode == 0 ? null : new BusInForce(SlotKind.Agp, voltage, mode, AgpMegahertz, 4 * mode * AgpMegahertz);
    }

    /// <summary>A 32-bit bus whose clock the slower of the two sets. PCI runs at 66 MHz with 3.3 V signalling only.</summary>
    private static BusInForce? Clocked(CardDocuments card, SlotDocuments slot, Signalling voltage, int fastest)
    {
        if (card.HighestClock is not { } ofCard || slot.Clock is not { } ofSlot || BitOperations.PopCount((uint)voltage) != 1)
            return null;
        var named = Math.Min(Math.Min(ofCard, ofSlot), fastest);
        // 33 and 66 are trade names of thirds of 100 and 200.
        var exact = named is 33 or 66 ? named / 33 * 100.0 / 3 : named;
        return new BusInForce(slot.Slot, voltage, null, exact, 4 * exact);
    }
}
