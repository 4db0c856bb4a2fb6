using CsCheck;
using FeatureMatrix.Tests.Resolving.Generated;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>
/// Rules R1 to R3, R5 to R8, R13 and R14 in the language of an answer-set solver (Debian package gringo), cell by cell. A
/// failure prints CsCheck's seed, the differences and the smallest catalog that shows one.
/// </summary>
public sealed class Resolver_and_answer_sets(ITestOutputHelper output)
{
    private const int CatalogsInOneRun = 40;

    [Fact]
    public void Agree_cell_by_cell_on_generated_catalogs() => Compare(6);

    // Last results: 4,000 catalogs agreed cell by cell in two and a half minutes.
    [Fact, Trait("Category", "campaign")]
    public void Agree_cell_by_cell_on_many_generated_catalogs() => Compare(100);

    private void Compare(int runs)
    {
        var cells = 0;
        CatalogGenerator.Plans.Select(AnswerSets.Covered).Array[CatalogsInOneRun].Sample(
            plans =>
            {
                var (count, differences) = Ask(plans);
                cells += count;
                return differences.Count == 0;
            },
            iter: runs, threads: 1, print: Smallest);
        output.WriteLine($"{runs * CatalogsInOneRun} catalogs, {cells} cells");
        Assert.True(cells > runs * CatalogsInOneRun, "too few cells were compared");
    }

    private static (int Cells, IReadOnlyList<string> Differences) Ask(params CatalogPlan[] plans)
    {
        var solver = new AnswerSets();
        foreach (var plan in plans)
            solver.Add(CatalogBuilder.Build(plan));
        return (solver.Cells, solver.Differences());
    }

    private static string Smallest(CatalogPlan[] plans)
    {
        var failing = plans.First(one => Ask(one).Differences.Count > 0);
        var plan = AnswerSets.Covered(PlanReducer.Reduce(failing, smaller => Ask(AnswerSets.Covered(smaller)).Differences.Count > 0));
        return $"{string.Join('\n', Ask(plan).Differences)}\n{CatalogDump.Of(CatalogBuilder.Build(plan))}";
    }
}
