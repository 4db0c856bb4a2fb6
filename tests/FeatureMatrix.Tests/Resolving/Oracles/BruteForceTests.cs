using CsCheck;
using FeatureMatrix.Tests.Resolving.Generated;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>
/// Each title on each setup and on each card: the outcomes, both ends, certainty, the unknowns that decide, and the label.
/// A failure prints CsCheck's seed, the difference and the smallest catalog that shows it.
/// </summary>
public sealed class Resolver_and_brute_force(ITestOutputHelper output)
{
    [Fact]
    public void Agree_cell_by_cell_on_generated_catalogs() => Compare(600);

    // Last results: 20,000 catalogs agreed cell by cell in two and a half minutes.
    [Fact, Trait("Category", "campaign")]
    public void Agree_cell_by_cell_on_many_generated_catalogs() => Compare(20_000);

    private void Compare(int catalogs)
    {
        var tally = new Tally();
        CatalogGenerator.Plans.Sample(
            plan => Agreement.FirstDifference(CatalogBuilder.Build(plan), tally) is null, iter: catalogs, threads: 1, print: Smallest);
        output.WriteLine($"{catalogs} catalogs, {tally}");
        Assert.True(tally.Compared > 4 * catalogs, $"too few cells were compared: {tally}");
        Assert.True(tally.LeftOut < tally.Compared / 20, $"too many cells were left out: {tally}");
    }

    private static string Smallest(CatalogPlan plan)
    {
        var small = CatalogBuilder.Build(PlanReducer.Reduce(plan, smaller => Agreement.FirstDifference(CatalogBuilder.Build(smaller)) is not null));
        return $"{Agreement.FirstDifference(small)}\n{CatalogDump.Of(small)}";
    }
}
