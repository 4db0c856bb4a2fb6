using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>
/// Direct3D signs in the vocabulary against the public headers of their generation (Debian package mingw-w64-common:
/// /usr/share/mingw-w64/include), read as plain text.
/// </summary>
public sealed class Direct3DSigns
{
    /// <summary>Lists that the interfaces enumerate or answer for item by item; no structure holds them.</summary>
    private static readonly string[] Lists = ["formats", "target-formats", "depth-formats", "depth-texture-formats", "samples", "queries"];

    /// <summary>Which field a constant belongs to, by its prefix in the headers.</summary>
    private static readonly (string Prefix, string[] Fields)[] Homes =
    [
        ("D3DPRASTERCAPS_", ["RasterCaps"]), ("D3DPTEXTURECAPS_", ["TextureCaps"]), ("D3DPTFILTERCAPS_", ["TextureFilterCaps"]),
        ("D3DPTADDRESSCAPS_", ["TextureAddressCaps"]), ("D3DPBLENDCAPS_", ["SrcBlendCaps", "DestBlendCaps"]),
        ("D3DPCMPCAPS_", ["AlphaCmpCaps"]), ("D3DPSHADECAPS_", ["ShadeCaps"]), ("D3DPMISCCAPS_", ["PrimitiveMiscCaps"]),
        ("D3DSTENCILCAPS_", ["StencilCaps"]), ("D3DTEXOPCAPS_", ["TextureOpCaps"]), ("D3DDEVCAPS_", ["DevCaps"]),
        ("D3DFVFCAPS_", ["FVFCaps"]), ("D3DLINECAPS_", ["LineCaps"]), ("D3DCAPS2_", ["Caps2"]), ("D3DCAPS_", ["Caps"]),
        ("D3DPRESENT_INTERVAL_", ["PresentationIntervals"]), ("D3DFMT_", Lists[..4]), ("D3DQUERYTYPE_", ["queries"]),
        ("DDPF_", ["formats", "depth-formats"]), ("DDBD_", ["DeviceRenderBitDepth"]), ("DDPCAPS_", ["PalCaps"]), ("DDSCAPS_", ["ddsCaps"]),
        ("DDCAPS2_", ["Caps2"]), ("DDCAPS_", ["Caps"]), ("DXT", ["formats"]),
    ];

    private static readonly Lazy<Dictionary<int, PublicHeader[]>> Read = new(() => new()
    {
        [7] = [.. new[] { "d3dcaps.h", "d3dtypes.h", "ddraw.h" }.Select(PublicHeader.Read)],
        [8] = [.. new[] { "d3d8caps.h", "d3d8types.h" }.Select(PublicHeader.Read)],
        [9] = [.. new[] { "d3d9caps.h", "d3d9types.h" }.Select(PublicHeader.Read)],
    });

    private static Dictionary<int, PublicHeader[]> Headers => Read.Value;

    private static IReadOnlyList<(Feature Feature, Direct3DSign Sign)> Signs =>
        [.. VocabularyFixture.Features.SelectMany(f => f.Detection.Direct3D.Select(sign => (f, sign)))];

    [Fact]
    public void Headers_are_read_right()
    {
        // D3DCAPS9 and D3DCAPS8 are known to have 69 and 53 members (FACTS B1); the VB reference of DirectX 8.1 gives
        // D3DPRASTERCAPS_WFOG as decimal 1048576.
        Assert.Equal(69, Headers[9][0].Members("_D3DCAPS9").Count);
        Assert.Equal(53, Headers[8][0].Members("_D3DCAPS8").Count);
        Assert.Equal(1048576u, Headers[8][0].Constant("D3DPRASTERCAPS_WFOG"));
        Assert.Equal(0x31545844u, PublicHeader.FourCc("DXT1"));
        Assert.Null(Headers[9][0].Constant("D3DPRASTERCAPS_ZBIAS"));
    }

