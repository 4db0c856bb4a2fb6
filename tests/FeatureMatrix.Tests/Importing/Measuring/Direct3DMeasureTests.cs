using System.Text;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Model;
using Supplied = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Importing.Measuring;

public sealed class Direct3DMeasureTests
{
    private const string Seven = "section direct3d7 0 0\nfield D3DDEVICEDESC7.dwDevCaps 0x00080000\n";

    [Fact]
    public void A_set_bit_is_yes_and_a_clear_one_is_no()
    {
        var fog = Vocabularies.Flag("fog-table", Vocabularies.By(9, "RasterCaps", "D3DPRASTERCAPS_FOGTABLE", 0x100));
        Assert.Equal([Said(fog.At(1), Reach.At, Supplied.Yes, "D3DPRASTERCAPS_FOGTABLE")], Of(Nine("RasterCaps", 0x100), fog));
        Assert.Equal([Said(fog.At(1), Reach.At, Supplied.No, "no D3DPRASTERCAPS_FOGTABLE")], Of(Nine("RasterCaps", 0x200), fog));
    }

    [Fact]
    public void A_bit_that_is_a_limit_is_read_the_other_way_round()
    {
        // FACTS section 0, trap 1: D3DPTEXTURECAPS_POW2 set means power-of-two sizes only.
        var npot = Vocabularies.Flag("tex-npot", Vocabularies.By(9, "TextureCaps", "D3DPTEXTURECAPS_POW2", 0x2, inverted: true));
        Assert.Equal([Said(npot.At(1), Reach.At, Supplied.No, "D3DPTEXTURECAPS_POW2")], Of(Nine("TextureCaps", 0x2), npot));
        Assert.Equal([Said(npot.At(1), Reach.At, Supplied.Yes, "no D3DPTEXTURECAPS_POW2")], Of(Nine("TextureCaps", 0x1), npot));
    }

    [Fact]
    public void What_a_generation_has_no_sign_for_is_not_said()
    {
        // FACTS section 0, trap 3: Direct3D 9 cannot report colour keys.
        var key = Vocabularies.Flag("tex-colorkey", Vocabularies.By(7, "TextureCaps", "D3DPTEXTURECAPS_TRANSPARENCY", 0x8));
        Assert.Empty(Of(Nine("TextureCaps", 0), key));
        Assert.Equal(
            [Said(key.At(1), Reach.At, Supplied.Yes, "D3DPTEXTURECAPS_TRANSPARENCY")],
            Of(Seven + "field D3DDEVICEDESC7.dpcTriCaps.dwTextureCaps 0x00000008\n" + Nine("TextureCaps", 0), key));
    }

    [Fact]
    public void Generations_that_contradict_each_other_leave_it_open_and_are_reported()
    {
        var fog = Vocabularies.Flag("fog-table", new Detection
        {
            Direct3D = [new(8, "RasterCaps", "D3DPRASTERCAPS_FOGTABLE", 0x100, false), new(9, "RasterCaps", "D3DPRASTERCAPS_FOGTABLE", 0x100, false)],
        });
        var supply = Whole("section direct3d8 0\nfield D3DCAPS8.RasterCaps 0x00000100\n" + Nine("RasterCaps", 0), fog);
        Assert.Empty(supply.Statements);
        Assert.Equal(
            [new MeasuredDispute(fog, 1, 1, new(["D3DPRASTERCAPS_FOGTABLE", "no D3DPRASTERCAPS_FOGTABLE"]))],
            supply.Disputes);
    }

    [Fact]
    public void A_third_generation_does_not_settle_what_two_contradict_each_other_about()
    {
        var npot = Vocabularies.Flag("tex-npot", new Detection
        {
            Direct3D = [.. new[] { 7, 8, 9 }.Select(g => new Direct3DSign(g, "TextureCaps", "D3DPTEXTURECAPS_POW2", 0x2, true))],
        });
        var supply = Whole(
            Seven + "field D3DDEVICEDESC7.dpcTriCaps.dwTextureCaps 0x00000002\n"
            + "section direct3d8 0\nfield D3DCAPS8.TextureCaps 0x00000001\n" + Nine("TextureCaps", 1),
            npot);
        Assert.Empty(supply.Statements);
        Assert.Equal([new MeasuredDispute(npot, 1, 1, new(["D3DPTEXTURECAPS_POW2", "no D3DPTEXTURECAPS_POW2"]))], supply.Disputes);
    }

