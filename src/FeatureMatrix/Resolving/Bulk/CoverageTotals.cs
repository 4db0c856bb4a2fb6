using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>How many titles run, and run without a loss, on one setup or on all setups of a card together.</summary>
/// <param name="Setups">The setup, or all of a card's.</param>
/// <param name="Titles">The titles that were asked about.</param>
/// <param name="RunAtWorst">Those that certainly run.</param>
/// <param name="RunAtBest">Those that may run.</param>
/// <param name="CompleteAtWorst">Those that certainly lose nothing.</param>
/// <param name="CompleteAtBest">Those that may lose nothing.</param>
/// <param name="ByResolver">The cells among them that sums of codes could not decide, so that the resolver did.</param>
public sealed record PlaceTotals(
    IReadOnlyList<Setup> Setups, int Titles, int RunAtWorst, int RunAtBest, int CompleteAtWorst, int CompleteAtBest, int ByResolver);

/// <summary>
/// Counts over all titles and many setups or cards at once. Exact: cells that the bulk solver marks are handed to the
/// <see cref="Resolver"/>, one by one.
/// </summary>
public sealed class CoverageTotals
{
    private readonly BulkProblem _problem;
    private readonly IReadOnlyList<Title> _titles;
    private readonly IReadOnlyList<IReadOnlyList<Setup>> _places;
    private readonly int[][] _kindsOfPlace;
    private readonly Resolver _resolver;
    private readonly Func<Title, Terms> _termsFor;
    private readonly Watched _watched;
    private readonly int[,] _counts;

    private CoverageTotals(Resolver resolver, IReadOnlyList<Title> titles, IReadOnlyList<IReadOnlyList<Setup>> places, Func<Title, Terms> termsFor)
    {
        (_resolver, _titles, _places, _termsFor) = (resolver, titles, places, termsFor);
        var setups = places.SelectMany(place => place).Distinct().ToList();
        _problem = BulkCompiler.Compile(resolver.Catalog, titles, setups, termsFor);
        var numbers = setups.Select((setup, i) => (setup, i)).ToDictionary(pair => pair.setup, pair => pair.i);
        _kindsOfPlace = places.Select(place => place.Select(setup => _problem.KindOfSetup[numbers[setup]]).Distinct().ToArray()).ToArray();
        _watched = new Watched(resolver.Catalog);
        _counts = new int[places.Count, 5];
    }

    /// <summary>The counts for each place, in their order.</summary>
    /// <param name="resolver">The resolver of the collection.</param>
    /// <param name="titles">The titles.</param>
    /// <param name="places">For each place its setups: one, or all of a card's.</param>
    /// <param name="termsFor">The terms for each title; the policy is the same for all.</param>
    public static IReadOnlyList<PlaceTotals> Of(
        Resolver resolver, IReadOnlyList<Title> titles, IReadOnlyList<IReadOnlyList<Setup>> places, Func<Title, Terms> termsFor)
    {
        var totals = new CoverageTotals(resolver, titles, places, termsFor);
        totals.Count();
        return places.Select((setups, i) => new PlaceTotals(
            setups, titles.Count, totals._counts[i, 0], totals._counts[i, 1], totals._counts[i, 2], totals._counts[i, 3], totals._counts[i, 4])).ToList();
    }

    private void Count()
    {
        var solver = new BulkSolver(_problem);
        var titlesOfKind = Enumerable.Range(0, _titles.Count).ToLookup(i => _problem.KindOfTitle[i], i => _titles[i]);
        for (var index = 0; index < _problem.TitleKinds.Count; index++)
        {
            var kind = _problem.TitleKinds[index];
            solver.Solve(kind);
            var titles = titlesOfKind[index].ToList();
            for (var place = 0; place < _places.Count; place++)
                Count(titles, place, kind.IsForResolver ? null : Ends(solver, kind, _kindsOfPlace[place]));
        }
    }

    /// <summary>Counts titles of one kind at one place. Where they were watched, and where the ends are not known, each is asked about.</summary>
    private void Count(List<Title> titles, int place, (ushort Worst, ushort Best)? ends)
    {
        var alike = 0;
        foreach (var title in titles)
        {
            if (ends is null || _places[place].Any(setup => _watched.Is(title, setup)))
                AskResolver(title, place);
            else
                alike++;
        }

        if (alike > 0)
            Add(place, ends!.Value, alike);
    }

    /// <summary>Both ends over some kinds of setups; null where one of them is marked.</summary>
    private static (ushort Worst, ushort Best)? Ends(BulkSolver solver, TitleKind kind, int[] setupKinds)
    {
        var (worst, best, chosen, marks) = (OutcomeCode.DoesNotRun, OutcomeCode.DoesNotRun, OutcomeCode.DoesNotRun, 0);
        foreach (var setup in setupKinds)
        {
            worst = Math.Min(worst, solver.Worst[setup]);
            best = Math.Min(best, solver.Best[setup]);
            chosen = Math.Min(chosen, solver.BestAtWorst[setup]);
            marks |= solver.Marks[setup];
        }

        // As for the routes of one setup: the setup that is chosen at its most hopeful must have the best end of all.
        return marks != 0 || (kind.HasUngraded && setupKinds.All(setup => solver.Best[setup] != best || solver.BestAtWorst[setup] != chosen)) ? null : (worst, best);
    }

    private void Add(int place, (ushort Worst, ushort Best) ends, int titles)
    {
        _counts[place, 0] += OutcomeCode.Runs(ends.Worst) ? titles : 0;
        _counts[place, 1] += OutcomeCode.Runs(ends.Best) ? titles : 0;
        _counts[place, 2] += OutcomeCode.IsComplete(ends.Worst) ? titles : 0;
        _counts[place, 3] += OutcomeCode.IsComplete(ends.Best) ? titles : 0;
    }

    private void AskResolver(Title title, int place)
    {
        if (_places[place].Count > 0)
        {
            var range = _resolver.Resolve(title, _places[place][0].Card, _places[place], _termsFor(title)).Overall;
            Add(place, (OutcomeCode.AtWorst(range.Worst), OutcomeCode.AtBest(range.Best)), 1);
        }

        _counts[place, 4]++;
    }
}
