using System.Globalization;
using System.Text;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Tests.Importing.Measuring;
using FeatureMatrix.Tests.Support;
using Supplied = FeatureMatrix.Model.Support;

[assembly: AssemblyFixture(typeof(FeatureMatrix.Tests.Importing.Capabilities.RealDump))]

namespace FeatureMatrix.Tests.Importing.Capabilities;

/// <summary>A dump that the 64-bit program writes under Wine on Mesa's software renderer, once for all tests.</summary>
public sealed class RealDump : IDisposable
{
    private readonly ProbeBuild _build = new();
    private readonly Lock _lock = new();
    private byte[]? _bytes;

    public byte[] Bytes()
    {
        lock (_lock)
            return _bytes ??= Made();
    }

    public void Dispose() => _build.Dispose();

    private byte[] Made()
    {
        var program = _build.X64;
        External.Command("wine", "wine");
        var file = Path.Combine(_build.Folder, "dump.txt");
        VirtualDisplay.Run(
            ["wine", program, "Z:" + file.Replace('/', '\\')],
            ("WINEPREFIX", Path.Combine(_build.Folder, "prefix")),
            ("WINEDEBUG", "-all"));
        return File.ReadAllBytes(file);
    }
}

/// <summary>The dump against an independent reading of its raw words: plain text search, and bits by hand.</summary>
public sealed class RealDumpTests(RealDump dump)
{
    [Fact]
    public void The_whole_file_is_understood()
    {
        var parsed = CapabilityDump.Parse(dump.Bytes());
        Assert.Empty(parsed.Faults);
        Assert.True(parsed.IsComplete);
        Assert.Equal("FeatureMatrix probe 1, x86-64", parsed.MadeBy);
        Assert.Equal(Lines().Count(l => l.StartsWith("section ", StringComparison.Ordinal)), parsed.Sections.Count);
        // Each line but the first, the maker's, the sections' and the last is an entry.
        Assert.Equal(Lines().Count - 3 - parsed.Sections.Count, parsed.Sections.Sum(s => s.Entries.Count));
        Assert.All(
            new[] { "system", "directdraw", "direct3d7", "direct3d8", "direct3d9", "opengl" },
            kind => Assert.NotEmpty(parsed.SectionsOf(kind)));
    }

    [Theory]
    [InlineData("direct3d9", "D3DCAPS9")]
    [InlineData("direct3d8", "D3DCAPS8")]
    [InlineData("direct3d7", "D3DDEVICEDESC7")]
    [InlineData("directdraw", "DDCAPS")]
    public void Every_member_of_a_structure_is_there_once(string kind, string structure)
    {
        var members = CapabilityStructures.Find(structure)!;
        foreach (var section in CapabilityDump.Parse(dump.Bytes()).SectionsOf(kind))
        {
            Assert.Equal(
                members.Members.Select(m => (m.Name, m.Bytes)),
                section.Entries.OfType<FieldEntry>().Where(f => f.Structure == structure).Select(f => (f.Field, f.Bytes)));
            Assert.Equal((uint)members.Sizes[0], Assert.Single(section.Entries.OfType<SizeEntry>()).Bytes);
        }
    }

