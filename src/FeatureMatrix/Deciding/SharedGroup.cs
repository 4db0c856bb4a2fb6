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

    /// <summary>
    /// How many unknowns a group may share before bounds are given without a walk: only a chain in which each answer ends the questions would
    /// come within <see cref="BranchLimit"/>.
    /// </summary>
    public const int UnknownLimit = 40;

    /// <summary>Everything open in it.</summary>
    public IEnumerable<UnknownFact> Unknowns => Stakes.SelectMany(stake => stake.Prospect.Unknowns).Distinct();

    /// <summary>The same with other stakes that have the same prospects: other weights.</summary>
    internal SharedGroup With(Func<Stake, Stake> change) => this with { Stakes = Stakes.Select(change).ToList() };

    /// <summary>Puts stakes together that share unknowns. Every stake comes back in exactly one group.</summary>
    public static IReadOnlyList<SharedGroup> Of(IReadOnlyList<Stake> stakes)
    {
        var keys = stakes.Select(stake => stake.Prospect.Unknowns).ToList();
        var links = new UnknownLinks(keys);
        return links.Components.Select(members => Together(members.Select(i => stakes[i]).ToList())).ToList();
    }

    /// <summary>A stake that shares nothing.</summary>
    public static SharedGroup Of(Stake stake) => new([stake], [new Branch([], [stake.Prospect.Standings])], stake.Prospect.IsExact);

    private static SharedGroup Together(List<Stake> stakes)
    {
        if (stakes is [var only])
            return Of(only);
        return BranchWalk.Of(stakes, BranchLimit, UnknownLimit) is { } branches
            ? new SharedGroup(stakes, branches, stakes.TrueForAll(stake => stake.Prospect.IsExact))
            : new SharedGroup(stakes, [new Branch([], stakes.Select(stake => stake.Prospect.Standings).ToList())], false);
    }
}
