using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>
/// One generation of Direct3D on one card. Generation 7 has several hardware devices (with and without transform and
/// lighting); what one of them has, a title can get.
/// </summary>
/// <param name="Number">7, 8 or 9.</param>
/// <param name="Devices">The devices that draw in hardware.</param>
/// <param name="Draw">The DirectDraw device of generation 7, which has capabilities of its own.</param>
internal sealed record Direct3DGeneration(int Number, IReadOnlyList<DumpSection> Devices, IReadOnlyList<DumpSection> Draw)
{
    private const uint HardwareRasterization = 0x80000;
    private const uint HardwareDevice = 1;

    /// <summary>All sections that speak of the card in this generation.</summary>
    public IEnumerable<DumpSection> Sections => Devices.Concat(Draw);

    /// <summary>
    /// Whether a device draws in hardware: by D3DDEVCAPS_HWRASTERIZATION in generation 7 (d3dcaps.h), by the device type
    /// D3DDEVTYPE_HAL that was asked for in 8 and 9.
    /// </summary>
    public static bool IsHardware(DumpSection section) => section.Kind switch
    {
        "direct3d7" => ((section.Field("D3DDEVICEDESC7", "dwDevCaps") ?? 0) & HardwareRasterization) != 0,
        "direct3d8" => (section.Field("D3DCAPS8", "DeviceType") ?? HardwareDevice) == HardwareDevice,
        _ => (section.Field("D3DCAPS9", "DeviceType") ?? HardwareDevice) == HardwareDevice,
    };

    private IEnumerable<DumpSection> SectionsFor(Direct3DSign sign) => Direct3DFormats.IsList(sign.Field) ? Devices : Sections;

    /// <summary>What this generation says of a feature: silent where it has no sign for it.</summary>
    public Claim Claim(Feature feature)
    {
        var signs = feature.Detection.Direct3D.Where(s => s.Generation == Number).ToLookup(s => s.Level.Length > 0);
        var claims = signs[false].SelectMany(sign => SectionsFor(sign).Select(section => Direct3DSigns.Read(sign, feature, section)))
            .Concat(Devices.Select(section => Direct3DSigns.ReadLevels([.. signs[true]], feature, section)));
        Claim? whole = null;
        foreach (var claim in claims.OfType<Claim>())
            whole = whole is null ? claim : whole.Or(claim);
        return whole ?? Measuring.Claim.Silent(feature);
    }
}
