namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>That nothing of the trade's list is missing, and that every word says who knows it.</summary>
public sealed class WholeVocabulary
{
    /// <summary>The ids of the project's fact table A, without its four interface rows, which are APIs.</summary>
    private const string Flags = """
        tex-pal8 tex-pal4 tex-pal-alpha tex-pal-shared tex-dxt1 tex-dxt3-5 tex-8888 tex-4444 tex-1555 tex-lum tex-npot tex-nonsquare
        tex-volume tex-cube tex-colorkey tex-clamp tex-mirror tex-perspective tex-projected fog-vertex fog-table fog-w fog-z fog-range
        fog-coord depth-wbuffer depth-bias stencil-wrap stencil-two-sided shadow-map filter-bilinear filter-mipmap filter-trilinear
        filter-lod-bias blend-alpha blend-modulate blend-dest-alpha blend-op alpha-test dither-16bpp render-32bpp specular-separate
        mt-combine bump-embm bump-embm-lum bump-dot3 tnl-hw point-sprite npatch float-target render-to-texture occlusion-query
        aa-sort-independent aa-edge mem-bus-texturing mem-separate vbe-lfb vga-modex overlay-yuv gamma-ramp windowed-3d vsync-off
        """;

    private const string Ladders = """
        tex-max-size tex-max-aspect depth-bits stencil-bits filter-anisotropic mt-units mt-stages tnl-lights vs-version ps-version
        vtx-blend mrt aa-multisample mem-local vbe-version
        """;

    [Fact]
    public void Loads_without_fault_or_warning() =>
        Assert.True(VocabularyFixture.Faults.Count == 0, string.Join('\n', VocabularyFixture.Faults));

    [Fact]
    public void All_rows_of_the_fact_table_are_there_as_flags_or_ladders()
    {
        Assert.Equal(Ids(Flags), Sorted(VocabularyFixture.Features.Where(f => !f.IsApi && !f.HasLevels).Select(f => f.Id)));
        Assert.Equal(
            Ids(Ladders + " gl-extension-string"),
            Sorted(VocabularyFixture.Features.Where(f => !f.IsApi && f.HasLevels).Select(f => f.Id)));
        Assert.Equal(62 + 15, Ids(Flags).Count + Ids(Ladders).Count);
    }

    [Fact]
    public void Apis_have_their_levels_in_order_and_need_a_runtime_where_Windows_brings_it()
    {
        Assert.Equal(
            [
                "direct3d 2 3 5 6 7 8 8.1 9 (runtime)", "directdraw 1 2 4 7 (runtime)", "glide 2 3",
                "opengl 1.0 1.1 1.2 1.3 1.4 1.5 2.0 2.1", "vesa 1.2 2.0 3.0", "vga",
            ],
            Sorted(VocabularyFixture.Features.Where(f => f.IsApi).Select(f =>
                string.Join(' ', f.Levels.Prepend(f.Id)) + (f.NeedsRuntime ? " (runtime)" : ""))));
    }

    [Fact]
    public void Every_word_has_a_name_a_family_a_meaning_an_effect_and_a_source()
    {
        Assert.Empty(VocabularyFixture.Features
            .Where(f => f.Name.Length == 0 || f.Family.Length == 0 || f.Meaning.Length == 0 || f.SeenWhenMissing.Length == 0 || f.Evidence.Source is null)
            .Select(f => f.Id));
        Assert.Empty(VocabularyFixture.Catalog.Buses.Where(b => b.Evidence.Source is null || b.Meaning.Length == 0).Select(b => b.Id));
        Assert.Empty(VocabularyFixture.Catalog.Oses.SelectMany(o => o.Limits).Where(l => l.Evidence.Source is null).Select(l => l.Text));
        Assert.Empty(VocabularyFixture.Catalog.Oses.SelectMany(o => o.Runtimes).Where(r => r.Evidence.Source is null).Select(r => r.Api.Id));
    }

    [Fact]
    public void Only_what_is_so_by_definition_is_implied()
    {
        Assert.Equal(
            [
                "bump-embm-lum: bump-embm", "filter-trilinear: filter-bilinear, filter-mipmap", "fog-w: fog-table", "fog-z: fog-table",
                "tex-pal-alpha: tex-pal8", "vbe-lfb: vbe-version 2.0",
            ],
            Sorted(VocabularyFixture.Features.Where(f => f.Implies.Count > 0)
                .Select(f => $"{f.Id}: {string.Join(", ", f.Implies.Select(c => c.ToString()))}")));
    }

    [Fact]
    public void Numeric_ladders_rise()
    {
        foreach (var feature in VocabularyFixture.Features.Where(f => f.HasLevels && f.Id is not ("vs-version" or "ps-version")))
        {
            var levels = feature.Levels.Select(l => double.Parse(l, System.Globalization.CultureInfo.InvariantCulture)).ToList();
            Assert.Equal(levels.Order().Distinct(), levels);
        }

        Assert.Equal(["1.1", "2.0", "2.x", "3.0"], VocabularyFixture.Feature("vs-version").Levels);
        Assert.Equal(["1.0", "1.1", "1.2", "1.3", "1.4", "2.0", "2.x", "3.0"], VocabularyFixture.Feature("ps-version").Levels);
    }

    private static List<string> Ids(string text) => Sorted(text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    private static List<string> Sorted(IEnumerable<string> texts) => [.. texts.Order(StringComparer.Ordinal)];
}
