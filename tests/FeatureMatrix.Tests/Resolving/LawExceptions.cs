using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Where one more supplied feature does make a result worse, and rightly so. The base is that of RULES.md.</summary>
public sealed class One_more_supplied_feature_worsens
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Fact]
    public void What_breaks_if_it_is_present() => Worsens(
        "api: direct3d 6, defects: [{if-present: tex-pal8, effect: It stops}]", "tex-pal8: no", "works, natively", "tex-pal8: yes", "does not run");

    [Fact]
    public void What_runs_without_but_stops_where_it_is_broken() => Worsens(
        "api: direct3d 6, needs: {cosmetic: [{need: tex-pal8, broken: must}]}", "tex-pal8: no", "loses paletted textures (cosmetic), natively", "tex-pal8: broken", "does not run");

    [Fact]
    public void An_any_of_whose_first_choice_is_then_there_but_broken() => Worsens(
        "api: direct3d 6, needs: {severe: [{any-of: [tex-pal8, fog-table]}]}", "tex-pal8: no", "works, natively", "tex-pal8: broken", "loses paletted textures or table fog (wrong picture, severe), natively");

    [Fact]
    public void What_a_higher_preset_asks_for() => Worsens(
        "api: direct3d 6, needs: {severe: [{need: tex-dxt1, when: {preset: high}}]}, memory: {depths: [16], presets: [{name: low, textures: 1 MiB}, {name: high, textures: 9 MiB, format: 8-bit-palette}]}",
        "tex-dxt1: no, tex-pal8: no", "works, natively", "tex-dxt1: no, tex-pal8: yes", "loses compressed textures (severe), natively");

    private static void Worsens(string renderer, string poorer, string milder, string richer, string worse)
    {
        Assert.Equal(milder, Label(renderer, poorer));
        Assert.Equal(worse, Label(renderer, richer));
    }

    private static string Label(string renderer, string supply)
    {
        var facts = string.Join('\n', supply.Split(", ").Select(one => $"  - {{chip: heron, {one}, source: manual}}"));
        var world = $"titles: {{bay: {{name: Bay, os: [windows-98se], source: bench, renderers: {{d3d: {{{renderer}}}}}}}}}\nfacts:\n{facts}";
        return LabelWording.Label(ResolverQuestion.Ask(Worlds.Load(Base, world), "bay on heron-16 with heron-9x@2.0")).Split(';')[0];
    }
}
