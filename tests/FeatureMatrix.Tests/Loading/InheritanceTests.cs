using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

public sealed class Evidence_of_a_statement
{
    private static string Of(string entity, string statement)
    {
        var evidence = Worlds.Load($"chips: {{c: {{name: C, {entity}supply: {{fog-table: {statement}}}}}}}").Facts.Single().Evidence;
        return $"{evidence.Grade} by {evidence.Source?.Text ?? "nobody"}";
    }

    [Theory]
    [InlineData("", "yes", "Inferred by nobody")]
    [InlineData("grade: hearsay, ", "yes", "Hearsay by nobody")]
    [InlineData("grade: measured, ", "yes", "Inferred by nobody")]
    [InlineData("source: manual, ", "yes", "Documented by A manual")]
    [InlineData("source: bench, ", "yes", "Measured by The bench")]
    [InlineData("source: Errata sheet p. 4, ", "yes", "Documented by Errata sheet p. 4")]
    [InlineData("source: bench, grade: inferred, ", "yes", "Inferred by The bench")]
    [InlineData("source: bench, ", "{is: yes, grade: hearsay}", "Hearsay by The bench")]
    [InlineData("source: bench, ", "{is: yes, source: manual}", "Documented by A manual")]
    [InlineData("source: bench, grade: hearsay, ", "{is: yes, source: manual}", "Documented by A manual")]
    [InlineData("", "{is: yes, source: {text: A letter, grade: hearsay}}", "Hearsay by A letter")]
    public void Is_its_own_or_inherited(string entity, string statement, string evidence) =>
        Assert.Equal(evidence, Of(entity, statement));

    [Fact]
    public void Names_the_place() =>
        Assert.Equal(new Origin("world.yaml", 2, 52), Worlds.Load("chips:\n  c: {name: C, source: manual, supply: {fog-table: yes}}").Facts[0].Evidence.Origin);

    [Fact]
    public void Comes_down_through_versions_renderers_and_lists()
    {
        var catalog = Worlds.Load(
            """
            chips: {c: {name: C}}
            cards: {k: {name: K, chip: c}}
            drivers: {d: {name: D, source: bench, os: [dos], lists: [k], versions: [{version: "1", source: readme, forced: [{card: k, works: yes}], supply: {fog-table: no}}]}}
            titles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga, source: rumour, needs: {must: [fog-table, {need: tex-pal8, grade: documented}]}, defects: [{effect: E}]}}}}
            """);

        var driver = catalog.Drivers.Single();
        Assert.Equal((Grade.Documented, Grade.Documented), (driver.Evidence.Grade, driver.Forced[0].Evidence.Grade));
        Assert.Equal("A readme", catalog.Facts.Single().Evidence.Source!.Text);
        var renderer = catalog.Titles[0].Renderers[0];
        Assert.Equal([Grade.Hearsay, Grade.Documented], renderer.Needs.Select(n => n.Evidence.Grade));
        Assert.Equal((Grade.Hearsay, "A rumour"), (renderer.Defects[0].Evidence.Grade, renderer.Defects[0].Evidence.Source!.Text));
        Assert.Equal(Grade.Documented, catalog.Titles[0].Evidence.Grade);
    }

    [Theory]
    [InlineData("by: Ada", "Measured by Ada")]
    [InlineData("source: rumour", "Hearsay by A rumour")]
    [InlineData("source: Letter of May, by: Ada", "Documented by Letter of May")]
    [InlineData("by: Ada, grade: hearsay", "Hearsay by Ada")]
    public void Of_an_observation_is_measured_by_whoever_saw_it(string keys, string evidence)
    {
        var seen = Worlds.Load(
            $"titles: {{t: {{name: T, os: [dos], renderers: {{r: {{api: vga}}}}}}}}\nobservations: [{{title: t, runs: yes, {keys}}}]").Observations[0].Evidence;

        Assert.Equal(evidence, $"{seen.Grade} by {seen.Source!.Text}");
    }

    [Fact]
    public void Has_a_link_where_the_source_has_one() => Assert.Equal(
        new Source("doc", "A page", "https://example.org/a"),
        Worlds.Load("sources: {doc: {text: A page, link: 'https://example.org/a'}}").Sources.Single(s => s.Id == "doc"));

    [Fact]
    public void Takes_no_link_of_another_kind() => FaultAssert.Gives(
        "sources: {doc: {text: A page, link: 'javascript:alert(1)'}}",
        "world.yaml(1,37): error FM109: 'javascript:alert(1)' is no value of 'link'; it wants an address that begins with http:// or https://");
}

