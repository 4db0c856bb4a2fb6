using static FeatureMatrix.Deciding.Fit.FitReason;

namespace FeatureMatrix.Deciding.Fit;

/// <summary>Kind of slot, key and signalling voltage.</summary>
internal static class SlotFit
{
    private const Signalling BothAgpNotches = Signalling.V33 | Signalling.V15;

    public static FitFinding Of(CardDocuments card, SlotDocuments slot)
    {
        var (verdict, reason) = Decide(card, slot);
        return new FitFinding(FitAspect.Slot, verdict, reason);
    }

    /// <summary>What rules the card out comes first: a doubt never softens it.</summary>
    private static (FitVerdict Verdict, FitReason Reason) Decide(CardDocuments card, SlotDocuments slot)
    {
        var (ofCard, ofSlot) = (card.DocumentedSignalling, slot.DocumentedSignalling);
        if (card.Slot != slot.Slot)
        {
            var unsure = card.Slot == SlotKind.Other || slot.Slot == SlotKind.Other;
            return (unsure ? FitVerdict.NotKnown : FitVerdict.DoNotInsert, new SlotsDiffer(card.Slot, slot.Slot));
        }

        if (card.Slot == SlotKind.Other)
            return (FitVerdict.NotKnown, new NoRules());
        if (slot.Key is { } key and not Signalling.None && card.Notches is { } notches && (notches & key) == Signalling.None)
            return (FitVerdict.DoNotInsert, new KeyForbids(key, notches));
        if (ofCard == Signalling.None || ofSlot == Signalling.None)
            return (FitVerdict.NotKnown, new VoltageUndocumented(ofCard == Signalling.None, ofSlot == Signalling.None));
        var cell = card.Slot == SlotKind.Agp ? AgpTable.Cell(ofSlot, ofCard) : null;
        if (cell == AgpCell.Note1)
            return (FitVerdict.DoNotInsert, new Agp30CardOnOlderBoard());
        if (cell == AgpCell.Note2)
            return (FitVerdict.DoNotInsert, new OlderCardOnAgp30Board());
        if ((ofCard & ofSlot) == Signalling.None)
            return (FitVerdict.DoNotInsert, new NoCommonVoltage(ofCard, ofSlot));
        if ((DoubtAboutEdge(card) ?? DoubtAboutKey(slot)) is { } doubt)
            return (FitVerdict.NotKnown, doubt);
        return card.Slot == SlotKind.Agp
            ? DecideAgp(ofCard, ofSlot, cell)
            : (FitVerdict.DocumentsAgree, new VoltageAgrees(ofCard & ofSlot));
    }

    private static (FitVerdict Verdict, FitReason Reason) DecideAgp(Signalling card, Signalling slot, AgpCell? cell)
    {
        var believed = cell switch
        {
            AgpCell.At33 => Signalling.V33,
            AgpCell.At15 => Signalling.V15,
            AgpCell.At08 => Signalling.V08,
            AgpCell.Precluded or AgpCell.Note1 or AgpCell.Note2 or null => Signalling.None,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        if (believed == Signalling.None)
            return (FitVerdict.NotKnown, new NoSuchKind(card, slot));
        return AgpTable.NeedsNoTable(slot, card)
            ? (FitVerdict.DocumentsAgree, new VoltageAgrees(believed))
            : (FitVerdict.NotKnown, new TableReconstructed(believed));
    }

    /// <summary>
    /// Notches alone prove nothing: some early 3.3 V cards carried both and so fit 1.5 V boards, with damage reported.
    /// </summary>
    private static FitReason? DoubtAboutEdge(CardDocuments card)
    {
        if (card.Notches is not { } notches)
            return null;
        if (card.Slot == SlotKind.Agp && notches == BothAgpNotches && card.Design == AgpDesign.Agp10)
            return new BothNotchesOnEarlyCard();
        var expected = card.Slot switch
        {
            SlotKind.Agp => NotchesOf(card.DocumentedSignalling),
            SlotKind.Pci => card.DocumentedSignalling,
            SlotKind.Isa or SlotKind.VesaLocal or SlotKind.Other => notches, // no keys on these
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return notches == expected ? null : new NotchesContradictDocuments(notches, card.DocumentedSignalling);
    }

    /// <summary>Open slots that signal at 1.5 V alone were built; a key that is not the documented voltage's own is suspect.</summary>
    private static FitReason? DoubtAboutKey(SlotDocuments slot)
    {
        if (slot.Key is not { } key)
            return null;
        var expected = slot.Slot switch
        {
            SlotKind.Agp => NotchesOf(slot.DocumentedSignalling) is var keys && keys == BothAgpNotches ? Signalling.None : keys,
            SlotKind.Pci => slot.DocumentedSignalling,
            SlotKind.Isa or SlotKind.VesaLocal or SlotKind.Other => key, // no keys on these
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return key == expected ? null : new KeyContradictsDocuments(key, slot.DocumentedSignalling);
    }

    /// <summary>AGP 3.0 signals at 0.8 V through the 1.5 V key. Source: AGP3.0 Interface Specification, table 16, page 40.</summary>
    private static Signalling NotchesOf(Signalling agp) =>
        (agp & Signalling.V33) | ((agp & (Signalling.V15 | Signalling.V08)) != Signalling.None ? Signalling.V15 : Signalling.None);
}
