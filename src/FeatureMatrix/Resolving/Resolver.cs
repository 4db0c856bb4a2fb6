using System.Collections.Concurrent;
using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// Decides, per title and setup, what runs, by which route and what is lost. The rules are in RULES.md beside this file.
/// Pure, and may be asked from several threads at once.
/// </summary>
public sealed class Resolver
{
    /// <summary>The number of completions that are walked before bounds are given instead.</summary>
    public const int CompletionLimit = 512;

    private readonly Catalog _catalog;
    private readonly ObservationIndex _observations;
    private readonly RouteBuilder _builder;
    private readonly RouteRange _ranges;
    private readonly BestRoute _best;
    private readonly ILookup<Feature, WrapperVersion> _wrappersFor;
    private readonly ConcurrentDictionary<Card, IReadOnlyList<Setup>> _setups = [];

    /// <summary>Prepares to decide about a collection.</summary>
    public Resolver(Catalog catalog)
    {
        _catalog = catalog;
        Supply = new SupplyTable(catalog);
        Setups = new SetupFinder(catalog);
        var completions = new Completions(CompletionLimit);
        _ranges = new RouteRange(completions);
        _observations = new ObservationIndex(catalog, _ranges);
        _builder = new RouteBuilder(Supply, _observations);
        _best = new BestRoute(completions);
        _wrappersFor = WrappersByApi(catalog);
    }

    /// <summary>What cards, drivers and operating systems supply.</summary>
    public SupplyTable Supply { get; }

    /// <summary>The setups that cards can be in.</summary>
    public SetupFinder Setups { get; }

    /// <summary>The collection.</summary>
    public Catalog Catalog => _catalog;

    /// <summary>The verdict about a title on one setup.</summary>
    public Verdict Resolve(Title title, Setup setup, Terms? terms = null) => Resolve(title, setup.Card, [setup], terms);

    /// <summary>The verdict about a title on a card: the best permitted setup counts (rule R17).</summary>
    public Verdict Resolve(Title title, Card card, Terms? terms = null) => Resolve(title, card, SetupsOf(card), terms);

    /// <summary>The verdict about a title on a card under one operating system.</summary>
    public Verdict Resolve(Title title, Card card, Os os, Terms? terms = null) =>
        Resolve(title, card, SetupsOf(card).Where(setup => setup.Os == os).ToList(), terms) with { Os = os };

    /// <summary>The verdict about a title on some setups of a card; in each completion the best permitted route counts (rule R13).</summary>
    public Verdict Resolve(Title title, Card card, IReadOnlyList<Setup> setups, Terms? terms = null)
    {
        terms ??= Terms.Default;
        var found = Routes(title, setups)
            .Select(route => _builder.Build(route, terms)).Select(form => new RouteFinding(form, _ranges.Of(form)))
            .Order(Comparer<RouteFinding>.Create(RouteFinding.ComparePreference)).ToList();
        return Judge(title, card, setups, terms, found);
    }

    /// <summary>The verdict on some of the setups that a verdict looked at: by the same routes, without asking again what they supply.</summary>
    public Verdict Narrow(Verdict verdict, IReadOnlyList<Setup> setups) => Judge(
        verdict.Title, verdict.Card, setups, verdict.Terms, verdict.Routes.Concat(verdict.OnSoftwareDrivers).Where(finding => setups.Contains(finding.Route.Setup)).ToList());

    private Verdict Judge(Title title, Card card, IReadOnlyList<Setup> setups, Terms terms, List<RouteFinding> found)
    {
        // A driver that draws with the processor is software rendering by another name (rule R7).
        var routes = found.Where(finding => !finding.Route.Setup.Driver.IsSoftware).ToList();
        var permitted = routes.Where(finding => finding.Form.IsPermitted && !finding.Range.CertainlyFails).ToList();
        var pool = _best.Of(permitted);
        var headline = HeadlineRule.Choose(routes, permitted, pool);
        var alternatives = AlternativeRule.Alternatives(headline, permitted);
        return new Verdict
        {
            Title = title,
            Card = card,
            Setups = setups,
            Terms = terms,
            Headline = headline,
            Alternatives = alternatives,
            Recommended = AlternativeRule.Recommend(headline, alternatives, terms),
            Overall = pool.Range,
            Routes = routes,
            OnSoftwareDrivers = found.Where(finding => finding.Route.Setup.Driver.IsSoftware).ToList(),
            Software = title.Renderers
                .Where(renderer => renderer.IsSoftware
                    ? renderer.Oses.Any(os => terms.Policy.Allows(os) && setups.Any(setup => setup.Os == os))
                    : found.Exists(finding => finding.Route.Renderer == renderer && finding.Route.Setup.Driver.IsSoftware
                        && finding.Form.IsPermitted && finding.Range.CertainlyRuns)).ToList(),
        };
    }

    /// <summary>The wrapper versions that offer an API at some level.</summary>
    internal static ILookup<Feature, WrapperVersion> WrappersByApi(Catalog catalog) => catalog.WrapperVersions
        .SelectMany(version => version.Offers.Select(offer => (offer.Feature, version))).Distinct()
        .ToLookup(pair => pair.Feature, pair => pair.version);

    /// <summary>All setups of a card.</summary>
    public IReadOnlyList<Setup> SetupsOf(Card card) => _setups.GetOrAdd(card, Setups.Of);

    private IEnumerable<Route> Routes(Title title, IReadOnlyList<Setup> setups)
    {
        foreach (var renderer in title.Renderers.Where(renderer => !renderer.IsSoftware))
        {
            foreach (var setup in setups)
            {
                yield return new Route(renderer, setup, null);
                var listed = renderer.Oses.Contains(setup.Os) || _observations.HasSeen(renderer, setup.Os) ? _wrappersFor[renderer.Api!.Value.Feature] : [];
                foreach (var version in listed.Union(_observations.WrappersUsedWith(renderer)))
                    yield return new Route(renderer, setup, version);
            }
        }
    }
}
