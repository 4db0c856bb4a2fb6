using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>What complete enumeration says of one cell.</summary>
internal sealed record CellAnswer(
    IReadOnlySet<Outcome> Outcomes, IReadOnlySet<UnknownFact> Deciding, OutcomeLabel Outcome, RouteLabel Route, int Completions);

/// <summary>
/// The first oracle: takes every completion of every unknown that a cell asks about and evaluates the routes plainly in
/// each (R13), without the resolver's branching, splitting or limits.
/// </summary>
internal sealed class BruteForce(Catalog catalog)
{
    /// <summary>Cells with more completions than this are left to the larger campaign.</summary>
    public const int Limit = 1 << 13;

    private readonly SupplyOracle _supply = new(catalog);

    /// <summary>The answer; null where there are more completions than <see cref="Limit"/>.</summary>
    public CellAnswer? Cell(Title title, IReadOnlyList<Setup> setups, Terms terms)
    {
        var world = new World();
        var oracle = new RouteOracle(catalog, _supply, world, terms);
        var routes = Routes(title, setups).Select(oracle.Compile).ToList();
        if (world.Size > Limit)
            return null;
        var table = new CompletionTable(world);
        routes = [.. routes.Select(route => route.Settled(table.Possible))];
        var outcomes = table.Possible.Select(completion => routes.Select(route => route.In(completion)).ToArray()).ToList();
        var ranges = routes.Select((_, i) => outcomes.Select(row => row[i]).ToList()).ToList();
        var order = Enumerable.Range(0, routes.Count).Where(i => routes[i].Permitted)
            .OrderBy(i => i, Comparer<int>.Create((a, b) => Route.ComparePreference(routes[a].Route, routes[b].Route))).ToList();
        order = [.. order.OrderBy(i => oracle.IsReduced(routes[i].Route))];
        var winners = outcomes.Select(row => order.Count == 0 ? -1 : order.Aggregate((one, other) => Compare(row[other], row[one]) < 0 ? other : one)).ToList();
        var best = outcomes.Select((row, i) => winners[i] < 0 ? Outcome.DoesNotRun : row[winners[i]]).ToList();
        var somewhereBest = order.Where(i => winners.Where((winner, c) => winner == i && best[c].Runs).Any()).ToList();
        var (label, by) = Headline(routes, ranges, best, order, somewhereBest);
        return new CellAnswer(best.ToHashSet(), table.Deciding(best), label, by, table.Possible.Count);
    }

    private IEnumerable<Route> Routes(Title title, IReadOnlyList<Setup> setups) =>
        from renderer in title.Renderers
        where !renderer.IsSoftware
        from setup in setups
        from version in catalog.WrapperVersions.Prepend(null)
        select new Route(renderer, setup, version);

    private static int Compare(Outcome one, Outcome other)
    {
        var worst = Rank(one, ungradedIsSevere: true).CompareTo(Rank(other, ungradedIsSevere: true));
        return worst != 0 ? worst : Rank(one, ungradedIsSevere: false).CompareTo(Rank(other, ungradedIsSevere: false));
    }

    private static (bool, int, int) Rank(Outcome outcome, bool ungradedIsSevere) => (
        !outcome.Runs, outcome.Severe + (ungradedIsSevere ? outcome.Ungraded : 0), outcome.Cosmetic + (ungradedIsSevere ? 0 : outcome.Ungraded));

    /// <summary>R14 and R16.</summary>
    private static (OutcomeLabel, RouteLabel) Headline(
        IReadOnlyList<RouteRun> routes, IReadOnlyList<List<Outcome>> ranges, IReadOnlyList<Outcome> best, IReadOnlyList<int> order,
        IReadOnlyList<int> somewhereBest)
    {
        bool MayRun(int i) => ranges[i].Any(outcome => outcome.Runs);
        bool Runs(int i) => ranges[i].All(outcome => outcome.Runs);
        bool IsNative(int i) => routes[i].Route.IsNative;
        if (best.All(outcome => !outcome.Runs))
            return (OutcomeLabel.DoesNotRun, RouteLabel.None);
        var listed = order.Where(i => Runs(i) && IsNative(i) && routes[i].Route.IsListed).ToList();
        if (listed.Count > 0)
            return (Certain(ranges[Foremost(listed)]), RouteLabel.Natively);
        var through = Through(Foremost(somewhereBest));
        if (best.Any(outcome => !outcome.Runs))
            return (OutcomeLabel.NotKnown, through);
        return (order.Any(Runs) ? Certain(best) : OutcomeLabel.RunsByOneOf, through);

        int Foremost(IReadOnlyList<int> some) => some.Aggregate((one, other) => CompareRanges(ranges[other], ranges[one]) < 0 ? other : one);

        OutcomeLabel Certain(IReadOnlyList<Outcome> outcomes) => outcomes.Distinct().Count() > 1 ? OutcomeLabel.RunsNotKnown
            : outcomes[0].Losses.Count == 0 ? OutcomeLabel.Works : OutcomeLabel.Loses;

        RouteLabel Through(int chosen)
        {
            if (IsNative(chosen))
                return RouteLabel.Natively;
            var natives = Enumerable.Range(0, routes.Count).Where(i => IsNative(i) && MayRun(i)).ToList();
            if (natives.Count == 0)
                return RouteLabel.WrapperOnly;
            if (!natives.Any(i => routes[i].Permitted))
                return RouteLabel.NativeNotPermitted;
            return natives.Any(i => routes[i].Permitted && Runs(i)) ? RouteLabel.NativeOnlyForced : RouteLabel.NativeNotKnown;
        }
    }

    /// <summary>Better in the worst completion, then in the best.</summary>
    private static int CompareRanges(List<Outcome> one, List<Outcome> other)
    {
        var worst = one.Max(o => Rank(o, true)).CompareTo(other.Max(o => Rank(o, true)));
        return worst != 0 ? worst : one.Min(o => Rank(o, false)).CompareTo(other.Min(o => Rank(o, false)));
    }
}