    [Fact]
    public void A_feature_without_what_it_implies_is_in_dispute_with_itself()
    {
        var palette = Vocabularies.Flag("tex-pal8", Vocabularies.By(9, "formats", "D3DFMT_P8", 41));
        var alpha = Vocabularies.Flag("tex-pal-alpha", Vocabularies.By(9, "TextureCaps", "D3DPTEXTURECAPS_ALPHAPALETTE", 0x80));
        alpha.Link([palette.At(1)]);
        var supply = Whole(Nine("TextureCaps", 0x80) + "formats texture 0x00000016 yes no 0x00000029\n", palette, alpha);
        Assert.Equal([Said(palette.At(1), Reach.At, Supplied.No, "no D3DFMT_P8")], supply.Statements);
        Assert.Equal([new MeasuredDispute(alpha, 1, 1, new(["D3DPTEXTURECAPS_ALPHAPALETTE", "no D3DFMT_P8"]))], supply.Disputes);
    }

    [Fact]
    public void Of_two_limits_the_lower_one_is_certain()
    {
        var size = Vocabularies.Ladder("tex-max-size", ["256", "512", "1024", "2048", "4096"], new Detection
        {
            Direct3D = [new(7, "MaxTextureWidth", "", 0, false), new(9, "MaxTextureWidth", "", 0, false)],
        });
        var supply = Whole(Seven + "field D3DDEVICEDESC7.dwMaxTextureWidth 0x00000200\n" + Nine("MaxTextureWidth", 0x400), size);
        string[] signs = ["D3DDEVICEDESC7.dwMaxTextureWidth = 512", "D3DCAPS9.MaxTextureWidth = 1024"];
        Assert.Equal(
            [Said(size.At(2), Reach.AtLeast, Supplied.Yes, signs), Said(size.At(4), Reach.At, Supplied.No, signs)],
            supply.Statements);
        Assert.Equal([new MeasuredDispute(size, 3, 3, new(signs))], supply.Disputes);
    }

    [Fact]
    public void A_limit_of_zero_that_old_drivers_leave_is_no_answer()
    {
        var size = Vocabularies.Ladder("tex-max-size", ["256", "512"], Vocabularies.By(9, "MaxTextureWidth"));
        Assert.Empty(Of(Nine("MaxTextureWidth", 0), size));
        var lights = Vocabularies.Ladder("tnl-lights", ["1", "8"], Vocabularies.By(9, "MaxActiveLights"));
        Assert.Equal([Said(lights.At(1), Reach.At, Supplied.No, "D3DCAPS9.MaxActiveLights = 0")], Of(Nine("MaxActiveLights", 0), lights));
    }

    [Theory]
    // D3DPS_VERSION in the low 16 bits (d3d9types.h:646). Version 2.0 with more slots than 96 is 2.x.
    [InlineData(0xFFFF0104, 96, 0, "ps-version 1.4 UpTo Yes")]
    [InlineData(0xFFFF0200, 96, 0, "ps-version 2.0 UpTo Yes")]
    [InlineData(0xFFFF0200, 512, 0, "ps-version 2.x UpTo Yes")]
    [InlineData(0xFFFF0200, 96, 4, "ps-version 2.x UpTo Yes")]
    [InlineData(0xFFFF0300, 512, 31, "ps-version 3.0 UpTo Yes")]
    [InlineData(0xFFFF0000, 0, 0, "ps-version 1.1 At No")]
    public void A_shader_version_takes_its_place_on_the_ladder(uint word, uint slots, uint caps, string expected)
    {
        var shader = Vocabularies.Ladder("ps-version", ["1.1", "1.4", "2.0", "2.x", "3.0"], Vocabularies.By(9, "PixelShaderVersion"));
        var said = Of(
            Nine("PixelShaderVersion", word) + $"field D3DCAPS9.PS20Caps.Caps 0x{caps:X8}\nfield D3DCAPS9.PS20Caps.NumInstructionSlots 0x{slots:X8}\n",
            shader);
        Assert.Equal([expected], said.Select(s => $"{s.Capability} {s.Reach} {s.Support}"));
    }

    [Fact]
    public void The_highest_version_that_direct3d_8_knows_says_nothing_of_later_ones()
    {
        var shader = Vocabularies.Ladder("ps-version", ["1.1", "1.3", "1.4", "2.0", "2.x", "3.0"], Vocabularies.By(8, "PixelShaderVersion"));
        Assert.Equal(
            [Said(shader.At("1.4")!.Value, Reach.AtLeast, Supplied.Yes, "D3DCAPS8.PixelShaderVersion = 1.4")],
            Of("section direct3d8 0\nfield D3DCAPS8.PixelShaderVersion 0xFFFF0104\n", shader));
        Assert.Equal(
            [Said(shader.At("1.3")!.Value, Reach.UpTo, Supplied.Yes, "D3DCAPS8.PixelShaderVersion = 1.3")],
            Of("section direct3d8 0\nfield D3DCAPS8.PixelShaderVersion 0xFFFF0103\n", shader));
    }

