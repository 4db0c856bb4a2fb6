using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Labels of small worlds, where one thing decides (rules R5 to R16). The base is that of RULES.md.</summary>
public sealed class A_label
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Theory] // Rule R14: what is said of native routes beside one through a wrapper, which supplies all that the title needs.
    [InlineData("forced: yes", "severe: [tex-dxt1]", RouteLabel.NativeOnlyForced)]
    [InlineData("forced: yes", "severe: [tex-dxt1], must: [tex-8888]", RouteLabel.NativeNotKnown)]
    [InlineData("forced: yes", "must: [tex-dxt1]", RouteLabel.WrapperOnly)]
    [InlineData("forced: no", "severe: [tex-dxt1]", RouteLabel.NativeNotPermitted)]
    public void Of_a_wrapped_route_says_what_is_known_of_the_forced_driver_that_alone_is_native(string policy, string needs, RouteLabel expected)
    {
        var verdict = ResolverQuestion.Ask(Worlds.Load(Base, """
            cards: {heron-8: {name: Heron 8, chip: heron, memory: {unified: 8 MiB, textures-from-system: no}, source: manual, drivers-complete: [dos, windows-95, windows-98se, windows-2000, windows-xp]}}
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "3"}, on: direct3d 7, supplies: {tex-dxt1: yes, tex-8888: yes}, os: {windows-98se: yes}, source: readme}]}}
            drivers: {other: {name: Other, os: [windows-98se], lists: [heron-8], offers: {glide: "3"}, source: readme, versions: [{version: "1.0"}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {glide: {api: glide 3, needs: {NEEDS}}}}}
            libraries: {small: {name: Small, policy: {POLICY}, titles: {bay: 1}}}
            facts: [{driver: heron-9x, glide: none, source: readme}, {chip: heron, tex-dxt1: no, source: manual}]
            """.Replace("NEEDS", needs, StringComparison.Ordinal).Replace("POLICY", policy, StringComparison.Ordinal)), "bay on heron-16 for small");
        Assert.Equal((OutcomeLabel.Works, expected, "veil@1"), (verdict.Headline.Outcome, verdict.Headline.Route, verdict.Headline.By.Single().Route.Wrapper?.Id));
    }

    [Theory] // Rule R11: nothing fits 16 MiB beside the frames; compressed textures are four times as large at 16 bit where they are not kept.
    [InlineData("{name: low, textures: 40 MiB, measured: yes}", "", "does not run")]
    [InlineData("{name: low, textures: 40 MiB}", "", "not known, at best works, natively")]
    [InlineData("{name: low, textures: 8 MiB, format: compressed-4, measured: yes}", "", "not known, at best works, natively")]
    [InlineData("{name: low, textures: 8 MiB, format: compressed-4, measured: yes}", "no", "does not run")]
    [InlineData("{name: low, textures: 8 MiB, format: compressed-4, measured: yes}", "yes", "works, natively")]
    [InlineData("{name: low, textures: 2 MiB, format: compressed-4, measured: yes}", "no", "works, natively")]
    public void Says_that_textures_are_too_large_only_where_that_is_certain(string preset, string dxt1, string expected) => Assert.Equal(
        expected, Label($"{Title($"d3d: {{api: direct3d 6, memory: {{presets: [{preset}]}}}}")}\n{(dxt1.Length == 0 ? "" : $"facts: [{{chip: heron, tex-dxt1: {dxt1}, source: manual}}]")}"));

    [Fact] // Rule R8: one of several interfaces that a wrapper version offers is enough.
    public void Of_a_wrapper_version_that_offers_several_interfaces_is_that_of_the_one_wanted() => Assert.Equal(
        "works, wrapper only",
        Label(
            """
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "2", opengl: "1.1"}, on: direct3d 7, os: {windows-98se: yes}, source: readme}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {gl: {api: opengl 1.1}}}}
            facts: [{driver: heron-9x, opengl: none, source: readme}]
            """));

    [Theory] // Rule R6: a defect by a wrapper is one under the interface that the wrapper stands on.
    [InlineData("direct3d", "does not run")]
    [InlineData("glide", "works, wrapper only")]
    public void Of_a_wrapped_route_heeds_a_defect_under_the_interface_below(string api, string expected) => Assert.Equal(
        expected,
        Label(
            """
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "3"}, on: direct3d 7, os: {windows-98se: yes}, source: readme}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {glide: {api: glide 3, defects: [{wrapper: veil@1, api: API, effect: It stops, source: bench}]}}}}
            facts: [{driver: heron-9x, glide: none, source: readme}]
            """.Replace("API", api, StringComparison.Ordinal)));

    private static string Title(string renderers) => $"titles: {{bay: {{name: Bay, os: [windows-98se], source: bench, renderers: {{{renderers}}}}}}}";

    private static string Label(string world) => LabelWording.Label(Ask(world)).Split(';')[0];

    private static Verdict Ask(string world) => ResolverQuestion.Ask(Worlds.Load(Base, world), "bay on heron-16 with heron-9x@2.0");
}

