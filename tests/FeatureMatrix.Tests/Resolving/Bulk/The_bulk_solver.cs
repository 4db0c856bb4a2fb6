using CsCheck;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;
using FeatureMatrix.Tests.Resolving.Generated;

namespace FeatureMatrix.Tests.Resolving.Bulk;

/// <summary>The bulk solver against the resolver, cell by cell. A failure prints CsCheck's seed and the smallest catalog that shows it.</summary>
public sealed class The_bulk_solver(ITestOutputHelper output)
{
    private const int Catalogs = 600;

    private int _cells;
    private int _marked;

    [Fact]
    public void Agrees_with_the_resolver_on_both_ends_and_the_best_route_of_every_cell_it_does_not_mark()
    {
        CatalogGenerator.Plans.Sample(plan => FirstDifference(CatalogBuilder.Build(plan)) is null, iter: Catalogs, threads: 1, print: Smallest);
        output.WriteLine($"{_cells} cells, {_marked} of them marked");
        Assert.True(_cells > 4 * Catalogs, $"too few cells: {_cells}");
    }

    [Fact]
    public void Leaves_few_cells_of_unwatched_titles_to_the_resolver()
    {
        CatalogGenerator.Plans.Select(plan => plan with { Observations = [] })
            .Sample(plan => FirstDifference(CatalogBuilder.Build(plan)) is null, iter: Catalogs, threads: 1, print: Smallest);
        output.WriteLine($"{_cells} cells, {_marked} of them marked");
        Assert.True(_marked < _cells / 6, $"{_marked} of {_cells} cells are marked");
    }

    [Fact]
    public void Counts_what_the_resolver_counts_on_setups_and_on_cards() => CatalogGenerator.Plans.Sample(
        plan =>
        {
            var generated = CatalogBuilder.Build(plan);
            var resolver = new Resolver(generated.Catalog);
            var places = generated.Catalog.Cards.Select(resolver.SetupsOf).SelectMany(setups => setups.Select(setup => (IReadOnlyList<Setup>)[setup]).Append(setups))
                .Where(setups => setups.Count > 0).ToList();
            var totals = CoverageTotals.Of(resolver, generated.Catalog.Titles, places, _ => generated.Terms);
            foreach (var (place, total) in places.Zip(totals))
            {
                var ranges = generated.Catalog.Titles.Select(title => resolver.Resolve(title, place[0].Card, place, generated.Terms).Overall).ToList();
                if (ranges.Exists(range => !range.IsExact))
                    continue;
                Assert.Equal(
                    (ranges.Count, ranges.Count(range => range.CertainlyRuns), ranges.Count(range => !range.CertainlyFails),
                        ranges.Count(range => range.Worst.Equals(Outcome.Works)), ranges.Count(range => range.Best.Equals(Outcome.Works))),
                    (total.Titles, total.RunAtWorst, total.RunAtBest, total.CompleteAtWorst, total.CompleteAtBest));
            }
        },
        iter: Catalogs / 2, threads: 1, print: plan => CatalogDump.Of(CatalogBuilder.Build(plan)));

    private string? FirstDifference(GeneratedCatalog generated)
    {
        var (catalog, terms) = (generated.Catalog, generated.Terms);
        var resolver = new Resolver(catalog);
        var setups = catalog.Cards.SelectMany(resolver.SetupsOf).ToList();
        var problem = BulkCompiler.Compile(catalog, catalog.Titles, setups, _ => terms);
        var solver = new BulkSolver(problem);
        var watched = new Watched(catalog);
        foreach (var (title, kind) in catalog.Titles.Zip(problem.KindOfTitle))
        {
            solver.Solve(problem.TitleKinds[kind]);
            foreach (var (setup, column) in setups.Zip(problem.KindOfSetup))
            {
                _cells++;
                var verdict = resolver.Resolve(title, setup, terms);
                if (problem.TitleKinds[kind].IsForResolver || watched.Is(title, setup) || solver.Marks[column] != 0)
                    _marked++;
                else if (Difference(verdict, solver, column, BulkCompiler.RoutesOf(title, Resolver.WrappersByApi(catalog), terms.Policy)) is { } difference)
                    return $"{title} on {setup} ({setup.Install}): {difference}";
            }
        }

        return null;
    }

    private static string? Difference(Verdict verdict, BulkSolver solver, int column, IReadOnlyList<(Renderer Renderer, WrapperVersion? Wrapper)> routes)
    {
        var range = verdict.Overall;
        var (worst, best) = (OutcomeCode.AtWorst(range.Worst), OutcomeCode.AtBest(range.Best));
        if (solver.Best[column] != best)
            return $"best end {range.Best}, in bulk {solver.Best[column]:x4}";
        if (range.IsExact ? solver.Worst[column] != worst : solver.Worst[column] > worst)
            return $"worst end {range.Worst}, in bulk {solver.Worst[column]:x4}";
        var first = verdict.Routes.Where(finding => finding.Form.IsPermitted && !finding.Range.CertainlyFails)
            .Order(Comparer<RouteFinding>.Create(RouteFinding.Compare)).FirstOrDefault()?.Route;
        var place = solver.Route[column];
        if (first is null)
            return place == BulkSolver.NoRoute ? null : $"no route, in bulk {routes[place]}";
        return place != BulkSolver.NoRoute && routes[place] == (first.Renderer, first.Wrapper) ? null : $"best route {first}, in bulk place {place}";
    }

    private string Smallest(CatalogPlan plan)
    {
        var smallest = PlanReducer.Reduce(plan, smaller => FirstDifference(CatalogBuilder.Build(smaller)) is not null);
        return $"{FirstDifference(CatalogBuilder.Build(smallest))}\n{CatalogDump.Of(CatalogBuilder.Build(smallest))}";
    }
}
