using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>The answer as one would write it first: LINQ over titles, setups, routes and demands.</summary>
internal static class LinqEngine
{
    private sealed record Demand(int Number);

    private sealed record Setup(int Number, IReadOnlyDictionary<Demand, Toll> Tolls);

    private sealed record Route(int Place, IReadOnlyList<Demand> Demands);

    private sealed record Ends(Route Route, int Worst, int Best, bool Reduced);

    public static void Answer(Relations relations, string path)
    {
        var demands = Enumerable.Range(0, relations.Demands).Select(number => new Demand(number)).ToList();
        var setups = Enumerable.Range(0, relations.Setups)
            .Select(setup => new Setup(setup, demands.ToDictionary(demand => demand, demand => relations[setup, demand.Number], ReferenceEqualityComparer.Instance as IEqualityComparer<Demand>))).ToList();
        var titles = relations.Titles.Select(routes => routes.Select((route, place) => new Route(place, route.Select(number => demands[number]).ToList())).ToList()).ToList();
        var counts = new SetupCounts[setups.Count];
        using var answer = new AnswerFile(path, titles.Count, setups.Count);
        foreach (var (routes, title) in titles.Select((routes, title) => (routes, title)))
        {
            var best = setups.Select(setup =>
            {
                var ends = routes.Select(route => EndsOf(route, setup)).ToList();
                counts[setup.Number].Add(ends.Min(end => end.Worst), ends.Min(end => end.Best));
                var first = ends.Where(end => end.Best < OutcomeCode.DoesNotRun)
                    .OrderBy(end => end.Worst >> 5).ThenBy(end => end.Best >> 5).ThenBy(end => end.Reduced).ThenBy(end => end.Route.Place).FirstOrDefault();
                return (byte)(first?.Route.Place ?? 255);
            }).ToArray();
            answer.WriteTitles(title, best);
        }

        answer.WriteCounts(counts);
    }

    private static Ends EndsOf(Route route, Setup setup)
    {
        var tolls = route.Demands.Select(demand => setup.Tolls[demand]).ToList();
        return new Ends(
            route, Math.Min(tolls.Sum(toll => toll.Worst), OutcomeCode.DoesNotRun), Math.Min(tolls.Sum(toll => toll.Best), OutcomeCode.DoesNotRun),
            tolls.Any(toll => toll.Marks.HasFlag(BulkMarks.Reduced)));
    }
}