/// <summary>Needs that apply only at a texture preset (rule R11), of a title with presets of 1 and 9 MiB on a card of 16 MiB.</summary>
public sealed class A_need_at_a_texture_preset
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Theory]
    [InlineData("low", "", "16-bit", "works, natively")]
    [InlineData("high", "", "16-bit", "loses 32-bit textures (severe), natively")]
    [InlineData("low", "low", "16-bit", "loses 32-bit textures (severe), natively")]
    [InlineData("high", "low", "16-bit", "works, natively")]
    [InlineData("high", "", "compressed-4", "works, natively")]
    [InlineData("low", "", "compressed-4", "loses 32-bit textures (severe), natively")]
    [InlineData("high", "", "8-bit-palette", "runs, paletted textures not known, natively")]
    public void Counts_at_the_preset_that_is_wanted_or_else_at_the_highest_that_fits(string preset, string wanted, string format, string expected) =>
        Assert.Equal(expected, Label(Base, preset, wanted, format));

    [Theory]
    [InlineData("{unified: 16 MiB, textures-from-system: yes}", "high", "loses 32-bit textures (severe), natively")]
    [InlineData("{unified: 16 MiB, textures-from-system: yes}", "low", "works, natively")]
    [InlineData("{unified: 8 MiB, textures-from-system: no}", "high", "works, natively")]
    [InlineData("{unified: 8 MiB, textures-from-system: no}", "low", "loses 32-bit textures (severe), natively")]
    [InlineData("{unified: 8 MiB}", "high", "runs, the texture preset high not known, natively")]
    [InlineData("{unified: 8 MiB}", "low", "runs, the texture preset high not known, natively")]
    public void Hangs_on_what_the_memory_can_take(string memory, string preset, string expected) =>
        Assert.Equal(expected, Label(Base.Replace("{unified: 16 MiB, textures-from-system: no}", memory, StringComparison.Ordinal), preset, "", "16-bit"));

    [Theory]
    [InlineData("high")]
    [InlineData("low")]
    public void Is_not_known_where_the_memory_is_not_recorded(string preset) => Assert.Equal(
        "not known, at best works, natively",
        Label(Base.Replace("memory: {unified: 16 MiB, textures-from-system: no}, ", "", StringComparison.Ordinal), preset, "", "16-bit"));

    private static string Label(string common, string preset, string wanted, string format)
    {
        var world = Worlds.Load(
            common,
            """
            titles:
              bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [{need: tex-8888, when: {preset: PRESET}}]},
                memory: {presets: [{name: low, textures: 1 MiB, format: FORMAT, measured: yes}, {name: high, textures: 9 MiB, format: FORMAT, measured: yes}]}}}}
            facts: [{chip: heron, tex-8888: no, source: manual}, {chip: heron, tex-dxt1: no, source: manual}]
            """.Replace("PRESET", preset, StringComparison.Ordinal).Replace("FORMAT", format, StringComparison.Ordinal));
        var setup = new Resolver(world).SetupsOf(world.Cards.Single()).Single(setup => setup.Driver.Id == "heron-9x@2.0");
        return LabelWording.Label(new Resolver(world).Resolve(world.Titles.Single(), setup, Terms.Default with { Preset = wanted })).Split(';')[0];
    }
}
