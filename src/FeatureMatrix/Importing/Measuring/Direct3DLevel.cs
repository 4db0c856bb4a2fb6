using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>
/// The level of the driver itself, which may be lower than the runtime's. Two signs are documented: the bit
/// D3DDEVCAPS_DRAWPRIMITIVES2EX marks a driver for DirectX 7 or later, and D3DCAPS9.MaxStreams is 0 for a driver that is
/// not for Direct3D 9. Source: Microsoft's reference of D3DCAPS9 (MaxStreams) and of SupportsDrawPrimitives2Ex.
/// </summary>
internal static class Direct3DLevel
{
    private const uint DrawPrimitives2Ex = 0x8000;

    public static IEnumerable<Claim> Claims(Feature api, IEnumerable<Direct3DGeneration> generations) =>
        generations.SelectMany(g => g.Devices.Select(d => (g.Number, Section: d))).Select(d => d.Number switch
        {
            7 => Seven(api, d.Section.Field("D3DDEVICEDESC7", "dwDevCaps")),
            8 => Seven(api, d.Section.Field("D3DCAPS8", "DevCaps")),
            _ => Nine(api, d.Section.Field("D3DCAPS9", "MaxStreams")),
        }).OfType<Claim>();

    private static Claim? Seven(Feature api, uint? word) =>
        word is { } bits && (bits & DrawPrimitives2Ex) != 0 && api.At("7") is { } seven
            ? Claim.AtLeast(api, seven.Step, "D3DDEVCAPS_DRAWPRIMITIVES2EX")
            : null;

    private static Claim? Nine(Feature api, uint? streams) => (streams, api.At("9")) switch
    {
        (null, _) or (_, null) => null,
        (0, { } nine) => new Claim(0, nine.Step, new(["D3DCAPS9.MaxStreams = 0"])),
        (_, { } nine) => Claim.AtLeast(api, nine.Step, $"D3DCAPS9.MaxStreams = {streams}"),
    };
}
