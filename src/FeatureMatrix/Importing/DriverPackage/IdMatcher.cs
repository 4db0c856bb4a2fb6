namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>Compares one card's IDs with the IDs of models lines. The comparison of IDs ignores case.</summary>
internal sealed class IdMatcher
{
    private const int CompatibleInFile = 0x1000;
    private const int CompatibleOfCard = 0x2000;

    /// <summary>Positions past this one are out of the documented range of a score.</summary>
    private const int LastPosition = 0xF;

    private readonly PciCard _card;
    private readonly Dictionary<HardwareId, int> _hardware;
    private readonly Dictionary<HardwareId, int> _compatible;

    public IdMatcher(PciCard card)
    {
        _card = card;
        _hardware = Positions(card.HardwareIds());
        _compatible = Positions(card.CompatibleIds());
    }

    /// <summary>The ID of a line that names the card best, or null where none does.</summary>
    public (HardwareId Id, IdSpecificity Specificity, int Rank)? Closest(ListedDevice device)
    {
        (HardwareId Id, IdSpecificity Specificity, int Rank)? closest = null;
        Consider(device.HardwareId, -1);
        for (var i = 0; i < device.CompatibleIds.Count; i++)
            Consider(device.CompatibleIds[i], i);
        return closest;

        void Consider(ModelId? id, int position)
        {
            if (id?.Pci is { } pci && Rank(pci, position) is { } rank && (closest is null || rank < closest.Value.Rank))
                closest = (pci, SpecificityOf(pci), rank);
        }
    }

    /// <summary>What of a line could name the card, or name it better, if something unread or undefined were known.</summary>
    public IEnumerable<ListingDoubt> Doubts(ListedDevice device)
    {
        foreach (var id in device.Ids)
        {
            if (!id.Resolved)
                yield return new ListingDoubt(ListingDoubtKind.UnresolvedId, device.Line, id.Text);
            else if (id.Pci is { } pci && !_hardware.ContainsKey(pci) && !_compatible.ContainsKey(pci) && _card.MayMatch(pci))
                yield return new ListingDoubt(ListingDoubtKind.CardPartUnread, device.Line, id.Text);
        }
    }

    private int? Rank(HardwareId id, int compatiblePosition)
    {
        if (_hardware.TryGetValue(id, out var position))
            return position + (compatiblePosition < 0 ? 0 : CompatibleInFile);
        if (_compatible.TryGetValue(id, out position))
            return position + CompatibleOfCard
                + (compatiblePosition < 0 ? 0 : CompatibleInFile + (0x100 * Math.Min(compatiblePosition, LastPosition)));
        return null;
    }

    private static IdSpecificity SpecificityOf(HardwareId id) => id switch
    {
        { Device: null } or { Class: not null } => IdSpecificity.Class,
        { Subsystem: not null, Revision: not null } => IdSpecificity.BoardRevision,
        { Subsystem: not null } => IdSpecificity.Board,
        { Revision: not null } => IdSpecificity.DeviceRevision,
        _ => IdSpecificity.Device,
    };

    private static Dictionary<HardwareId, int> Positions(IEnumerable<HardwareId> ids)
    {
        var positions = new Dictionary<HardwareId, int>();
        foreach (var id in ids)
            positions.TryAdd(id, positions.Count);
        return positions;
    }
}
