using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding.Asking;

/// <summary>
/// Which unknowns can change a decision: one does if some completion of all the others makes one card win with one of its answers and
/// not with another (DESIGN section 5). Within the unknown's group every completion is looked at; the other groups count with every
/// sum they can come to.
/// </summary>
internal sealed class Qualifying
{
    private const int MostContexts = 4096;
    private const int MostPairs = 20_000;
    private readonly CardComparison _comparison;
    private readonly IReadOnlyList<SumSet> _others;

    private Qualifying(CardComparison comparison)
    {
        _comparison = comparison;
        var sets = comparison.Groups.Select(SumsOf).ToList();
        // One set of which ends alone are known leaves nothing but ends of all of them together.
        if (sets.Exists(set => !set.IsExact))
            sets = sets.ConvertAll(set => set.EndsAlone());
        var before = new List<SumSet> { SumSet.Zero };
        foreach (var set in sets)
            before.Add(before[^1].And(set));
        var after = new List<SumSet> { SumSet.Zero };
        foreach (var set in sets.AsEnumerable().Reverse())
            after.Add(after[^1].And(set));
        _others = sets.Select((_, i) => before[i].And(after[sets.Count - 1 - i])).ToList();
        IsExact = comparison.IsExact && _others.All(set => set.IsExact);
    }

    /// <summary>False where some limit was met: then unknowns that only might change the decision are among them.</summary>
    public bool IsExact { get; private set; }

    /// <summary>The unknowns that can change the decision, in the order in which a person would check them.</summary>
    public static (IReadOnlyList<UnknownFact> Unknowns, bool IsExact) Of(CardComparison comparison)
    {
        var qualifying = new Qualifying(comparison);
        var found = new List<UnknownFact>();
        for (var i = 0; i < comparison.Groups.Count; i++)
        {
            var group = comparison.Groups[i];
            var links = new UnknownLinks(group.Stakes.Select(stake => stake.Prospect.Unknowns).ToList());
            found.AddRange(group.Unknowns.Where(unknown => qualifying.Qualifies(group, links, qualifying._others[i], unknown)));
        }

        return (found, qualifying.IsExact);
    }

    private SumSet SumsOf(SharedGroup group)
    {
        var sums = new List<Sum>();
        foreach (var branch in group.Branches)
        {
            var products = Products(group.Stakes.Select((stake, i) =>
                branch.Standings[i].Select(standing => Sum.Of(stake, standing, _comparison.Scale, _comparison.Policy)).Distinct().ToList()).ToList());
            if (products is null)
                return SumSet.Within(Tally.Of(group, _comparison.Scale, _comparison.Policy));
            sums.AddRange(products);
        }

        return SumSet.Of(sums);
    }

    private bool Qualifies(SharedGroup group, UnknownLinks links, SumSet others, UnknownFact unknown)
    {
        if (!group.IsExact)
        {
            // Its completions are too many to look at.
            IsExact = false;
            return true;
        }

        var contexts = 0;
        return Walk([], group.Stakes.Select(stake => stake.Prospect.Cases).ToList());

        bool Walk(Dictionary<UnknownFact, Support> settled, List<IReadOnlyList<ProspectCase>> cases)
        {
            var open = cases.SelectMany(list => list).SelectMany(one => one.Settled).ToList();
            var next = open.Select(pair => pair.Key).FirstOrDefault(one => one != unknown && !settled.ContainsKey(one) && links.IsShared(one));
            if (next is null)
            {
                if (++contexts > MostContexts)
                {
                    IsExact = false;
                    return true;
                }

                return PartsIn(group, cases, settled, others, unknown);
            }

            foreach (var state in open.Where(pair => pair.Key == next).Select(pair => pair.Value).Distinct().Order()
                .Where(state => Settlement.IsConsistent(next, state, settled)).ToList())
            {
                settled[next] = state;
                var found = Walk(settled, cases.Select(list => (IReadOnlyList<ProspectCase>)list.Where(one => Settlement.Allows(settled, one)).ToList()).ToList());
                settled.Remove(next);
                if (found)
                    return true;
            }

            return false;
        }
    }

