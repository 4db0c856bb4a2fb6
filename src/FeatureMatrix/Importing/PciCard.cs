namespace FeatureMatrix.Importing;

/// <summary>The vendor and device numbers that name a chip's PCI or AGP function.</summary>
public sealed record PciDevice(ushort Vendor, ushort Device);

/// <summary>What one PCI or AGP card says of itself in its configuration space.</summary>
/// <param name="Device">Vendor and device of the chip.</param>
/// <param name="Subsystem">The board maker's numbers; null where nobody has read them.</param>
/// <param name="Revision">The chip's revision; null where nobody has read it.</param>
/// <param name="Class">The device class; null where nobody has read it.</param>
public sealed record PciCard(PciDevice Device, PciSubsystem? Subsystem = null, byte? Revision = null, PciClass? Class = null)
{
    /// <summary>The card that an ID names, or null where the ID covers more than one device.</summary>
    public static PciCard? From(HardwareId id) =>
        id is { Vendor: { } vendor, Device: { } device }
            ? new PciCard(new PciDevice(vendor, device), id.Subsystem, id.Revision, id.Class)
            : null;

    /// <summary>
    /// The hardware IDs that the PCI bus driver reports for the card, the most specific first; forms that need a part
    /// nobody has read are absent.
    /// Source: Windows driver documentation, "Identifiers for PCI Devices".
    /// </summary>
    public IEnumerable<HardwareId> HardwareIds()
    {
        var (vendor, device) = Device;
        if (Subsystem is not null && Revision is not null)
            yield return new HardwareId(vendor, device, Subsystem, Revision);
        if (Subsystem is not null)
            yield return new HardwareId(vendor, device, Subsystem);
        if (Revision is not null)
            yield return new HardwareId(vendor, device, null, Revision);
        yield return new HardwareId(vendor, device);
        foreach (var form in ClassForms())
            yield return new HardwareId(vendor, device, Class: form);
    }

    /// <summary>
    /// The compatible IDs of the card in order of decreasing compatibility, down to the bare class.
    /// Source: Windows driver documentation, "Identifiers for PCI Devices", "Reporting compatible IDs".
    /// </summary>
    public IEnumerable<HardwareId> CompatibleIds()
    {
        var (vendor, device) = Device;
        if (Revision is not null)
            yield return new HardwareId(vendor, device, null, Revision);
        yield return new HardwareId(vendor, device);
        foreach (var form in ClassForms())
            yield return new HardwareId(vendor, Class: form);
        yield return new HardwareId(vendor);
        foreach (var form in ClassForms())
            yield return new HardwareId(null, Class: form);
    }

    /// <summary>Whether an ID could be the card's own once the parts that nobody has read are known.</summary>
    public bool MayMatch(HardwareId id) =>
        (id.Vendor is null || id.Vendor == Device.Vendor)
        && (id.Device is null || id.Device == Device.Device)
        && (id.Subsystem is null || Subsystem is null || id.Subsystem == Subsystem)
        && (id.Revision is null || Revision is null || id.Revision == Revision)
        && (id.Class is null || Class is null || Covers(id.Class, Class));

    private static bool Covers(PciClass wider, PciClass card) =>
        wider.Base == card.Base && wider.Sub == card.Sub
        && (wider.Interface is null || card.Interface is null || wider.Interface == card.Interface);

    private IEnumerable<PciClass> ClassForms()
    {
        if (Class is null)
            yield break;
        if (Class.Interface is not null)
            yield return Class;
        yield return Class with { Interface = null };
    }
}
