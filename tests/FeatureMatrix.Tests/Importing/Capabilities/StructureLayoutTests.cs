using System.Text.RegularExpressions;
using FeatureMatrix.Importing.Capabilities;

namespace FeatureMatrix.Tests.Importing.Capabilities;

/// <summary>The layout of capability structures against the public headers and against FACTS section B.</summary>
public sealed partial class StructureLayoutTests
{
    [Theory]
    [InlineData("DDCAPS", "ddraw.h", "_DDCAPS_DX7")]
    [InlineData("D3DDEVICEDESC7", "d3dcaps.h", "_D3DDeviceDesc7")]
    [InlineData("D3DCAPS8", "d3d8caps.h", "_D3DCAPS8")]
    [InlineData("D3DCAPS9", "d3d9caps.h", "_D3DCAPS9")]
    public void Members_are_those_of_the_header_in_its_order(string structure, string file, string tag)
    {
        var ours = CapabilityStructures.Find(structure)!.Members.Select(m => (m.Name, m.Bytes));
        Assert.Equal(Flattened(file, tag, ""), ours);
    }

    [Theory]
    // FACTS section B1, "Compiled struct sizes": DDCAPS for DirectX 3, 5, 6 and 7 = 316, 364, 380, 380.
    [InlineData("DDCAPS", new[] { 380, 364, 316 })]
    [InlineData("D3DDEVICEDESC7", new[] { 236 })]
    [InlineData("D3DCAPS8", new[] { 212 })]
    [InlineData("D3DCAPS9", new[] { 304 })]
    public void Sizes_are_those_of_the_compiled_structures(string name, int[] sizes)
    {
        var structure = CapabilityStructures.Find(name)!;
        Assert.Equal(sizes, structure.Sizes);
        Assert.Equal(sizes[0], structure.Members.Sum(m => m.Bytes));
        Assert.Equal(sizes[0], structure.Members[^1].Offset + structure.Members[^1].Bytes);
    }

    [Theory]
    // FACTS table B1, column "byte offset".
    [InlineData("DevCaps", 0x01C)]
    [InlineData("RasterCaps", 0x024)]
    [InlineData("TextureCaps", 0x03C)]
    [InlineData("MaxTextureWidth", 0x058)]
    [InlineData("StencilCaps", 0x088)]
    [InlineData("VertexShaderVersion", 0x0C4)]
    [InlineData("PixelShaderVersion", 0x0CC)]
    [InlineData("VS20Caps.Caps", 0x0F8)]
    [InlineData("PS20Caps.Caps", 0x108)]
    [InlineData("MaxPixelShader30InstructionSlots", 0x12C)]
    public void Offsets_are_those_of_the_published_table(string member, int offset) =>
        Assert.Equal(offset, CapabilityStructures.Find("D3DCAPS9")!.Member(member)!.Offset);

    /// <summary>The members of a structure in the header's text, those of inner structures in their place.</summary>
    private static IEnumerable<(string Name, int Bytes)> Flattened(string file, string tag, string prefix)
    {
        foreach (Match m in Declaration().Matches(Body(file, tag)))
        {
            foreach (var declared in m.Groups["names"].Value.Split(',', StringSplitOptions.TrimEntries))
            {
                var name = declared.Split('[')[0];
                var count = declared.Contains("[4]") ? 4 : declared.Contains("[8]") || declared.Contains("[DD_ROP_SPACE]") ? 8 : 1;
                for (var i = 0; i < count; i++)
                {
                    var full = prefix + (count == 1 ? name : $"{name}[{i}]");
                    foreach (var part in Parts(m.Groups["type"].Value, full))
                        yield return part;
                }
            }
        }
    }

    private static IEnumerable<(string Name, int Bytes)> Parts(string type, string name) => type switch
    {
        "D3DPRIMCAPS" => Flattened("d3dcaps.h", "_D3dPrimCaps", name + "."),
        "D3DVSHADERCAPS2_0" => Flattened("d3d9caps.h", "_D3DVSHADERCAPS2_0", name + "."),
        "D3DPSHADERCAPS2_0" => Flattened("d3d9caps.h", "_D3DPSHADERCAPS2_0", name + "."),
        "DDSCAPS" => [(name + ".dwCaps", 4)],
        // The fourth word is a union of two names for one word.
        "DDSCAPS2" => [(name + ".dwCaps", 4), (name + ".dwCaps2", 4), (name + ".dwCaps3", 4), (name + ".dwCaps4", 4)],
        "GUID" => [
            (name + ".Data1", 4), (name + ".Data2", 2), (name + ".Data3", 2),
            .. Enumerable.Range(0, 8).Select(i => ($"{name}.Data4[{i}]", 1))],
        "WORD" => [(name, 2)],
        "DWORD" or "UINT" or "INT" or "float" or "D3DVALUE" or "D3DDEVTYPE" => [(name, 4)],
        _ => throw new InvalidOperationException($"a type the test does not know: {type}"),
    };

    private static string Body(string file, string tag)
    {
        var text = Comment().Replace(PublicHeader.Text(file), "");
        var start = text.Split("typedef struct ").Skip(1).Select(t => t.TrimStart()).First(
            t => t.StartsWith(tag, StringComparison.Ordinal) && !char.IsAsciiLetterOrDigit(t[tag.Length]) && t[tag.Length] != '_');
        return start[start.IndexOf('{')..start.IndexOf('}')];
    }

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Comment();

    [GeneratedRegex(@"(?<type>\w+)\s+(?<names>[\w\[\], \r\n]+);", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Declaration();
}
