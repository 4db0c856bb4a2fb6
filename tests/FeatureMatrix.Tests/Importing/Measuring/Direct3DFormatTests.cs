using System.Text;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Importing.Measuring;

/// <summary>Depth and stencil bits, numbers of samples and texture formats: what lists of formats say of ladders.</summary>
public sealed class Direct3DFormatTests
{
    private static readonly IReadOnlyList<Feature> Vocabulary = Vocabularies.Ours();

    [Theory]
    // D3DFMT codes of d3d9types.h: D15S1 0x49, D24S8 0x4B, D24X8 0x4D, D24X4S4 0x4F, D16 0x50, D32 0x47.
    [InlineData("yes 0x00000050 no 0x0000004B 0x0000004D 0x0000004F 0x00000047 0x00000049", "depth-bits 16 UpTo Yes", "stencil-bits 1 At No")]
    [InlineData("yes 0x00000050 0x0000004D no 0x0000004B 0x0000004F 0x00000047 0x00000049", "depth-bits 24 UpTo Yes", "stencil-bits 1 At No")]
    [InlineData("yes 0x0000004B no 0x00000047", "depth-bits 24 UpTo Yes", "stencil-bits 8 UpTo Yes")]
    [InlineData("yes 0x0000004F no 0x0000004B", "depth-bits 24 AtLeast Yes", "stencil-bits 4 UpTo Yes")]
    [InlineData("yes 0x00000050 no", "depth-bits 16 AtLeast Yes")]
    [InlineData("yes 0x00000049 no 0x00000050 0x0000004D 0x0000004B 0x0000004F 0x00000047", "depth-bits 16 At No", "stencil-bits 1 UpTo Yes")]
    [InlineData("yes no 0x0000004D", "")]
    public void Depth_formats_place_depth_and_stencil_on_their_ladders(string answer, params string[] expected)
    {
        foreach (var generation in new[] { 8, 9 })
        {
            Assert.Equal(
                expected.Where(text => text.Length > 0),
                Said($"section direct3d{generation} 0\nformats depth 0x00000016 {answer}\n", "depth-bits", "stencil-bits"));
        }
    }

    [Theory]
    // Flags DDPF_ZBUFFER 0x400 and DDPF_STENCILBUFFER 0x4000; bits in all, stencil bits, depth mask, stencil mask (ddraw.h).
    [InlineData("0x00000400 0x00000000 0x00000010 0x00000000 0x0000FFFF 0x00000000 0x00000000", "depth-bits 16 UpTo Yes", "stencil-bits 1 At No")]
    [InlineData("0x00004400 0x00000000 0x00000020 0x00000008 0x00FFFFFF 0xFF000000 0x00000000", "depth-bits 24 UpTo Yes", "stencil-bits 8 UpTo Yes")]
    [InlineData("0x00004400 0x00000000 0x00000020 0x00000008 0x00000000 0x00000000 0x00000000", "depth-bits 24 UpTo Yes", "stencil-bits 8 UpTo Yes")]
    [InlineData("0x00000400 0x00000000 0x00000020 0x00000000 0x00FFFFFF 0x00000000 0x00000000", "depth-bits 24 UpTo Yes", "stencil-bits 1 At No")]
    [InlineData("0x00000400 0x00000000 0x00000020 0x00000000 0x00000000 0x00000000 0x00000000", "depth-bits 32 UpTo Yes", "stencil-bits 1 At No")]
    [InlineData("0x00004400 0x00000000 0x00000010 0x00000001 0x00007FFF 0x00008000 0x00000000", "depth-bits 16 At No", "stencil-bits 1 UpTo Yes")]
    [InlineData("0x00004400 0x00000000 0x00000004 0x000000FF 0x00000000 0x00000000 0x00000000", "depth-bits 16 At No", "stencil-bits 8 UpTo Yes")]
    public void Direct3d_7_describes_depth_formats_by_their_bits(string words, params string[] expected) => Assert.Equal(
        expected, Said($"{Seven}pixel-format depth {words}\n", "depth-bits", "stencil-bits"));

    [Fact]
    public void A_driver_without_a_list_of_depth_formats_says_nothing_of_them() => Assert.Empty(Said(Seven, "depth-bits", "stencil-bits"));

    [Theory]
    [InlineData("samples 0x00000016 yes 2 4 no 3 5 6 7 8 9 10 11 12 13 14 15 16", "aa-multisample 4 UpTo Yes")]
    [InlineData("samples 0x00000016 yes no 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16", "aa-multisample 2 At No")]
    [InlineData("samples 0x00000016 yes 16 no", "aa-multisample 8 UpTo Yes")]
    [InlineData("samples 0x00000016 yes 2 no 3 4", "aa-multisample 2 AtLeast Yes")]
    [InlineData("samples 0x00000017 yes no 2 3 4 6 8\nsamples 0x00000016 yes 2 no 3 4 6 8", "aa-multisample 2 UpTo Yes")]
    public void Numbers_of_samples_are_the_levels(string lines, string expected)
    {
        foreach (var generation in new[] { 8, 9 })
            Assert.Equal([expected], Said($"section direct3d{generation} 0\n{lines}\n", "aa-multisample"));
    }

    [Theory]
    // DDPF_RGB 0x40, with DDPF_ALPHAPIXELS 0x1 (ddraw.h); bits, then masks of red, green, blue and alpha.
    [InlineData("0x00000041 0x00000000 0x00000020 0x00FF0000 0x0000FF00 0x000000FF 0xFF000000", "tex-8888")]
    [InlineData("0x00000041 0x00000000 0x00000020 0x000000FF 0x0000FF00 0x00FF0000 0xFF000000", "tex-8888")]
    [InlineData("0x00000041 0x00000000 0x00000010 0x00000F00 0x000000F0 0x0000000F 0x0000F000", "tex-4444")]
    [InlineData("0x00000041 0x00000000 0x00000010 0x00007C00 0x000003E0 0x0000001F 0x00008000", "tex-1555")]
    [InlineData("0x00000040 0x00000000 0x00000010 0x00007C00 0x000003E0 0x0000001F 0x00008000", "")]
    [InlineData("0x00000040 0x00000000 0x00000010 0x0000F800 0x000007E0 0x0000001F 0x00000000", "")]
    public void Texture_formats_of_direct3d_7_are_known_by_their_masks(string words, string expected)
    {
        string[] asked = ["tex-8888", "tex-4444", "tex-1555"];
        Assert.Equal(
            asked.Select(id => $"{id} At {(id == expected ? "Yes" : "No")}").Order(StringComparer.Ordinal),
            Said($"{Seven}pixel-format texture {words}\n", asked).Order(StringComparer.Ordinal));
    }

    private const string Seven = "section direct3d7 0 0\nfield D3DDEVICEDESC7.dwDevCaps 0x00080000\n";

    private static IEnumerable<string> Said(string sections, params string[] ids)
    {
        var dump = CapabilityDump.Parse(Encoding.ASCII.GetBytes($"capability-dump 1\n{sections}end\n"));
        Assert.Empty(dump.Faults);
        return MeasuredSupply.Of(dump, [.. Vocabulary.Where(feature => feature.IsApi || ids.Contains(feature.Id))]).Statements
            .Where(said => !said.Capability.Feature.IsApi).Select(said => $"{said.Capability} {said.Reach} {said.Support}");
    }
}