    [Fact]
    public void Formats_are_yes_no_or_not_asked()
    {
        var palette = Vocabularies.Flag("tex-pal8", Vocabularies.By(9, "formats", "D3DFMT_P8", 41));
        Assert.Equal([Said(palette.At(1), Reach.At, Supplied.Yes, "D3DFMT_P8")], Of(Formats("yes 0x00000029 no"), palette));
        Assert.Equal([Said(palette.At(1), Reach.At, Supplied.No, "no D3DFMT_P8")], Of(Formats("yes 0x00000015 no 0x00000029"), palette));
        Assert.Empty(Of(Formats("yes 0x00000015 no"), palette));

        var old = Vocabularies.Flag("tex-dxt1", Vocabularies.By(7, "formats", "DXT1", 0x31545844));
        const string format = "pixel-format texture 0x00000004 0x31545844 0x00000000 0x00000000 0x00000000 0x00000000 0x00000000\n";
        Assert.Equal([Said(old.At(1), Reach.At, Supplied.Yes, "DXT1")], Of(Seven + format, old));
        Assert.Empty(Of(Seven, old));
    }

    [Fact]
    public void A_device_that_draws_in_software_does_not_count()
    {
        var fog = Vocabularies.Flag("fog-table", Vocabularies.By(7, "RasterCaps", "D3DPRASTERCAPS_FOGTABLE", 0x100));
        Assert.Empty(Of(
            "section direct3d7 0 0\nfield D3DDEVICEDESC7.dwDevCaps 0x00000000\nfield D3DDEVICEDESC7.dpcTriCaps.dwRasterCaps 0x00000100\n",
            fog));
    }

    [Fact]
    public void What_one_of_two_hardware_devices_has_the_card_has()
    {
        var lighting = Vocabularies.Flag("tnl-hw", Vocabularies.By(7, "DevCaps", "D3DDEVCAPS_HWTRANSFORMANDLIGHT", 0x10000));
        Assert.Equal(
            [Said(lighting.At(1), Reach.At, Supplied.Yes, "D3DDEVCAPS_HWTRANSFORMANDLIGHT")],
            Of(Seven + "section direct3d7 0 1\nfield D3DDEVICEDESC7.dwDevCaps 0x00090000\n", lighting));
    }

    [Fact]
    public void The_drivers_level_shows_in_two_documented_signs()
    {
        Assert.Equal(["direct3d 7 AtLeast Yes"], Levels("section direct3d7 0 0\nfield D3DDEVICEDESC7.dwDevCaps 0x00088000\n"));
        Assert.Equal(
            ["direct3d 7 AtLeast Yes", "direct3d 9 At No"],
            Levels("section direct3d7 0 0\nfield D3DDEVICEDESC7.dwDevCaps 0x00088000\n" + Nine("MaxStreams", 0)));
        Assert.Equal(["direct3d 9 UpTo Yes"], Levels(Nine("MaxStreams", 8)));
        Assert.Empty(Levels(Seven));

        static IEnumerable<string> Levels(string sections) =>
            Of(sections).Select(s => $"{s.Capability} {s.Reach} {s.Support}");
    }

    [Fact]
    public void Set_bits_that_no_feature_knows_are_kept()
    {
        var fog = Vocabularies.Flag("fog-table", Vocabularies.By(9, "RasterCaps", "D3DPRASTERCAPS_FOGTABLE", 0x100));
        Assert.Equal(
            ["D3DCAPS9.RasterCaps D3DPRASTERCAPS_DITHER", "D3DCAPS9.RasterCaps 0x80000000"],
            Whole(Nine("RasterCaps", 0x80000101), fog).Unmapped);
    }

    private static string Nine(string field, uint word) => $"section direct3d9 0\nfield D3DCAPS9.{field} 0x{word:X8}\n";

    private static string Formats(string answer) => $"section direct3d9 0\nformats texture 0x00000016 {answer}\n";

    private static MeasuredStatement Said(Capability what, Reach reach, Supplied support, params string[] signs) =>
        new(Vocabularies.Direct3D, what, reach, support, new EquatableList<string>(signs));

    private static EquatableList<MeasuredStatement> Of(string sections, params Feature[] features) =>
        Whole(sections, features).Statements;

    private static MeasuredSupply Whole(string sections, params Feature[] features)
    {
        var dump = CapabilityDump.Parse(Encoding.ASCII.GetBytes($"capability-dump 1\n{sections}end\n"));
        Assert.Empty(dump.Faults);
        return MeasuredSupply.Of(dump, [Vocabularies.Direct3D, .. features]);
    }
}
