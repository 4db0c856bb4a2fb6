using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Support;

/// <summary>
/// Ten-line worlds: a collection written as one YAML text in a test, on a vocabulary small enough to keep in mind
/// (<see cref="Vocabulary"/>). Independent of data/vocabulary.
/// </summary>
internal static class Worlds
{
    /// <summary>Sources that a world may name: manual and readme are documented, bench measured, notes inferred, rumour hearsay.</summary>
    public const string Vocabulary =
        """
        sources:
          manual: {text: A manual, grade: documented}
          readme: {text: A readme, grade: documented}
          bench: {text: The bench, grade: measured}
          notes: {text: Our notes, grade: inferred}
          rumour: {text: A rumour, grade: hearsay}
        features:
          fog-table: {name: Table fog, family: fog, meaning: Fog by pixel, missing: Distant things stand out, source: manual}
          tex-pal8: {name: Paletted textures, family: textures, meaning: 8-bit indices, missing: Flat colours, source: manual}
          tex-pal-alpha: {name: Palettes with alpha, family: textures, meaning: Alpha in palettes, missing: Hard edges, implies: [tex-pal8], source: manual}
          tex-dxt1: {name: Compressed textures, family: textures, meaning: 4 bits a texel, missing: Blurred textures, source: manual}
          tex-8888: {name: 32-bit textures, family: textures, meaning: 8 bits a channel, missing: Banded colours, source: manual}
          tex-env-bump: {name: Bump mapping, family: textures, meaning: Disturbed lookups, missing: Flat water, source: manual}
          mt-units: {name: Texture units, family: multitexture, levels: ["1", "2", "3", "4", "5", "6", "7", "8"], meaning: Textures in one pass, missing: No light maps, source: manual}
          ps-version: {name: Pixel shaders, family: shaders, levels: ["1.0", "1.1", "1.2", "1.3", "1.4", "2.0", "3.0"], meaning: Programs for pixels, missing: Dull surfaces, source: manual}
          vs-version: {name: Vertex shaders, family: shaders, levels: ["1.1", "2.0", "3.0"], meaning: Programs for vertices, missing: Stiff water, source: manual}
          stencil-bits: {name: Stencil bits, family: buffers, levels: ["1", "4", "8"], unit: bit, meaning: Bits a pixel, missing: No shadows, source: manual}
          aa-multisample: {name: Samples, family: quality, levels: ["2", "4", "8"], meaning: Samples a pixel, missing: Jagged edges, source: manual}
          vbe-lfb: {name: Linear frame buffer, family: dos, meaning: One piece of memory, missing: Slow pictures, source: manual}
          gl-extension-string: {name: Extension string, family: opengl, levels: ["1024", "4096", "8192"], unit: bytes, meaning: Its length, missing: Nothing, source: manual}
        apis:
          direct3d: {name: Direct3D, levels: ["2", "3", "5", "6", "7", "8", "8.1", "9"], runtime: true, source: manual}
          directdraw: {name: DirectDraw, levels: ["1", "2", "4", "7"], runtime: true, source: manual}
          opengl: {name: OpenGL, levels: ["1.0", "1.1", "1.2", "1.3", "1.4", "1.5", "2.0"], source: manual}
          glide: {name: Glide, levels: ["2", "3"], source: manual}
          vesa: {name: VESA BIOS Extension, levels: ["1.2", "2.0", "3.0"], source: manual}
          vga: {name: VGA, source: manual}
        operating-systems:
          dos: {name: MS-DOS, dos: true, runtimes: {direct3d: none, directdraw: none}, source: manual}
          windows-95: {name: Windows 95, runtimes: {direct3d: "8", directdraw: "7"}, source: manual}
          windows-98se: {name: Windows 98 SE, runtimes: {direct3d: "9", directdraw: "7"}, source: manual}
          windows-2000: {name: Windows 2000, runtimes: {direct3d: "9", directdraw: "7"}, source: manual}
          windows-xp: {name: Windows XP, runtimes: {direct3d: "9", directdraw: "7"}, source: manual}
        buses:
          pci: {name: PCI, peak: 133 MB/s, source: manual}
          agp-2.0: {name: AGP 2.0, peak: 1067 MB/s, source: manual}
        """;

    /// <summary>The world on the small vocabulary. Throws with all faults where one is an error; warnings are ignored.</summary>
    public static Catalog Load(string yaml, IReadOnlyList<SourcePicture>? pictures = null)
    {
        var result = Try(yaml, pictures);
        return result.Catalog ?? throw new InvalidOperationException(string.Join('\n', result.Faults));
    }

    /// <summary>A world in two texts: a base that several share, and what one adds.</summary>
    public static Catalog Load(string common, string yaml)
    {
        var result = CollectionLoader.Load([new SourceText("vocabulary/test.yaml", Vocabulary), new SourceText("base.yaml", common), new SourceText("world.yaml", yaml)]);
        return result.Catalog ?? throw new InvalidOperationException(string.Join('\n', result.Faults));
    }

    /// <summary>The same with its faults. The text is the file <c>world.yaml</c>.</summary>
    public static LoadResult Try(string yaml, IReadOnlyList<SourcePicture>? pictures = null) =>
        CollectionLoader.Load([new SourceText("vocabulary/test.yaml", Vocabulary), new SourceText("world.yaml", yaml)], pictures: pictures);
}
