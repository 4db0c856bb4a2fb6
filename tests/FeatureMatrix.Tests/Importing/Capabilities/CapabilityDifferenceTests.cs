using System.Text;
using FeatureMatrix.Importing.Capabilities;

namespace FeatureMatrix.Tests.Importing.Capabilities;

public sealed class CapabilityDifferenceTests
{
    [Fact]
    public void Gains_losses_limits_formats_and_extensions_are_told_apart()
    {
        Assert.Equal(
            [
                new FlagChange("direct3d8 0", "D3DCAPS8.RasterCaps", 0x100, "D3DPRASTERCAPS_FOGTABLE", false, false),
                new FlagChange("direct3d8 0", "D3DCAPS8.RasterCaps", 0x40000, "D3DPRASTERCAPS_WBUFFER", true, true),
                new FormatChange("direct3d8 0", "texture", "D3DFMT_P8 on D3DFMT_R5G6B5", false),
                new FormatChange("direct3d8 0", "samples", "2 on D3DFMT_R5G6B5", true),
                new LimitChange("opengl 0", "GL_MAX_TEXTURE_UNITS", MemberKind.Number, 2, 4),
                new ExtensionChange("opengl 0", "gl", "GL_EXT_fog_coord", false),
                new ExtensionChange("opengl 0", "gl", "GL_ARB_multitexture", true),
            ],
            Between(
                """
                section direct3d8 0
                field D3DCAPS8.RasterCaps 0x00000101
                formats texture 0x00000017 yes 0x00000029 no
                samples 0x00000017 yes no 2 4
                section opengl 0
                extension gl "GL_EXT_fog_coord"
                limit GL_MAX_TEXTURE_UNITS 2
                """,
                """
                section direct3d8 0
                field D3DCAPS8.RasterCaps 0x00040001
                formats texture 0x00000017 yes no 0x00000029
                samples 0x00000017 yes 2 no 4
                section opengl 0
                extension gl "GL_ARB_multitexture"
                limit GL_MAX_TEXTURE_UNITS 4
                """));
    }

    [Fact]
    public void A_restriction_that_appears_is_no_gain()
    {
        Assert.Equal(
            [new FlagChange("direct3d8 0", "D3DCAPS8.TextureCaps", 0x2, "D3DPTEXTURECAPS_POW2", true, false)],
            Between(
                "section direct3d8 0\nfield D3DCAPS8.TextureCaps 0x00000001",
                "section direct3d8 0\nfield D3DCAPS8.TextureCaps 0x00000003"));
    }

    [Fact]
    public void What_one_dump_does_not_speak_of_is_neither_gained_nor_lost()
    {
        Assert.Equal(
            [
                new OneSided("direct3d8 0", "D3DCAPS8.RasterCaps", false),
                new OneSided("opengl 0", "", false),
                new OneSided("direct3d9 0", "", true),
            ],
            Between(
                "section direct3d8 0\nfield D3DCAPS8.RasterCaps 0x00000001\nformats texture 0x00000017 yes 0x00000029 no\nsection opengl 0",
                "section direct3d8 0\nsection direct3d9 0"));
    }

    [Fact]
    public void A_device_keeps_its_identity_when_another_is_listed_before_it()
    {
        Assert.Equal(
            [new OneSided("direct3d7 0 0", "", true)],
            Between(
                """
                section direct3d7 0 0
                field D3DDEVICEDESC7.dwDevCaps 0x00080000
                field D3DDEVICEDESC7.deviceGUID.Data1 0x11111111
                """,
                """
                section direct3d7 0 0
                field D3DDEVICEDESC7.dwDevCaps 0x00090000
                field D3DDEVICEDESC7.deviceGUID.Data1 0x22222222
                section direct3d7 0 1
                field D3DDEVICEDESC7.dwDevCaps 0x00080000
                field D3DDEVICEDESC7.deviceGUID.Data1 0x11111111
                """));
    }

    [Fact]
    public void Free_memory_is_no_difference_and_a_direct3d_7_list_is_whole()
    {
        Assert.Equal(
            [new FormatChange("direct3d7 0 0", "texture", "0x00000020 0x00000000 8 0x00000000 0x00000000 0x00000000 0x00000000", false)],
            Between(
                """
                section directdraw 0
                field DDCAPS.dwVidMemFree 0x00100000
                section direct3d7 0 0
                pixel-format texture 0x00000040 0x00000000 0x00000010 0x0000F800 0x000007E0 0x0000001F 0x00000000
                pixel-format texture 0x00000020 0x00000000 0x00000008 0x00000000 0x00000000 0x00000000 0x00000000
                """,
                """
                section directdraw 0
                field DDCAPS.dwVidMemFree 0x00200000
                section direct3d7 0 0
                pixel-format texture 0x00000040 0x00000000 0x00000010 0x0000F800 0x000007E0 0x0000001F 0x00000000
                """));
    }

    private static IReadOnlyList<CapabilityChange> Between(string first, string second)
    {
        return CapabilityDifference.Between(Parse(first), Parse(second));

        static CapabilityDump Parse(string sections)
        {
            var dump = CapabilityDump.Parse(Encoding.ASCII.GetBytes($"capability-dump 1\n{sections.ReplaceLineEndings("\n")}\nend\n"));
            Assert.Empty(dump.Faults);
            return dump;
        }
    }
}
