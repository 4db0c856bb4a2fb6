using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Resolving.Generated;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Faults of the resolver that brute force found, each as a small world. The base is that of RULES.md.</summary>
public sealed class Faults_that_brute_force_found
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Fact] // R6: a rumour of "breaks if present" struck cards that certainly lack the cause.
    public void A_rumoured_defect_needs_its_cause_as_well() => Assert.Equal("works, natively", Label(
        """
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, defects: [{if-present: tex-pal8, effect: It stops, source: rumour}]}}}}
        facts: [{chip: heron, tex-pal8: no, source: manual}]
        """));

    [Fact] // R11: palettes that nobody looked for were taken as lost, and the title as certainly not running.
    public void Textures_are_too_large_only_where_their_format_is_known() => Assert.Equal("not known, at best works, natively", Label(
        """
        titles:
          bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, memory: {presets: [{name: low, textures: 9 MiB, format: 8-bit-palette, measured: yes}]}}}}
        """));

    [Fact] // R11: a preset that fits only where palettes stay palettes was taken not to fit, and what it asks for not to be asked for.
    public void A_preset_counts_as_not_known_where_its_format_is() => Assert.Equal("runs, paletted textures not known, natively", Label(
        """
        titles:
          bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6,
            needs: {severe: [{need: tex-dxt1, when: {preset: high}}]},
            memory: {presets: [{name: low, textures: 1 MiB}, {name: high, textures: 9 MiB, format: 8-bit-palette}]}}}}
        facts: [{chip: heron, tex-dxt1: no, source: manual}]
        """));

    [Fact] // R11: where no preset was known to fit, none was judged, although the title runs with the smallest or not at all.
    public void The_smallest_preset_counts_where_none_is_known_to_fit() => Assert.Equal("not known, at best loses compressed textures (severe), natively", Label(
        """
        titles:
          bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6,
            needs: {severe: [{need: tex-dxt1, when: {preset: low}}]},
            memory: {presets: [{name: low, textures: 40 MiB}]}}}}
        facts: [{chip: heron, tex-dxt1: no, source: manual}]
        """));

    [Fact] // R1: hearsay made a measured wider fact fall out, so that another one won for certain.
    public void Hearsay_does_not_silence_what_it_is_narrower_than() => Assert.Equal("runs, paletted textures not known, natively", Label(
        """
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [tex-pal8]}}}}}
        facts:
          - {chip: heron, tex-pal8: no, source: bench}
          - {api: direct3d, tex-pal8: yes, source: bench}
          - {chip: heron, os: windows-98se, tex-pal8: yes, source: rumour}
        """));

    [Fact] // R3: of two disagreeing driver facts the one that names hardware made the other's plain "yes" one of hardware.
    public void A_drivers_plain_yes_hands_on_the_chip_even_in_a_conflict()
    {
        var verdict = Ask(
            """
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [tex-pal8]}}}}}
            facts:
              - {driver: heron-9x, from: "2.0", tex-pal8: yes, source: readme}
              - {chip: heron, driver: heron-9x, tex-pal8: broken, source: readme}
            """,
            "bay on heron-16 with heron-9x@2.0");
        Assert.Equal(["runs", "runs, Severe tex-pal8 Missing", "runs, Severe tex-pal8 WrongPicture"], verdict.Overall.Outcomes.Select(o => o.ToString()).Order(StringComparer.Ordinal));
    }

    [Fact] // R3: where the chip's own facts disagree, hardware was certain although one of them says that there is none.
    public void A_drivers_yes_over_a_conflict_about_the_chip_may_be_emulation() => Assert.Equal("runs, paletted textures not known, natively", Label(
        """
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [{need: tex-pal8, hardware: yes}]}}}}}
        facts:
          - {chip: heron, tex-pal8: no, source: manual}
          - {chip: heron, tex-pal8: yes, source: readme}
          - {chip: heron, driver: heron-9x, tex-pal8: yes, source: readme}
        """));

    [Fact] // R15: what was seen missing on the route still vetoed it as "breaks if present".
    public void What_is_seen_missing_cannot_break_the_route() => Assert.Equal("works, natively", Label(
        """
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, defects: [{if-present: fog-table, effect: It stops}]}}}}
        observations: [{title: bay, renderer: d3d, card: heron-16, wrapper: none, seen: {fog-table: no}, source: bench}]
        """));

    [Fact] // R15: a sighting that names no wrapper proved a version that does not understand the title's API level.
    public void A_sighting_without_a_version_adds_nothing_to_what_versions_offer()
    {
        var verdict = Ask(
            """
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "2"}, on: direct3d 7, os: {windows-98se: yes}, source: readme}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {glide: {api: glide 3}}}}
            observations: [{title: bay, renderer: glide, card: heron-16, runs: yes, source: bench}]
            """,
            "bay on heron-16 with heron-9x@2.0");
        Assert.Equal([true, false], verdict.Routes.OrderByDescending(finding => finding.Route.IsNative).Select(finding => finding.Range.CertainlyRuns));
    }

    [Fact] // R15: a rumour was weighed against the single gates, not against what they certainly come to together.
    public void A_rumour_of_running_counts_against_a_route_that_fails_either_way() => Assert.Equal("not known, at best works, natively", Label(
        """
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {must: [tex-pal8]}, defects: [{if-present: tex-pal8, effect: It stops}]}}}}
        observations: [{title: bay, renderer: d3d, card: heron-16, wrapper: none, runs: yes, source: rumour}]
        """));

    [Fact] // R16: of two routes with equal worst ends the one without the better best end led.
    public void Of_equal_worst_ends_the_better_best_end_leads() => Assert.Equal("runs, paletted textures not known, natively", Label(
        """
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: direct3d 6, needs: {ungraded: [tex-dxt1]}}, b: {api: direct3d 6, needs: {severe: [tex-pal8]}}}}}
        facts: [{chip: heron, tex-dxt1: no, source: manual}]
        """));

    [Fact] // R13, R14: "works" named one route, which alone does not certainly run.
    public void A_certain_outcome_by_changing_routes_names_them_all()
    {
        var verdict = Ask(
            """
            drivers: {late-9x: {name: Late 9x, os: [windows-98se], lists: [heron-16], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}}
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "3"}, on: direct3d 7, passes: [tex-pal8, tex-dxt1], os: {windows-98se: yes}, source: readme}]}}
            titles:
              bay:
                name: Bay
                os: [windows-98se]
                source: bench
                renderers:
                  a: {api: glide 3, needs: {must: [tex-pal8]}}
                  b: {api: direct3d 6, defects: [{if-present: tex-pal8, effect: It stops}]}
                  c: {api: glide 3, needs: {severe: [tex-dxt1]}}
            facts:
              - {driver: late-9x, glide: none, source: readme}
              - {chip: heron, tex-dxt1: no, source: manual}
            """,
            "bay on heron-16 with late-9x@1.0");
        Assert.Equal(OutcomeLabel.Works, verdict.Headline.Outcome);
        Assert.Equal(["a", "b"], verdict.Headline.By.Select(finding => finding.Route.Renderer.Id).Order(StringComparer.Ordinal));
        Assert.Empty(verdict.Headline.Deciding);
    }

    [Fact] // R13, R14: a route was left out because its best end counts ungraded losses as cosmetic; another outcome of it was better.
    public void A_route_is_left_out_only_where_none_of_its_outcomes_is_better()
    {
        var verdict = Ask(
            """
            titles:
              bay:
                name: Bay
                os: [windows-98se]
                source: bench
                renderers:
                  a: {api: direct3d 6, needs: {severe: [stencil-bits 8], cosmetic: [tex-8888]}}
                  b:
                    api: direct3d 6
                    needs:
                      severe: [{need: tex-dxt1, broken: bonus}]
                      ungraded: [{any-of: [tex-dxt1, fog-table]}, {any-of: [tex-dxt1, mt-units 2]}]
            facts:
              - {chip: heron, stencil-bits: none, source: manual}
              - {chip: heron, tex-8888: no, source: manual}
              - {chip: heron, mt-units: "2", source: manual}
              - {chip: heron, tex-dxt1: no, source: manual}
              - {chip: heron, tex-dxt1: broken, source: readme}
            """,
            "bay on heron-16 with heron-9x@2.0");
        Assert.Equal(
            ["runs, Severe stencil-bits 8 Missing, Cosmetic tex-8888 Missing", "runs, Severe tex-dxt1 Missing"],
            verdict.Overall.Outcomes.Select(outcome => outcome.ToString()).Order(StringComparer.Ordinal));
    }

    [Fact] // R8: what a complete list implies was taken as left out of it.
    public void A_complete_list_has_what_it_implies() => Assert.Equal("works, wrapper only", Label(
        """
        wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "3"}, on: direct3d 7, supplies: {tex-pal-alpha: yes}, complete: yes, os: {windows-98se: yes}, source: readme}]}}
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {glide: {api: glide 3, needs: {severe: [tex-pal8]}}}}}
        facts: [{driver: heron-9x, glide: none, source: readme}]
        """));

    [Theory] // R1 holds for operating systems and runtimes as well: the first statement counted, whatever the others said.
    [InlineData(Grade.Documented, Grade.Measured, OutcomeLabel.DoesNotRun)]
    [InlineData(Grade.Measured, Grade.Documented, OutcomeLabel.Works)]
    [InlineData(Grade.Documented, Grade.Documented, OutcomeLabel.NotKnown)]
    public void Statements_about_a_runtime_are_weighed(Grade all, Grade none, OutcomeLabel expected)
    {
        var everything = new FactPlan(ScopePlan.Everything, new CapabilityPlan(CatalogBuilder.FeatureCount, 2), Reach.UpTo, FeatureMatrix.Model.Support.Yes, Grade.Documented);
        var generated = CatalogBuilder.Build(new CatalogPlan(
            [new CardPlan(0, 3, 0, 1, [])], [new OsPlan([new RuntimePlan(3, all), new RuntimePlan(0, none)])], [new BranchPlan([new VersionPlan(1, 1, [])])],
            [everything], [], [new TitlePlan(-1, [new RendererPlan(0, 0, -1, 1, [], [], new MemoryPlan(0, false, 1, -1, 0, TextureFormat.Bits16))])], [],
            new TermsPlan(false, -1, true, -1, false, 1, -1)));
        var verdict = new Resolver(generated.Catalog).Resolve(generated.Catalog.Titles[0], generated.Catalog.Cards[0]);
        Assert.Equal(expected, verdict.Headline.Outcome);
    }

    private static string Label(string world) => LabelWording.Label(Ask(world, "bay on heron-16 with heron-9x@2.0")).Split(';')[0];

    private static Verdict Ask(string world, string question) => ResolverQuestion.Ask(Worlds.Load(Base, world), question);
}
