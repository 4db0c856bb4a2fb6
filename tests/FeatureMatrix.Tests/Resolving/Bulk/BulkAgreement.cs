using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;
using FeatureMatrix.Tests.Resolving.Generated;

namespace FeatureMatrix.Tests.Resolving.Bulk;

/// <summary>Compares the bulk solver with the resolver, cell by cell, and counts the cells.</summary>
internal sealed class BulkAgreement
{
    /// <summary>All cells that were looked at.</summary>
    public int Cells { get; private set; }

    /// <summary>Those that the bulk solver leaves to the resolver.</summary>
    public int Marked { get; private set; }

    /// <summary>The first cell that differs, in words; null where all agree.</summary>
    public string? FirstDifference(GeneratedCatalog generated)
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
                Cells++;
                var verdict = resolver.Resolve(title, setup, terms);
                if (problem.TitleKinds[kind].IsForResolver || watched.Is(title, setup) || solver.Marks[column] != 0)
                    Marked++;
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
}