    [Fact]
    public void Every_constant_has_its_header_s_value()
    {
        var constants = Signs.Where(s => s.Sign.Constant.Length > 0).ToList();
        Assert.True(constants.Count >= 150, $"only {constants.Count} constants were found in the vocabulary");
        Assert.Empty(constants
            .Where(s => ValueInHeader(s.Sign) != s.Sign.Value)
            .Select(s => $"{s.Feature.Id} {s.Sign.Generation} {s.Sign.Constant}: 0x{s.Sign.Value:X}, header {ValueInHeader(s.Sign)?.ToString("X") ?? "has none"}"));
    }

    [Fact]
    public void Every_field_is_in_the_structure_of_its_generation()
    {
        var fields = new Dictionary<int, IReadOnlyList<string>>
        {
            // In the older structures the vocabulary leaves out the prefix that tells the type: dwRasterCaps is RasterCaps.
            [7] =
            [
                .. Headers[7][0].Members("_D3dPrimCaps").Concat(Headers[7][0].Members("_D3DDeviceDesc7")).Concat(Headers[7][2].Members("_DDCAPS_DX7"))
                    .Select(m => m.StartsWith("dw", StringComparison.Ordinal) ? m[2..] : m.StartsWith('w') ? m[1..] : m),
            ],
            [8] = Headers[8][0].Members("_D3DCAPS8"),
            [9] = Headers[9][0].Members("_D3DCAPS9"),
        };
        Assert.Empty(Signs
            .Where(s => !Lists.Contains(s.Sign.Field, StringComparer.Ordinal) && !fields[s.Sign.Generation].Contains(s.Sign.Field, StringComparer.Ordinal))
            .Select(s => $"{s.Feature.Id} {s.Sign.Generation} {s.Sign.Field}"));
    }

    [Fact]
    public void Every_constant_is_read_from_the_field_it_belongs_to() =>
        Assert.Empty(Signs
            .Where(s => s.Sign.Constant.Length > 0)
            .Where(s => !Homes.First(h => s.Sign.Constant.StartsWith(h.Prefix, StringComparison.Ordinal)).Fields
                .Contains(s.Sign.Field, StringComparer.Ordinal))
            .Select(s => $"{s.Feature.Id} {s.Sign.Field} {s.Sign.Constant}"));

    [Fact]
    public void A_number_is_read_only_for_a_ladder() =>
        Assert.Empty(Signs.Where(s => s.Sign.Constant.Length == 0 && (s.Sign.Value != 0 || !s.Feature.HasLevels)).Select(s => s.Feature.Id));

    [Fact]
    public void Limit_bits_are_inverted_and_no_others() // FACTS trap 1
    {
        Assert.Equal(
            ["tex-nonsquare D3DPTEXTURECAPS_SQUAREONLY", "tex-npot D3DPTEXTURECAPS_POW2"],
            Signs.Where(s => s.Sign.Inverted).Select(s => $"{s.Feature.Id} {s.Sign.Constant}").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

        // The third limit bit in use names the constraint itself, so that having the feature is the worse state.
        Assert.Equal(
            ["mem-separate"],
            Signs.Where(s => s.Sign.Constant == "D3DDEVCAPS_SEPARATETEXTUREMEMORIES").Select(s => s.Feature.Id).Distinct(StringComparer.Ordinal));
    }

    [Fact]
    public void A_bit_that_was_renamed_is_listed_under_both_names() // FACTS trap 2
    {
        Assert.Equal(
            [(7, "D3DPRASTERCAPS_ZBIAS", 0x4000u), (8, "D3DPRASTERCAPS_ZBIAS", 0x4000u), (9, "D3DPRASTERCAPS_DEPTHBIAS", 0x4000000u)],
            VocabularyFixture.Feature("depth-bias").Detection.Direct3D.Select(s => (s.Generation, s.Constant, s.Value)));
    }

    private static uint? ValueInHeader(Direct3DSign sign) =>
        sign is { Generation: 7, Field: "formats", Constant.Length: 4 } && sign.Constant.StartsWith("DXT", StringComparison.Ordinal)
            ? PublicHeader.FourCc(sign.Constant)
            : Headers[sign.Generation].Select(header => header.Constant(sign.Constant)).FirstOrDefault(value => value is not null);
}
