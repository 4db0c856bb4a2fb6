using FeatureMatrix.Deciding;
using FeatureMatrix.Resolving;
using State = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Deciding.Generated;

/// <summary>Every assignment of states to everything open at once, and who wins in each: what questions about answers are asked of.</summary>
internal sealed class WholeDecisions
{
    private readonly List<(Dictionary<UnknownFact, State> Assignment, Winner Winner)> _all = [];

    private WholeDecisions(List<UnknownFact> unknowns) => Unknowns = unknowns;

    public IReadOnlyList<UnknownFact> Unknowns { get; }

    /// <summary>From lazily walked completions; null past the limits.</summary>
    public static WholeDecisions? Of(IReadOnlyList<WholeCompletion> completions, Func<WholeCompletion, Winner> winnerIn, int limit)
    {
        var states = completions.SelectMany(one => one.Settled).GroupBy(pair => pair.Key).ToDictionary(group => group.Key, group => group.Select(pair => pair.Value).Distinct().Order().ToList());
        var whole = new WholeDecisions([.. states.Keys]);
        var winners = completions.Select(winnerIn).ToList();
        return Assign(0, []) ? whole : null;

        bool Assign(int i, Dictionary<UnknownFact, State> assignment)
        {
            if (i == whole.Unknowns.Count)
            {
                var at = Enumerable.Range(0, completions.Count).First(j => completions[j].Settled.All(pair => assignment[pair.Key] == pair.Value));
                whole._all.Add((new Dictionary<UnknownFact, State>(assignment), winners[at]));
                return whole._all.Count <= limit;
            }

            var unknown = whole.Unknowns[i];
            foreach (var state in states[unknown].Where(state => !assignment.Any(pair => Implications.Exclude(pair.Key, pair.Value, unknown, state))))
            {
                assignment[unknown] = state;
                if (!Assign(i + 1, assignment))
                    return false;
                assignment.Remove(unknown);
            }

            return true;
        }
    }

    /// <summary>True where two assignments that differ in this unknown alone have different winners.</summary>
    public bool Qualifies(UnknownFact unknown) => _all
        .GroupBy(one => string.Join(';', Unknowns.Where(other => other != unknown).Select(other => (int)one.Assignment[other])))
        .Any(group => group.Select(one => one.Winner).Distinct().Count() > 1);

    /// <summary>The least number of unknowns of which some answers leave one winner; 0 where none of up to the limit do.</summary>
    public int SmallestSet(int most)
    {
        for (var size = 1; size <= most; size++)
        {
            if (Subsets(0, size).Any(set => _all.GroupBy(one => string.Join(';', set.Select(i => (int)one.Assignment[Unknowns[i]]))).Any(group => group.Select(one => one.Winner).Distinct().Count() == 1)))
                return size;
        }

        return 0;
    }

    private IEnumerable<int[]> Subsets(int from, int size)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (var i = from; i < Unknowns.Count; i++)
        {
            foreach (var rest in Subsets(i + 1, size - 1))
                yield return [i, .. rest];
        }
    }
}
