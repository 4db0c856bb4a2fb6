using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>The best permitted route in each completion (rule R13). The base is that of RULES.md.</summary>
public sealed class The_best_route_in_each_completion
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Fact]
    public void Is_certain_although_routes_that_are_never_better_hang_on_more_unknowns_than_can_be_walked()
    {
        var verdict = Ask(
            """
            a: {api: direct3d 6, needs: {severe: [tex-pal8]}}
            b: {api: direct3d 6, needs: {severe: [tex-pal8], cosmetic: [tex-dxt1, tex-8888, tex-env-bump, mt-units 2, ps-version 1.1]}}
            c: {api: direct3d 6, needs: {severe: [tex-pal8], cosmetic: [vs-version 1.1, stencil-bits 1, aa-multisample 2, vbe-lfb, gl-extension-string 1024]}}
            """,
            """
            facts: [{chip: heron, tex-pal8: no, source: manual}]
            """);
        Assert.Equal(["runs, Severe tex-pal8 Missing"], verdict.Overall.Outcomes.Select(outcome => outcome.ToString()));
        Assert.True(verdict.Overall.IsCertain);
    }

    [Fact]
    public void Counts_a_route_with_more_outcomes_than_are_listed()
    {
        var verdict = Ask(
            """
            a: {api: direct3d 6, needs: {severe: [tex-pal8]}}
            b: {api: direct3d 6, needs: {severe: [tex-dxt1, tex-8888, tex-env-bump, mt-units 2, ps-version 1.1, vs-version 1.1, stencil-bits 1]}}
            """,
            """
            facts: [{chip: heron, tex-pal8: no, source: manual}]
            """);
        Assert.Empty(verdict.Routes.Single(finding => finding.Route.Renderer.Id == "b").Range.Outcomes);
        Assert.Equal(["runs", "runs, Severe tex-pal8 Missing"], verdict.Overall.Outcomes.Select(outcome => outcome.ToString()));
    }

    [Fact]
    public void Asks_nothing_of_a_route_where_another_is_as_good_as_it_can_be()
    {
        var verdict = Ask(
            """
            a: {api: direct3d 6, needs: {severe: [{any-of: [tex-pal8, tex-dxt1]}]}}
            b: {api: direct3d 6, needs: {cosmetic: [tex-8888, tex-env-bump, mt-units 2, ps-version 1.1, vs-version 1.1, stencil-bits 1, aa-multisample 2, vbe-lfb]}}
            """);
        Assert.True(verdict.Overall.IsExact);
        Assert.Equal(256, verdict.Overall.Outcomes.Count);
        Assert.Equal(10, verdict.Overall.Deciding.Count);
    }

    [Fact]
    public void Is_decided_past_the_limit_by_what_others_hang_on_where_the_surest_route_is_certain()
    {
        var verdict = Ask(
            """
            a: {api: direct3d 6, needs: {severe: [tex-pal8]}}
            b: {api: direct3d 6, needs: {must: [tex-dxt1], cosmetic: [tex-8888, tex-env-bump, mt-units 2, ps-version 1.1, vs-version 1.1, stencil-bits 1, aa-multisample 2, vbe-lfb, gl-extension-string 1024]}}
            """,
            "facts: [{chip: heron, tex-pal8: no, source: manual}]");
        Assert.False(verdict.Overall.IsExact);
        Assert.Equal(verdict.Routes.Single(finding => finding.Route.Renderer.Id == "b").Range.Deciding, verdict.Overall.Deciding);
        Assert.Equal(10, verdict.Overall.Deciding.Count);
    }

    [Fact]
    public void Is_bounded_by_the_best_hope_and_the_surest_route_where_there_is_too_much_to_walk()
    {
        var verdict = Ask(
            """
            a: {api: direct3d 6, needs: {ungraded: [tex-pal-alpha, tex-8888, tex-env-bump, mt-units 2, ps-version 1.1, vs-version 1.1, stencil-bits 1, aa-multisample 2, vbe-lfb, gl-extension-string 1024]}}
            b: {api: direct3d 6, needs: {severe: [tex-dxt1, tex-8888], cosmetic: [tex-pal8]}}
            """,
            """
            facts: [{chip: heron, tex-pal8: no, source: manual}]
            """);
        Assert.Equal(
            ("within runs, Cosmetic tex-pal8 Missing to runs, Severe tex-8888 Missing, Severe tex-dxt1 Missing, Cosmetic tex-pal8 Missing", "b"),
            ($"{(verdict.Overall.IsExact ? "exactly" : "within")} {verdict.Overall.Best} to {verdict.Overall.Worst}", string.Join(' ', verdict.Headline.By.Select(finding => finding.Route.Renderer.Id))));
    }

    /// <summary>The verdict about one title of the base's system.</summary>
    /// <param name="renderers">Its renderers.</param>
    /// <param name="more">What else the collection states.</param>
    private static Verdict Ask(string renderers, string more = "") => ResolverQuestion.Ask(
        Worlds.Load(Base, $"titles:\n  bay:\n    name: Bay\n    os: [windows-98se]\n    source: bench\n    renderers:\n{Indented(renderers)}\n{more}\n"),
        "bay on heron-16 with heron-9x@2.0");

    private static string Indented(string lines) => string.Join('\n', lines.Split('\n').Select(line => "      " + line));
}
