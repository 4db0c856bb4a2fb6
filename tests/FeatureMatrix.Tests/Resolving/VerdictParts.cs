using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>What a verdict says beside its outcomes: watched routes, grades, ties, forced and software drivers. The base is that of RULES.md.</summary>
public sealed class A_verdict
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Fact]
    public void Knows_which_routes_somebody_watched_and_the_weakest_grade_they_rest_on()
    {
        var verdict = Ask(
            """
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: direct3d 6, needs: {severe: [{any-of: [tex-pal8, tex-dxt1]}]}}, b: {api: direct3d 6}}}}
            facts: [{chip: heron, tex-pal8: yes, source: notes}, {chip: heron, tex-dxt1: yes, source: rumour}]
            observations: [{title: bay, renderer: b, card: heron-16, runs: yes, source: bench}]
            """);
        Assert.Equal(["a False Inferred", "b True Documented"], verdict.Routes.Select(finding => $"{finding.Route.Renderer.Id} {finding.IsObserved} {finding.WeakestGrade}"));
    }

    [Fact]
    public void Prefers_of_two_equal_routes_the_one_that_does_not_reduce_its_textures_and_then_the_first_by_name()
    {
        var verdict = Ask(
            """
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {
              a: {api: direct3d 6, memory: {presets: [{name: low, textures: 1 MiB, measured: yes}, {name: high, textures: 40 MiB, measured: yes}]}},
              b: {api: direct3d 6}, c: {api: direct3d 6}}}}
            """);
        Assert.Equal(["b", "c", "a"], verdict.Routes.Select(finding => finding.Route.Renderer.Id));
        Assert.Equal("b", verdict.Headline.By.Single().Route.Renderer.Id);
        var routes = verdict.Routes;
        Assert.True(RouteFinding.Compare(routes[0], routes[1]) < 0);
        Assert.True(RouteFinding.Compare(routes[1], routes[2]) < 0);
        Assert.True(RouteFinding.Compare(routes[2], routes[0]) > 0);
    }

    [Fact]
    public void Is_forced_only_where_every_route_it_goes_by_is()
    {
        var routes = Ask("titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: direct3d 6}}}}").Routes;
        var forced = routes[0] with { Form = routes[0].Form with { Route = routes[0].Route with { Setup = routes[0].Route.Setup with { Install = Install.Forced } } } };
        Assert.Equal((false, false, true, false), (Forced(), Forced(routes[0]), Forced(forced), Forced(forced, routes[0])));

        bool Forced(params RouteFinding[] by) =>
            new Headline { Outcome = OutcomeLabel.RunsByOneOf, Route = RouteLabel.Natively, Range = routes[0].Range, By = by }.IsForced;
    }

    [Fact]
    public void Narrowed_to_some_setups_is_that_of_those_setups()
    {
        var catalog = Worlds.Load(
            Base,
            """
            drivers: {soft: {name: Soft, os: [windows-98se], lists: [heron-16], offers: {opengl: "1.1"}, source: readme, versions: [{version: "1.0", software: yes}]}}
            titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {a: {api: direct3d 6}, gl: {api: opengl 1.1}}}}
            facts: [{driver: heron-9x, opengl: none, source: readme}]
            """);
        var resolver = new Resolver(catalog);
        var whole = resolver.Resolve(catalog.Titles.Single(), catalog.Cards.Single());
        foreach (var setup in whole.Setups)
        {
            var (narrow, asked) = (resolver.Narrow(whole, [setup]), resolver.Resolve(catalog.Titles.Single(), setup));
            Assert.Equal(Text(asked), Text(narrow));
        }

        Assert.Equal("DoesNotRun, software gl", Text(resolver.Narrow(whole, [.. whole.Setups.Where(setup => setup.Driver.IsSoftware)])));
        Assert.Equal("Works, software gl", Text(whole));

        static string Text(Verdict verdict) => $"{verdict.Headline.Outcome}, software {string.Join(' ', verdict.Software.Select(renderer => renderer.Id))}";
    }

    private static Verdict Ask(string world) => ResolverQuestion.Ask(Worlds.Load(Base, world), "bay on heron-16 with heron-9x@2.0");
}
