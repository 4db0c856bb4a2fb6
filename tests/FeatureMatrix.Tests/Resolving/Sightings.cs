using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>What was seen against what follows from the facts (rule R15). The base is that of RULES.md; the chip has no paletted textures.</summary>
public sealed class A_sighting
{
    private const string Facts = "facts: [{chip: heron, tex-pal8: no, source: manual}, {chip: heron, tex-dxt1: yes, source: manual}, {chip: heron, tex-8888: emulated, source: manual}]";
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Theory]
    [InlineData("mode: 640x480", true)]
    [InlineData("mode: 800x600", false)]
    [InlineData("depth: 16", true)]
    [InlineData("depth: 32", false)]
    [InlineData("os: windows-98se", true)]
    [InlineData("os: windows-2000", false)]
    [InlineData("driver: heron-9x@2.0", true)]
    [InlineData("driver: heron-9x@1.0", false)]
    [InlineData("card: heron-16", true)]
    [InlineData("wrapper: none", true)]
    [InlineData("os: windows-98se, driver: heron-9x@2.0, mode: 640x480, depth: 16", true)]
    [InlineData("os: windows-98se, driver: heron-9x@2.0, mode: 640x480, depth: 32", false)]
    public void Counts_where_all_that_it_names_agrees(string keys, bool counts) => Assert.Equal(
        counts ? "runs; seen by 1; contradicted: 1 suspects" : "does not run; seen by 0",
        Said("must: [tex-pal8]", $"{{title: bay, renderer: d3d, {keys}, runs: yes, source: bench}}"));

    [Fact]
    public void That_names_no_system_contradicts_nothing_on_systems_that_the_title_is_not_recorded_for()
    {
        var catalog = Worlds.Load(
            Base,
            """
            titles: {bay: {name: Bay, os: [windows-2000], source: bench, renderers: {d3d: {api: direct3d 6, needs: {must: [fog-table]}}}}}
            observations: [{title: bay, renderer: d3d, card: heron-16, runs: yes, source: bench}]
            """);
        var verdict = ResolverQuestion.Ask(catalog, "bay on heron-16 with heron-9x@2.0");
        Assert.Equal(["does not run"], verdict.Overall.Outcomes.Select(outcome => outcome.ToString()));
        Assert.Empty(verdict.Contradictions);
    }

    [Fact]
    public void Of_running_settles_musts_and_no_other_need() => Assert.Equal(
        "runs, Severe tex-pal8 Missing; seen by 1", Said("must: [fog-table], severe: [tex-pal8]", "{title: bay, renderer: d3d, runs: yes, source: bench}"));

    [Fact]
    public void Of_not_running_stands_against_all_facts_that_say_otherwise() => Assert.Equal(
        "does not run; seen by 1; contradicted: 3 suspects",
        Said("must: [fog-table, {any-of: [tex-pal8, tex-dxt1]}]", "{title: bay, renderer: d3d, runs: no, source: bench}"));

    [Fact]
    public void That_says_what_follows_anyway_contradicts_nothing() => Assert.Equal(
        "runs; seen by 1", Said("must: [fog-table]", "{title: bay, renderer: d3d, runs: yes, seen: {fog-table: yes}, source: bench}"));

    [Theory]
    [InlineData("{title: bay, renderer: d3d, runs: yes, source: bench}", "{title: bay, renderer: d3d, runs: no, source: bench}")]
    [InlineData("{title: bay, renderer: d3d, runs: no, source: notes}", "{title: bay, renderer: d3d, runs: yes, source: bench}")]
    public void That_another_denies_leaves_it_open_whichever_is_the_better(string one, string other) =>
        Assert.Equal("runs | does not run by ObservedRun; seen by 2", Said("must: [fog-table]", one, other));

    [Theory]
    [InlineData("runs: no", "runs | does not run by ObservedRun; seen by 1")]
    [InlineData("runs: yes", "runs; seen by 1")]
    public void By_hearsay_counts_only_against_what_is_certain(string seen, string expected) =>
        Assert.Equal(expected, Said("must: [fog-table]", $"{{title: bay, renderer: d3d, {seen}, source: rumour}}"));

    [Fact]
    public void By_hearsay_says_nothing_where_nothing_is_certain() => Assert.Equal(
        "runs | does not run by Supply; seen by 1", Said("must: [tex-env-bump]", "{title: bay, renderer: d3d, runs: yes, source: rumour}"));

    [Fact]
    public void By_hearsay_is_silent_beside_a_better_one() => Assert.Equal(
        "runs; seen by 2", Said("must: [fog-table]", "{title: bay, renderer: d3d, runs: no, source: rumour}", "{title: bay, renderer: d3d, runs: yes, source: notes}"));

    [Theory]
    [InlineData("tex-dxt1: no", "runs, Severe tex-dxt1 Missing; seen by 1; contradicted: 1 suspects")]
    [InlineData("tex-dxt1: broken", "runs, Severe tex-dxt1 WrongPicture; seen by 1; contradicted: 1 suspects")]
    [InlineData("tex-dxt1: yes", "runs; seen by 1")]
    public void Of_a_feature_stands_in_place_of_the_facts(string seen, string expected) =>
        Assert.Equal(expected, Said("severe: [tex-dxt1]", $"{{title: bay, renderer: d3d, seen: {{{seen}}}, source: bench}}"));

    [Fact]
    public void Of_a_feature_that_another_denies_leaves_it_open() => Assert.Equal(
        "runs | runs, Severe tex-dxt1 Missing by ObservedFeature; seen by 2",
        Said("severe: [tex-dxt1]", "{title: bay, renderer: d3d, seen: {tex-dxt1: yes}, source: bench}", "{title: bay, renderer: d3d, seen: {tex-dxt1: no}, source: notes}"));

    [Theory]
    [InlineData("tex-dxt1: no", "runs | runs, Severe tex-dxt1 Missing by ObservedFeature; seen by 1")]
    [InlineData("tex-dxt1: yes", "runs; seen by 1")]
    public void Of_a_feature_by_hearsay_counts_only_against_what_is_certain(string seen, string expected) =>
        Assert.Equal(expected, Said("severe: [tex-dxt1]", $"{{title: bay, renderer: d3d, seen: {{{seen}}}, source: rumour}}"));

    [Fact]
    public void Of_a_feature_by_hearsay_says_nothing_where_nothing_is_certain() => Assert.Equal(
        "runs | runs, Severe tex-env-bump Missing by Supply; seen by 1",
        Said("severe: [tex-env-bump]", "{title: bay, renderer: d3d, seen: {tex-env-bump: yes}, source: rumour}"));

    [Fact]
    public void Of_a_feature_by_hearsay_is_silent_beside_a_better_one() => Assert.Equal(
        "runs; seen by 2",
        Said("severe: [tex-dxt1]", "{title: bay, renderer: d3d, seen: {tex-dxt1: no}, source: rumour}", "{title: bay, renderer: d3d, seen: {tex-dxt1: yes}, source: bench}"));

    [Theory]
    [InlineData("tex-8888: yes", "runs, Severe tex-8888 NotInHardware; seen by 1")]
    [InlineData("tex-8888: no", "runs, Severe tex-8888 Missing; seen by 1; contradicted: 1 suspects")]
    [InlineData("tex-8888: broken", "runs, Severe tex-8888 WrongPicture; seen by 1; contradicted: 1 suspects")]
    public void Does_not_make_hardware_of_what_is_emulated(string seen, string expected) =>
        Assert.Equal(expected, Said("severe: [{need: tex-8888, hardware: yes}]", $"{{title: bay, renderer: d3d, seen: {{{seen}}}, source: bench}}"));

    [Fact]
    public void Of_something_emulated_by_hearsay_agrees_that_it_is_there() => Assert.Equal(
        "runs, Severe tex-8888 NotInHardware; seen by 1",
        Said("severe: [{need: tex-8888, hardware: yes}]", "{title: bay, renderer: d3d, seen: {tex-8888: yes}, source: rumour}"));

    [Theory]
    [InlineData("tex-pal-alpha: yes", "runs; seen by 1; contradicted: 1 suspects")]
    [InlineData("tex-pal-alpha: no", "runs, Severe tex-pal8 Missing; seen by 1")]
    [InlineData("tex-pal-alpha: broken", "runs, Severe tex-pal8 Missing; seen by 1")]
    public void Of_a_feature_speaks_for_what_it_contains(string seen, string expected) =>
        Assert.Equal(expected, Said("severe: [tex-pal8]", $"{{title: bay, renderer: d3d, seen: {{{seen}}}, source: bench}}"));

    [Fact]
    public void Of_a_missing_feature_speaks_for_what_contains_it() => Assert.Equal(
        "runs, Severe tex-pal-alpha Missing; seen by 1",
        Said("severe: [tex-pal-alpha]", "{title: bay, renderer: d3d, seen: {tex-pal8: no}, source: bench}"));

    [Fact]
    public void Of_running_by_several_proves_what_any_of_them_names()
    {
        var verdict = ResolverQuestion.Ask(
            Worlds.Load(
                Base,
                """
                wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "2"}, on: direct3d 7, source: readme}]}}
                titles: {bay: {name: Bay, os: [windows-2000], source: bench, renderers: {glide: {api: glide 3}}}}
                observations:
                  - {title: bay, renderer: glide, card: heron-16, runs: yes, source: bench}
                  - {title: bay, renderer: glide, card: heron-16, os: windows-98se, runs: yes, source: notes}
                  - {title: bay, renderer: glide, card: heron-16, wrapper: veil@1, runs: yes, source: bench}
                """),
            "bay on heron-16 with heron-9x@2.0");
        Assert.Equal(
            ["native: runs, by 2, weakest Documented", "veil@1: runs, by 3, weakest Documented"],
            verdict.Routes.Select(finding => $"{finding.Route.Wrapper?.Id ?? "native"}: {string.Join(" | ", finding.Range.Outcomes)}, by {finding.Form.Observations.Count}, weakest {finding.WeakestGrade}"));
        Assert.Equal(Grade.Measured, verdict.Routes[0].Form.Gates[^1].Answer.Grade);
    }

    [Theory]
    [InlineData("windows-98se", 2)]
    [InlineData("windows-2000", 1)]
    public void On_a_system_that_the_title_does_not_name_brings_wrapped_routes_there(string os, int routes)
    {
        var verdict = ResolverQuestion.Ask(
            Worlds.Load(
                Base,
                """
                wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "3"}, on: direct3d 7, source: readme}]}}
                titles: {bay: {name: Bay, os: [windows-95], source: bench, renderers: {glide: {api: glide 3}}}}
                observations: [{title: bay, renderer: glide, card: heron-16, os: SYSTEM, runs: yes, source: bench}]
                """.Replace("SYSTEM", os, StringComparison.Ordinal)),
            "bay on heron-16 with heron-9x@2.0");
        Assert.Equal(routes, verdict.Routes.Count);
    }

    [Fact]
    public void That_another_denies_leaves_the_states_that_were_seen_and_the_best_grade_counts_where_they_agree()
    {
        Assert.Equal("No/Broken/Yes (ObservationsDisagree, )", State("{title: bay, renderer: d3d, seen: {tex-dxt1: yes}, source: bench}", "{title: bay, renderer: d3d, seen: {tex-dxt1: broken}, source: bench}", "{title: bay, renderer: d3d, seen: {tex-dxt1: no}, source: bench}"));
        Assert.Equal("No/Yes (ObservationsDisagree, )", State("{title: bay, renderer: d3d, seen: {tex-dxt1: no}, source: rumour}"));
        Assert.Equal("Broken/Yes (ObservationsDisagree, )", State("{title: bay, renderer: d3d, seen: {tex-dxt1: broken}, source: rumour}"));
        Assert.Equal("No (Observed, Measured)", State("{title: bay, renderer: d3d, seen: {tex-dxt1: no}, source: notes}", "{title: bay, renderer: d3d, seen: {tex-dxt1: no}, source: bench}"));

        static string State(params string[] sightings)
        {
            var world = $"titles: {{bay: {{name: Bay, os: [windows-98se], source: bench, renderers: {{d3d: {{api: direct3d 6, needs: {{severe: [tex-dxt1]}}}}}}}}}}\n{Facts}\nobservations:\n{string.Join('\n', sightings.Select(sighting => "  - " + sighting))}";
            var answer = ResolverQuestion.Ask(Worlds.Load(Base, world), "bay on heron-16 with heron-9x@2.0").Routes.Single().Form.Needs.Single().Choices.Single().Answer;
            return $"{string.Join('/', answer.States)} ({answer.Reason}, {answer.Grade})";
        }
    }

    private static string Said(string needs, string sighting, string? another = null)
    {
        var world = $"titles: {{bay: {{name: Bay, os: [windows-98se], source: bench, renderers: {{d3d: {{api: direct3d 6, needs: {{{needs}}}}}}}}}}}\n{Facts}\nobservations:\n  - {sighting}{(another is null ? "" : "\n  - " + another)}";
        var finding = ResolverQuestion.Ask(Worlds.Load(Base, world), "bay on heron-16 with heron-9x@2.0").Routes.Single();
        var deciding = finding.Range.Deciding.Count == 0 ? "" : " by " + string.Join(", ", finding.Range.Deciding.Select(unknown => unknown.GetType().Name));
        return $"{string.Join(" | ", finding.Range.Outcomes)}{deciding}; seen by {finding.Form.Observations.Count}"
            + string.Concat(finding.Form.Contradictions.Select(one => $"; contradicted: {one.Suspects.Count} suspects"));
    }
}
