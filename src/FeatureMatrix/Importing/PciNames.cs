namespace FeatureMatrix.Importing;

/// <summary>What the PCI ID list calls a card; null where the list is silent, which says nothing about the card.</summary>
/// <param name="Vendor">The chip's maker.</param>
/// <param name="Device">The chip.</param>
/// <param name="SubsystemVendor">The board's maker.</param>
/// <param name="Subsystem">The board, listed under this very chip.</param>
/// <param name="BaseClass">The kind of device, coarsely.</param>
/// <param name="Class">The kind of device by subclass.</param>
/// <param name="ProgrammingInterface">The kind of device by programming interface.</param>
public sealed record PciNames(
    string? Vendor = null,
    string? Device = null,
    string? SubsystemVendor = null,
    string? Subsystem = null,
    string? BaseClass = null,
    string? Class = null,
    string? ProgrammingInterface = null)
{
    /// <summary>Looks a card up in one pass over the list; where the list names something twice the first name holds.</summary>
    public static PciNames Of(PciCard card, TextReader list)
    {
        ArgumentNullException.ThrowIfNull(card);
        var names = new PciNames();
        foreach (var entry in PciIdList.Read(list))
        {
            names = entry switch
            {
                PciVendorEntry e => names with
                {
                    Vendor = names.Vendor ?? (e.Vendor == card.Device.Vendor ? e.Name : null),
                    SubsystemVendor = names.SubsystemVendor ?? (e.Vendor == card.Subsystem?.Vendor ? e.Name : null),
                },
                PciDeviceEntry e when e.Device == card.Device => names with { Device = names.Device ?? e.Name },
                PciSubsystemEntry e when e.Device == card.Device && e.Subsystem == card.Subsystem =>
                    names with { Subsystem = names.Subsystem ?? e.Name },
                PciBaseClassEntry e when e.Base == card.Class?.Base => names with { BaseClass = names.BaseClass ?? e.Name },
                PciClassEntry { Class.Interface: null } e when card.Class is { } c && e.Class == c with { Interface = null } =>
                    names with { Class = names.Class ?? e.Name },
                PciClassEntry e when e.Class == card.Class =>
                    names with { ProgrammingInterface = names.ProgrammingInterface ?? e.Name },
                _ => names,
            };
        }

        return names;
    }
}