    [Theory]
    // Bit values as FACTS table B2 gives them; the word is taken from the text of the file.
    [InlineData("direct3d9 0", "D3DCAPS9.RasterCaps", "D3DPRASTERCAPS_FOGTABLE", 0x100)]
    [InlineData("direct3d9 0", "D3DCAPS9.RasterCaps", "D3DPRASTERCAPS_WBUFFER", 0x40000)]
    [InlineData("direct3d9 0", "D3DCAPS9.RasterCaps", "D3DPRASTERCAPS_ANISOTROPY", 0x20000)]
    [InlineData("direct3d9 0", "D3DCAPS9.TextureCaps", "D3DPTEXTURECAPS_CUBEMAP", 0x800)]
    [InlineData("direct3d9 0", "D3DCAPS9.TextureCaps", "D3DPTEXTURECAPS_POW2", 0x2)]
    [InlineData("direct3d9 0", "D3DCAPS9.StencilCaps", "D3DSTENCILCAPS_TWOSIDED", 0x100)]
    [InlineData("direct3d8 0", "D3DCAPS8.TextureOpCaps", "D3DTEXOPCAPS_DOTPRODUCT3", 0x800000)]
    [InlineData("direct3d8 0", "D3DCAPS8.DevCaps", "D3DDEVCAPS_HWTRANSFORMANDLIGHT", 0x10000)]
    [InlineData("direct3d7 0 0", "D3DDEVICEDESC7.dpcTriCaps.dwTextureCaps", "D3DPTEXTURECAPS_TRANSPARENCY", 0x8)]
    [InlineData("directdraw 0", "DDCAPS.dwCaps", "DDCAPS_3D", 0x1)]
    public void A_decoded_bit_is_the_bit_of_the_raw_word(string section, string field, string name, uint bit)
    {
        var word = RawWord(section, field);
        var decoded = CapabilityDecoder.Decode(CapabilityDump.Parse(dump.Bytes())).OfType<CapabilityFlag>()
            .Single(f => Named(f.Section) == section && $"{f.Structure.Name}.{f.Member.Name}" == field && f.Constant?.Name == name);
        Assert.Equal((word & bit) != 0, decoded.IsSet);
    }

    [Fact]
    public void Limits_are_the_numbers_of_the_raw_words()
    {
        var limits = CapabilityDecoder.Decode(CapabilityDump.Parse(dump.Bytes())).OfType<CapabilityLimit>()
            .Where(l => Named(l.Section) == "direct3d9 0").ToDictionary(l => l.Name);
        Assert.Equal(RawWord("direct3d9 0", "D3DCAPS9.MaxTextureWidth"), limits["D3DCAPS9.MaxTextureWidth"].Amount);
        Assert.Equal(RawWord("direct3d9 0", "D3DCAPS9.MaxSimultaneousTextures"), limits["D3DCAPS9.MaxSimultaneousTextures"].Amount);
        // D3DPS_VERSION(major, minor) is 0xFFFF0000 | major << 8 | minor (d3d9types.h:646).
        var version = RawWord("direct3d9 0", "D3DCAPS9.PixelShaderVersion");
        var (major, minor) = limits["D3DCAPS9.PixelShaderVersion"].ShaderVersion;
        Assert.Equal(version, 0xFFFF0000u | (uint)major << 8 | (uint)minor);
        Assert.InRange(major, 1, 3);
    }

    [Fact]
    public void The_opengl_part_names_a_software_renderer()
    {
        var section = Assert.Single(CapabilityDump.Parse(dump.Bytes()).SectionsOf("opengl"));
        var report = OpenGlDumpSection.ToReport(section);
        Assert.Equal(new SoftwareSign("renderer", "llvmpipe"), report.Software);
        var names = Lines().Where(l => l.StartsWith("extension gl ", StringComparison.Ordinal)).Select(l => l.Split('"')[1]).ToList();
        Assert.Equal(names, report.Compatibility!.Extensions);
        Assert.Contains("GL_ARB_multitexture", names);
        // The driver's own string: the names, a blank after each.
        Assert.Equal(names.Sum(n => n.Length + 1), report.Compatibility.ExtensionStringLength, 1.0);
    }

    [Fact]
    public void One_cleared_bit_one_lower_limit_and_one_lost_extension_are_the_whole_difference()
    {
        var first = CapabilityDump.Parse(dump.Bytes());
        var raw = RawWord("direct3d9 0", "D3DCAPS9.RasterCaps");
        var width = RawWord("direct3d9 0", "D3DCAPS9.MaxTextureWidth");
        Assert.True((raw & 0x100) != 0, "Mesa's software renderer was seen to have table fog");
        var text = Encoding.ASCII.GetString(dump.Bytes())
            .Replace($"D3DCAPS9.RasterCaps 0x{raw:X8}", $"D3DCAPS9.RasterCaps 0x{raw & ~0x100u:X8}", StringComparison.Ordinal)
            .Replace($"D3DCAPS9.MaxTextureWidth 0x{width:X8}", "D3DCAPS9.MaxTextureWidth 0x00000400", StringComparison.Ordinal)
            .Replace("extension gl \"GL_EXT_fog_coord\"\r\n", "", StringComparison.Ordinal);
        var second = CapabilityDump.Parse(Encoding.ASCII.GetBytes(text));

        Assert.Equal(
            [
                new FlagChange("direct3d9 0", "D3DCAPS9.RasterCaps", 0x100, "D3DPRASTERCAPS_FOGTABLE", false, false),
                new LimitChange("direct3d9 0", "D3DCAPS9.MaxTextureWidth", MemberKind.Number, width, 1024),
                new ExtensionChange("opengl 0", "gl", "GL_EXT_fog_coord", false),
            ],
            CapabilityDifference.Between(first, second));
    }

