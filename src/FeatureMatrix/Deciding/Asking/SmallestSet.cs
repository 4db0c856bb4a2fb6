using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding.Asking;

/// <summary>
/// The fewest questions of which some answers decide. Groups are independent, so that for each group the best that some number of
/// answers does is worked out alone; then the groups are put together.
/// </summary>
internal sealed class SmallestSet
{
    /// <summary>More questions at once than this are not looked for.</summary>
    public const int Most = 3;

    /// <summary>
    /// How much work the search may take, counted in branches times stakes: what it costs to put one group together again after an answer.
    /// Past it the search ends and says that it is not exact.
    /// </summary>
    private const int MostWork = 50_000;

    private const int MostKept = 400;
    private readonly CardComparison _comparison;
    private int _work;

    private SmallestSet(CardComparison comparison) => _comparison = comparison;

    /// <summary>The questions; none where no three answers decide. Not exact where there were too many to try all.</summary>
    public static (IReadOnlyList<UnknownFact> Unknowns, bool IsExact) Of(CardComparison comparison)
    {
        var search = new SmallestSet(comparison);
        var together = Enumerable.Range(0, Most + 1).Select(count => count == 0 ? new List<Answered> { new([], Tally.Zero) } : []).ToList();
        foreach (var group in comparison.Groups)
        {
            var own = search.AnsweredOf(group);
            together = Enumerable.Range(0, Most + 1).Select(count => search.Sharpest(
                Enumerable.Range(0, count + 1).SelectMany(i => together[count - i].SelectMany(one => own[i].Select(other => new Answered([.. one.Unknowns, .. other.Unknowns], one.Tally.And(other.Tally))))))).ToList();
        }

        var found = together.SelectMany(list => list).FirstOrDefault(one => CardComparison.WinnersIn(one.Tally).Distinct().Count() == 1);
        return (found?.Unknowns ?? [], search._work < MostWork && comparison.IsExact);
    }

    private sealed record Answered(IReadOnlyList<UnknownFact> Unknowns, Tally Tally);

    /// <summary>For 0, 1, 2, … answers in one group the tallies that may be left.</summary>
    private List<List<Answered>> AnsweredOf(SharedGroup group)
    {
        var found = Enumerable.Range(0, Most + 1).Select(_ => new List<Answered>()).ToList();
        found[0].Add(new Answered([], Tally.Of(group, _comparison.Scale, _comparison.Policy)));
        Answer(group.Unknowns.ToList(), 0, group.Stakes, []);
        return found.ConvertAll(Sharpest);

        void Answer(List<UnknownFact> unknowns, int from, IReadOnlyList<Stake> stakes, List<UnknownFact> answered)
        {
            if (answered.Count == Most)
                return;
            for (var i = from; i < unknowns.Count; i++)
            {
                foreach (var state in NextTest.StatesOf(stakes, unknowns[i]))
                {
                    if (_work >= MostWork)
                        return;
                    var left = stakes.Select(stake => stake with { Prospect = stake.Prospect.Settle(unknowns[i], state) }).ToList();
                    var parts = left is [var only] ? [SharedGroup.Of(only)] : SharedGroup.Of(left);
                    _work += 1 + parts.Sum(WorkOf);
                    var tally = parts.Select(part => Tally.Of(part, _comparison.Scale, _comparison.Policy)).Aggregate(Tally.Zero, (one, other) => one.And(other));
                    found[answered.Count + 1].Add(new Answered([.. answered, unknowns[i]], tally));
                    Answer(unknowns, i + 1, left, [.. answered, unknowns[i]]);
                }
            }
        }
    }

    private static int WorkOf(SharedGroup group) => (group.IsExact ? group.Branches.Count : SharedGroup.BranchLimit) * group.Stakes.Count;

    /// <summary>Without those that leave everything open that another leaves open, and more.</summary>
    private List<Answered> Sharpest(IEnumerable<Answered> several)
    {
        var kept = new List<Answered>();
        foreach (var one in several)
        {
            if (kept.Exists(other => one.Tally.Contains(other.Tally)))
                continue;
            kept.RemoveAll(other => other.Tally.Contains(one.Tally));
            if (kept.Count == MostKept)
                _work = MostWork;
            else
                kept.Add(one);
        }

        return kept;
    }
}
