using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>
/// One completion of the unknowns that a group shares. What remains open belongs to one stake alone, so that there every stake
/// takes each of its standings independently of the others.
/// </summary>
/// <param name="Settled">The shared unknowns as far as they matter.</param>
/// <param name="Standings">For each stake of the group the standings it may still have, worst first.</param>
public sealed record Branch(IReadOnlyList<KeyValuePair<UnknownFact, Support>> Settled, IReadOnlyList<IReadOnlyList<Standing>> Standings);

/// <summary>
/// Stakes that hang on the same unknowns and so have to be judged together. Groups are independent of each other: extremes of
/// a sum over groups are sums of the groups' extremes.
/// </summary>
/// <param name="Stakes">The stakes.</param>
/// <param name="Branches">Every completion of what they share.</param>
/// <param name="IsExact">False past a limit; then one branch with everything that may be, which gives sound bounds.</param>
public sealed record SharedGroup(IReadOnlyList<Stake> Stakes, IReadOnlyList<Branch> Branches, bool IsExact)
{
    /// <summary>How many completions of shared unknowns one group may have before bounds are given instead.</summary>
    public const int BranchLimit = 1024;

    /// <summary>Everything open in it.</summary>
    public IEnumerable<UnknownFact> Unknowns => Stakes.SelectMany(stake => stake.Prospect.Unknowns).Distinct();

    /// <summary>The same with other stakes that have the same prospects: other weights.</summary>
    internal SharedGroup With(Func<Stake, Stake> change) => this with { Stakes = Stakes.Select(change).ToList() };

    /// <summary>Puts stakes together that share unknowns. Every stake comes back in exactly one group.</summary>
    public static IReadOnlyList<SharedGroup> Of(IReadOnlyList<Stake> stakes)
    {
        var keys = stakes.Select(stake => stake.Prospect.Unknowns).ToList();
        var links = new UnknownLinks(keys);
        return links.Components.Select(members => Together(members.Select(i => stakes[i]).ToList(), links)).ToList();
    }

    /// <summary>A stake that shares nothing.</summary>
    public static SharedGroup Of(Stake stake) => new([stake], [new Branch([], [stake.Prospect.Standings])], stake.Prospect.IsExact);

    private static SharedGroup Together(List<Stake> stakes, UnknownLinks links)
    {
        if (stakes is [var only])
            return Of(only);
        var branches = new List<Branch>();
        var isExact = Walk([], stakes.Select(stake => stake.Prospect.Cases).ToList(), links, branches)
            && stakes.TrueForAll(stake => stake.Prospect.IsExact);
        return branches.Count > BranchLimit
            ? new SharedGroup(stakes, [new Branch([], stakes.Select(stake => stake.Prospect.Standings).ToList())], false)
            : new SharedGroup(stakes, branches, isExact);
    }

    private static bool Walk(
        Dictionary<UnknownFact, Support> settled, List<IReadOnlyList<ProspectCase>> cases, UnknownLinks links, List<Branch> branches)
    {
        var next = cases.SelectMany(list => list).SelectMany(one => one.Settled).Select(pair => pair.Key)
            .FirstOrDefault(unknown => !settled.ContainsKey(unknown) && links.IsShared(unknown));
        if (next is null)
        {
            branches.Add(new Branch(
                settled.ToList(), cases.Select(list => (IReadOnlyList<Standing>)list.Select(one => one.Standing).Distinct().Order().ToList()).ToList()));
            return branches.Count <= BranchLimit;
        }

        var states = cases.SelectMany(list => list).SelectMany(one => one.Settled).Where(pair => pair.Key == next).Select(pair => pair.Value)
            .Distinct().Order().Where(state => Settlement.IsConsistent(next, state, settled)).ToList();
        foreach (var state in states)
        {
            settled[next] = state;
            var left = cases.Select(list => (IReadOnlyList<ProspectCase>)list.Where(one => Settlement.Allows(settled, one)).ToList()).ToList();
            if (!Walk(settled, left, links, branches))
                return false;
            settled.Remove(next);
        }

        return true;
    }
}
