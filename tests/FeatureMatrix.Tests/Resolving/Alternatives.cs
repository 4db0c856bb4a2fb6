using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>What a cell says first, what stands beside it and what is recommended (rule R16). The base is that of RULES.md.</summary>
public sealed class Headline_alternatives_and_recommendation
{
    private const string Grave =
        """
        wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {direct3d: "6"}, on: direct3d 7, supplies: {tex-pal8: emulated}, os: {windows-98se: yes}, source: readme}]}}
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [tex-pal8]}}}}}
        facts: [{chip: heron, tex-pal8: no, source: manual}]
        """;

    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Fact]
    public void Only_what_is_or_may_be_milder_stands_beside_the_headline_and_the_mildest_stands_first() => Assert.Equal(
        [
            "first: d3d natively: runs, Severe tex-pal8 Missing",
            "beside: d3d through whole@1: runs",
            "beside: d3d through milder@1: runs, Cosmetic tex-8888 Missing",
            "beside: d3d through open@1: runs | runs, Severe tex-dxt1 Missing | runs, Severe tex-pal8 Missing | runs, Severe tex-dxt1 Missing, Severe tex-pal8 Missing",
            "recommended: d3d through whole@1: runs",
        ],
        Said(
            """
            wrappers:
              equal: {name: Equal, versions: [{version: "1", offers: {direct3d: "6"}, on: direct3d 7, supplies: {tex-dxt1: yes, tex-8888: yes}, complete: yes, os: {windows-98se: yes}, source: readme}]}
              graver: {name: Graver, versions: [{version: "1", offers: {direct3d: "6"}, on: direct3d 7, supplies: {tex-8888: yes}, complete: yes, os: {windows-98se: yes}, source: readme}]}
              milder: {name: Milder, versions: [{version: "1", offers: {direct3d: "6"}, on: direct3d 7, supplies: {tex-pal8: yes, tex-dxt1: yes}, complete: yes, os: {windows-98se: yes}, source: readme}]}
              open: {name: Open, versions: [{version: "1", offers: {direct3d: "6"}, on: direct3d 7, supplies: {tex-8888: yes}, os: {windows-98se: yes}, source: readme}]}
              whole: {name: Whole, versions: [{version: "1", offers: {direct3d: "6"}, on: direct3d 7, supplies: {tex-pal8: yes, tex-dxt1: yes, tex-8888: yes}, os: {windows-98se: yes}, source: readme}]}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [tex-pal8, tex-dxt1], cosmetic: [tex-8888]}}}}}
            facts:
              - {chip: heron, tex-pal8: no, source: manual}
              - {chip: heron, tex-dxt1: yes, source: manual}
              - {chip: heron, tex-8888: yes, source: manual}
            """));

    [Fact]
    public void A_native_route_that_may_be_milder_does_not_stand_beside_it() => Assert.Equal(
        [
            "first: a natively: runs, Severe tex-pal8 Missing",
            "recommended: a natively: runs, Severe tex-pal8 Missing",
        ],
        Said(
            """
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: direct3d 6, needs: {severe: [tex-pal8]}}, b: {api: direct3d 6, needs: {severe: [tex-dxt1, tex-8888]}}}}}
            facts: [{chip: heron, tex-pal8: no, source: manual}]
            """));

    [Theory]
    [InlineData(true, "recommended: d3d natively: runs, Severe tex-pal8 Missing")]
    [InlineData(false, "recommended: d3d through veil@1: runs")]
    public void A_milder_route_that_was_measured_is_recommended_only_above_the_speed_floor(bool under, string recommended) => Assert.Equal(
        ["first: d3d natively: runs, Severe tex-pal8 Missing", "beside: d3d through veil@1: runs", recommended],
        Said(Grave, Terms.Default with { IsMeasuredUnderFloor = route => route.IsNative != under }));

    [Fact]
    public void A_loss_that_nobody_graded_in_place_of_a_severe_one_is_no_reason_to_recommend() => Assert.Equal(
        [
            "first: d3d natively: runs, Severe tex-pal8 Missing, Cosmetic tex-8888 Missing",
            "beside: glide through veil@1: runs, Ungraded tex-dxt1 Missing",
            "recommended: d3d natively: runs, Severe tex-pal8 Missing, Cosmetic tex-8888 Missing",
        ],
        Said(
            """
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "2"}, on: direct3d 7, complete: yes, os: {windows-98se: yes}, source: readme}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [tex-pal8], cosmetic: [tex-8888]}}, glide: {api: glide 2, needs: {ungraded: [tex-dxt1]}}}}}
            facts:
              - {driver: heron-9x, glide: none, source: readme}
              - {chip: heron, tex-pal8: no, source: manual}
              - {chip: heron, tex-8888: no, source: manual}
            """));

    [Fact]
    public void A_route_without_a_loss_that_nobody_graded_is_recommended() => Assert.Equal(
        ["first: d3d natively: runs, Ungraded tex-pal8 Missing", "beside: d3d through veil@1: runs", "recommended: d3d through veil@1: runs"],
        Said(Grave.Replace("severe", "ungraded", StringComparison.Ordinal)));

    [Fact]
    public void Where_nothing_certainly_runs_the_route_that_is_best_at_its_best_comes_first_alone() => Assert.Equal(
        ["first: b natively: runs | does not run", "recommended: b natively: runs | does not run"],
        Said(
            """
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: direct3d 6, needs: {must: [tex-dxt1], severe: [tex-8888]}}, b: {api: direct3d 6, needs: {must: [tex-pal8]}}}}}
            facts: [{chip: heron, tex-8888: no, source: manual}]
            """));

    [Fact]
    public void Of_one_wrapper_version_only_the_mildest_route_stands_beside_it() => Assert.Equal(
        [
            "first: c natively: runs, Severe tex-pal8 Missing",
            "beside: b through veil@1: runs",
            "recommended: b through veil@1: runs",
        ],
        Said(
            """
            wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "2"}, on: direct3d 7, complete: yes, os: {windows-98se: yes}, source: readme}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: glide 2, needs: {cosmetic: [tex-8888]}}, b: {api: glide 2}, c: {api: direct3d 6, needs: {severe: [tex-pal8]}}}}}
            facts:
              - {driver: heron-9x, glide: none, source: readme}
              - {chip: heron, tex-pal8: no, source: manual}
            """));

    private static string[] Said(string world, Terms? terms = null)
    {
        var verdict = Ask(world, terms);
        return
        [
            .. verdict.Headline.By.Select(finding => "first: " + Text(finding)),
            .. verdict.Alternatives.Select(finding => "beside: " + Text(finding)),
            "recommended: " + (verdict.Recommended is { } route ? Text(route) : "nothing"),
        ];

        static string Text(RouteFinding finding) =>
            $"{finding.Route.Renderer.Id} {(finding.Route.Wrapper is { } wrapper ? "through " + wrapper.Id : "natively")}: {string.Join(" | ", finding.Range.Outcomes)}";
    }

    private static Verdict Ask(string world, Terms? terms = null)
    {
        var catalog = Worlds.Load(Base, world);
        var resolver = new Resolver(catalog);
        var setup = resolver.SetupsOf(catalog.Cards.Single(card => card.Id == "heron-16")).Single(setup => setup.Driver.Id == "heron-9x@2.0");
        return resolver.Resolve(catalog.Titles.Single(), setup, terms);
    }
}