    [Theory]
    // The features that follow, by the vocabulary's signs: each from the raw word of the file and the bit of FACTS table B2.
    [InlineData("fog-w", "direct3d9 0", "D3DCAPS9.RasterCaps", 0x100000, false)]
    [InlineData("tex-cube", "direct3d9 0", "D3DCAPS9.TextureCaps", 0x800, false)]
    [InlineData("bump-dot3", "direct3d9 0", "D3DCAPS9.TextureOpCaps", 0x800000, false)]
    [InlineData("tex-npot", "direct3d9 0", "D3DCAPS9.TextureCaps", 0x2, true)]
    [InlineData("stencil-two-sided", "direct3d9 0", "D3DCAPS9.StencilCaps", 0x100, false)]
    [InlineData("tex-colorkey", "direct3d7 0 0", "D3DDEVICEDESC7.dpcTriCaps.dwTextureCaps", 0x8, false)]
    [InlineData("npatch", "direct3d9 0", "D3DCAPS9.DevCaps", 0x1000000, false)]
    public void A_feature_is_what_the_raw_word_says(string id, string section, string field, uint bit, bool inverted)
    {
        var supply = MeasuredSupply.Of(CapabilityDump.Parse(dump.Bytes()), Vocabularies.Ours());
        var expected = (RawWord(section, field) & bit) != 0 != inverted ? Supplied.Yes : Supplied.No;
        if (supply.Disputes.Any(d => d.Feature.Id == id))
            Assert.DoesNotContain(supply.Statements, s => s.Capability.Feature.Id == id);
        else
            Assert.Equal(expected, Assert.Single(supply.Statements, s => s.Capability.Feature.Id == id).Support);
    }

    [Fact]
    public void Stencil_and_depth_bits_are_what_the_accepted_formats_hold()
    {
        // D3DFMT_D24S8 0x4B, D3DFMT_D32 0x47 (d3d9types.h): the line is cut at its own words.
        var line = Lines().SkipWhile(l => l != "section direct3d9 0").First(l => l.StartsWith("formats depth ", StringComparison.Ordinal));
        var (yes, no) = (line.Split(" no")[0], line.Split(" no")[1]);
        Assert.Contains("0x0000004B", yes, StringComparison.Ordinal);
        var supply = MeasuredSupply.Of(CapabilityDump.Parse(dump.Bytes()), Vocabularies.Ours());
        var said = supply.Statements.Where(s => s.Capability.Feature.Id is "stencil-bits" or "depth-bits").Select(s => s.Capability.ToString());
        Assert.Contains("stencil-bits 8", said);
        if (no.Contains("0x00000047", StringComparison.Ordinal) && supply.Disputes.All(d => d.Feature.Id != "depth-bits"))
            Assert.Contains("depth-bits 24", said);
    }

    private static string Named(DumpSection section) => string.Join(' ', [section.Kind, .. section.Ordinals]);

    private List<string> Lines() =>
        [.. Encoding.ASCII.GetString(dump.Bytes()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries)];

    private uint RawWord(string section, string field)
    {
        var lines = Lines();
        var start = lines.IndexOf("section " + section);
        Assert.True(start >= 0);
        var line = lines.Skip(start + 1).First(l => l.StartsWith($"field {field} 0x", StringComparison.Ordinal));
        return uint.Parse(line.Split(" 0x")[1], NumberStyles.HexNumber, CultureInfo.InvariantCulture);
    }
}
