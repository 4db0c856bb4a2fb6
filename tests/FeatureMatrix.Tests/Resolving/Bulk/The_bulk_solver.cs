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

    private readonly BulkAgreement _agreement = new();

    [Fact]
    public void Agrees_with_the_resolver_on_both_ends_and_the_best_route_of_every_cell_it_does_not_mark()
    {
        CatalogGenerator.Plans.Sample(plan => _agreement.FirstDifference(CatalogBuilder.Build(plan)) is null, iter: Catalogs, threads: 1, print: Smallest);
        output.WriteLine($"{_agreement.Cells} cells, {_agreement.Marked} of them marked");
        Assert.True(_agreement.Cells > 4 * Catalogs, $"too few cells: {_agreement.Cells}");
    }

    [Fact]
    public void Leaves_few_cells_of_unwatched_titles_to_the_resolver()
    {
        CatalogGenerator.Plans.Select(plan => plan with { Observations = [] })
            .Sample(plan => _agreement.FirstDifference(CatalogBuilder.Build(plan)) is null, iter: Catalogs, threads: 1, print: Smallest);
        output.WriteLine($"{_agreement.Cells} cells, {_agreement.Marked} of them marked");
        Assert.True(_agreement.Marked < _agreement.Cells / 6, $"{_agreement.Marked} of {_agreement.Cells} cells are marked");
    }

    [Fact]
    public void Counts_what_the_resolver_counts_on_setups_and_on_cards() =>
        CatalogGenerator.Plans.Sample(CountsAgree, iter: Catalogs / 2, threads: 1, print: plan => CatalogDump.Of(CatalogBuilder.Build(plan)));

    internal static void CountsAgree(CatalogPlan plan)
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
    }

    private string Smallest(CatalogPlan plan)
    {
        var smallest = PlanReducer.Reduce(plan, smaller => _agreement.FirstDifference(CatalogBuilder.Build(smaller)) is not null);
        return $"{_agreement.FirstDifference(CatalogBuilder.Build(smallest))}\n{CatalogDump.Of(CatalogBuilder.Build(smallest))}";
    }
}