public sealed class A_chip_like_another
{
    [Fact]
    public void Has_the_others_facts_except_about_features_of_its_own() => Assert.Equal(
        [
            "chip a: fog-table At Yes Documented",
            "chip a on dos: fog-table At No Documented",
            "chip a: mt-units 1 UpTo Yes Documented",
            "chip b: mt-units 2 UpTo Yes Measured",
            "chip b: fog-table At Yes Documented",
            "chip b on dos: fog-table At No Documented",
            "chip c: fog-table At Broken Hearsay",
            "chip c: mt-units 2 UpTo Yes Measured",
        ],
        Worlds.Load(
            """
            chips:
              c: {name: C, like: b, source: rumour, supply: {fog-table: broken}}
              b: {name: B, like: a, source: bench, supply: {mt-units: "2"}}
              a: {name: A, source: manual, supply: {fog-table: [yes, {is: no, os: dos}], mt-units: "1"}}
            """).Facts.Select(A_world_with_one_of_everything.Describe));
}

public sealed class A_title_on_an_engine
{
    private const string Engine =
        """
        engines:
          tern:
            name: Tern
            renderers:
              direct3d: {api: direct3d 6, os: [windows-98se], needs: {must: [mt-units 2], cosmetic: [fog-table, {any-of: [tex-dxt1, tex-pal8]}]}, defects: [{if-present: gl-extension-string 4096, effect: Quits}]}
              opengl: {api: opengl 1.1, name: GL, os: [windows-98se], needs: {must: [mt-units 2]}, memory: {lowest: 512x384, back-buffers: 2, depth-buffer: none}}

        """;

    private static string Describe(string titles) => string.Join('\n', Worlds.Load(Engine + titles).Titles[0].Renderers.Select(r =>
        $"{r.Id} {r.Api} on {string.Join(' ', r.Oses)}: {string.Join(", ", r.Needs.Select(n => $"{n.Strength} {n}"))}; {r.Defects.Count} defects"));

    [Fact]
    public void Has_all_renderers_where_it_lists_none() => Assert.Equal(
        """
        direct3d direct3d 6 on windows-98se: Must mt-units 2, Cosmetic fog-table, Cosmetic tex-dxt1 or tex-pal8; 1 defects
        opengl opengl 1.1 on windows-98se: Must mt-units 2; 0 defects
        """,
        Describe("titles: {t: {name: T, engine: tern}}"));

    [Fact]
    public void Takes_one_over_as_it_is() => Assert.Equal(
        "opengl opengl 1.1 on windows-98se: Must mt-units 2; 0 defects",
        Describe("titles: {t: {name: T, engine: tern, renderers: {opengl: like-engine}}}"));

    [Fact]
    public void Replaces_needs_about_the_same_features_and_drops_what_it_does_not_need() => Assert.Equal(
        "main direct3d 5 on dos: Severe mt-units 3, Cosmetic tex-dxt1 or tex-pal8; 2 defects",
        Describe("titles: {t: {name: T, engine: tern, renderers: {main: {like-engine: direct3d, api: direct3d 5, os: [dos], needs: {severe: [mt-units 3], none: [fog-table]}, defects: [{effect: E}]}}}}"));

    [Fact]
    public void Replaces_memory_key_by_key()
    {
        var renderer = Worlds.Load(
            Engine + "titles: {t: {name: T, engine: tern, renderers: {opengl: {like-engine: opengl, memory: {depths: [32]}}}}}").Titles[0].Renderers[0];

        Assert.Equal((new Mode(512, 384), 2, 0), (renderer.Memory.LowestMode, renderer.Memory.BackBuffers, renderer.Memory.DepthBits!.Value));
        Assert.Equal([32], renderer.Memory.Depths);
        Assert.Equal("GL", renderer.Name);
    }

    [Fact]
    public void That_it_does_not_name_or_that_lacks_the_renderer_is_a_fault()
    {
        FaultAssert.Gives(
            Engine.Replace("name: Tern", "name: Tern\n    source: manual") +
            """
            titles:
              t: {name: T, source: manual, renderers: {opengl: like-engine}}
              u: {name: U, source: manual, engine: tern, renderers: {x: {like-engine: opengll}}}
              v: {name: V, source: manual, engine: ternn}
            """,
            "world.yaml(9,52): error FM102: title 't' needs the key 'engine'",
            "world.yaml(10,58): error FM111: renderer 'x' of title 'u' draws through an 'api' or is 'software: yes', and always one of these",
            "world.yaml(10,75): error FM103: unknown renderer of engine 'Tern' 'opengll'; did you mean 'opengl'?",
            "world.yaml(11,40): error FM103: unknown engine 'ternn'; did you mean 'tern'?");
    }
}
