using FeatureMatrix.Model;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>
/// Kinds of titles in each completion of what nobody knows of the title itself, such as losses that nobody graded. Two cards meet the same
/// completion of it, so that they are told apart there more finely than by their own ends.
/// </summary>
/// <param name="problem">The compiled library.</param>
/// <param name="renderersOf">For each route of a kind, in their order, the renderer of some title of the kind.</param>
internal sealed class TitleHopes(BulkProblem problem, Func<int, IReadOnlyList<Renderer>> renderersOf)
{
    private const int MostUnknowns = 4;
    private readonly Dictionary<int, (int[][] Routes, int Count, bool AreAll)> _places = [];
    private readonly Dictionary<(Card, int, Hope), Standing[]> _standings = [];

    /// <summary>
    /// The standings of a kind of title on a card, one for each completion of what hangs on the title; one alone where nothing does. Where
    /// that is too much only two of them: everything missing, and everything at its most hopeful.
    /// </summary>
    /// <param name="card">The card.</param>
    /// <param name="setups">Its kinds of setups.</param>
    /// <param name="kind">The kind of title.</param>
    /// <param name="hope">What else is at its most hopeful: the card's own, wrappers and systems.</param>
    public Standing[] Of(Card card, int[] setups, int kind, Hope hope)
    {
        if (!_standings.TryGetValue((card, kind, hope), out var standings))
        {
            var (places, count, _) = PlacesOf(kind);
            _standings[(card, kind, hope)] = standings = Enumerable.Range(0, 1 << count).Select(grades => In(setups, kind, hope, places, grades)).ToArray();
        }

        return standings;
    }

    /// <summary>True where these are all completions: what hangs on the title is little, and no demand hangs on several such things.</summary>
    public bool AreAll(int kind) => PlacesOf(kind).AreAll;

    /// <summary>
    /// For each demand of each route the place of what it hangs on among all such things of the title, or -1. What two routes of one renderer
    /// ask alike is one thing, whatever the wrapper.
    /// </summary>
    private (int[][] Routes, int Count, bool AreAll) PlacesOf(int kind)
    {
        if (_places.TryGetValue(kind, out var known))
            return known;
        var found = new List<(Renderer Renderer, int Question)>();
        var renderers = renderersOf(kind);
        var routes = problem.TitleKinds[kind].Routes;
        var places = routes.Select((route, i) => route.Select(demand => Has(demand, BulkMarks.OfTitle) ? PlaceOf(renderers[i], problem.Questions[demand]) : -1).ToArray()).ToArray();
        var areAll = found.Count <= MostUnknowns && !routes.Any(route => Array.Exists(route, demand => Has(demand, BulkMarks.OfTitleSeveral)));
        return _places[kind] = areAll ? (places, found.Count, true) : (places.Select(route => route.Select(place => Math.Min(place, 0)).ToArray()).ToArray(), 1, false);

        int PlaceOf(Renderer renderer, int question)
        {
            if (!found.Contains((renderer, question)))
                found.Add((renderer, question));
            return found.IndexOf((renderer, question));
        }

        bool Has(int demand, BulkMarks marks) => Array.Exists(problem.Marks[demand], mark => (mark & (ushort)marks) != 0);
    }

    private Standing In(int[] setups, int kind, Hope hope, int[][] places, int grades)
    {
        var (missing, hopeful) = (problem.In[(int)hope], problem.In[(int)(hope | Hope.Title)]);
        var best = (int)OutcomeCode.DoesNotRun;
        foreach (var (route, hanging) in problem.TitleKinds[kind].Routes.Zip(places))
        {
            foreach (var setup in setups)
            {
                var sum = 0;
                for (var i = 0; i < route.Length; i++)
                    sum += (hanging[i] >= 0 && (grades & (1 << hanging[i])) != 0 ? hopeful : missing)[route[i]][setup];
                best = Math.Min(best, sum);
            }
        }

        return CellEnds.StandingOf((ushort)best);
    }
}