    /// <summary>One completion of what the group's stakes share, the unknown itself left out.</summary>
    private bool PartsIn(
        SharedGroup group, List<IReadOnlyList<ProspectCase>> cases, Dictionary<UnknownFact, Support> settled, SumSet others, UnknownFact unknown)
    {
        var touched = Enumerable.Range(0, cases.Count).Where(i => cases[i].Any(one => one.Settled.Any(pair => pair.Key == unknown))).ToList();
        if (touched.Count == 0)
            return false;
        var states = touched.SelectMany(i => cases[i]).SelectMany(one => one.Settled).Where(pair => pair.Key == unknown).Select(pair => pair.Value)
            .Distinct().Order().Where(state => Settlement.IsConsistent(unknown, state, settled)).ToList();
        SumSet? rest = null;
        foreach (var (one, other) in states.SelectMany((state, i) => states.Skip(i + 1).Select(two => (state, two))))
        {
            var pairs = touched.Select(i => PairsOf(group.Stakes[i], cases[i], settled, unknown, one, other)).ToList();
            if (PairProducts(pairs) is not { } sums)
            {
                IsExact = false;
                return true;
            }

            var parting = sums.Where(pair => pair.One != pair.Other).ToList();
            if (parting.Count == 0)
                continue;
            rest ??= Enumerable.Range(0, cases.Count).Except(touched)
                .Select(i => SumSet.Of(cases[i].Select(single => Sum.Of(group.Stakes[i], single.Standing, _comparison.Scale, _comparison.Policy))))
                .Aggregate(others, (set, more) => set.And(more));
            IsExact &= rest.IsExact;
            if (parting.Exists(pair => rest.Parts(pair.One, pair.Other)))
                return true;
        }

        return false;
    }

    /// <summary>What a stake comes to with one answer and with the other, everything else being the same.</summary>
    private List<(Sum One, Sum Other)> PairsOf(
        Stake stake, IReadOnlyList<ProspectCase> cases, Dictionary<UnknownFact, Support> settled, UnknownFact unknown, Support one, Support other)
    {
        var withOne = new Dictionary<UnknownFact, Support>(settled) { [unknown] = one };
        var withOther = new Dictionary<UnknownFact, Support>(settled) { [unknown] = other };
        var firsts = cases.Where(single => Settlement.Allows(withOne, single)).ToList();
        var seconds = cases.Where(single => Settlement.Allows(withOther, single)).ToList();
        // Cases are many, standings few: what is found already need not be found again.
        var found = new HashSet<(Standing, Standing)>();
        foreach (var first in firsts)
        {
            foreach (var second in seconds)
            {
                if (!found.Contains((first.Standing, second.Standing)) && GoTogether(first, second))
                    found.Add((first.Standing, second.Standing));
            }
        }

        return found.Select(pair => (SumOf(pair.Item1), SumOf(pair.Item2))).Distinct().ToList();

        Sum SumOf(Standing standing) => Sum.Of(stake, standing, _comparison.Scale, _comparison.Policy);

        // What either leaves to the rest has to be possible with both answers, and with what the other asks.
        bool GoTogether(ProspectCase first, ProspectCase second) =>
            first.Settled.Where(pair => pair.Key != unknown).All(pair =>
                Settlement.IsConsistent(pair.Key, pair.Value, withOther)
                && second.Settled.Where(two => two.Key != unknown).All(two => two.Key == pair.Key ? two.Value == pair.Value : !Implications.Exclude(pair.Key, pair.Value, two.Key, two.Value)))
            && second.Settled.Where(pair => pair.Key != unknown).All(pair => Settlement.IsConsistent(pair.Key, pair.Value, withOne));
    }

    private static List<Sum>? Products(List<List<Sum>> parts)
    {
        List<Sum> sums = [Sum.Zero];
        foreach (var part in parts)
        {
            sums = sums.SelectMany(one => part.Select(other => one + other)).Distinct().ToList();
            if (sums.Count > MostPairs)
                return null;
        }

        return sums;
    }

    private static List<(Sum One, Sum Other)>? PairProducts(List<List<(Sum One, Sum Other)>> parts)
    {
        List<(Sum One, Sum Other)> sums = [(Sum.Zero, Sum.Zero)];
        foreach (var part in parts)
        {
            sums = sums.SelectMany(one => part.Select(other => (one.One + other.One, one.Other + other.Other))).Distinct().ToList();
            if (sums.Count > MostPairs)
                return null;
        }

        return sums;
    }
}
