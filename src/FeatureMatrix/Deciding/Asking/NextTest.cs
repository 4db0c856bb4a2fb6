using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding.Asking;

/// <summary>What one answer would do.</summary>
/// <param name="State">The answer.</param>
/// <param name="Winner">Who wins then.</param>
/// <param name="Difference">The difference then.</param>
public sealed record Consequence(Support State, Winner Winner, ScoreInterval Difference);

/// <summary>A question whose answer bears on an undecided comparison.</summary>
/// <param name="Unknown">The question.</param>
/// <param name="Consequences">What each answer would do.</param>
/// <param name="Narrows">By how much the interval of the difference shrinks at least, whatever the answer.</param>
public sealed record TestProposal(UnknownFact Unknown, IReadOnlyList<Consequence> Consequences, decimal Narrows)
{
    /// <summary>True where every answer decides.</summary>
    public bool Settles => Consequences.All(one => one.Winner != Winner.Undecided);

    /// <summary>True where some answer decides.</summary>
    public bool MaySettle => Consequences.Any(one => one.Winner != Winner.Undecided);
}

/// <summary>What to find out next (DESIGN section 5).</summary>
/// <param name="Proposals">
/// The questions that can change the decision: some completion of all else makes one card win with one answer and not with another.
/// Those that settle first, then those that may, then by how much they narrow.
/// </param>
/// <param name="SmallestSet">The fewest questions of which some answers decide; empty where none of up to three do.</param>
/// <param name="IsExact">False where something was too large to walk: then some proposals only might change it, and a smaller set may exist.</param>
/// <param name="LeftOut">How many questions were not weighed, because too many might change it: those on which least of the library hangs.</param>
public sealed record NextTest(IReadOnlyList<TestProposal> Proposals, IReadOnlyList<UnknownFact> SmallestSet, bool IsExact, int LeftOut = 0)
{
    /// <summary>How many questions are weighed at most where it cannot be walked which of them matter.</summary>
    public const int MostWeighed = 16;

    /// <summary>How many questions are put together at most.</summary>
    public const int MostTogether = Asking.SmallestSet.Most;

    /// <summary>For a comparison; nothing where it is decided.</summary>
    public static NextTest Of(CardComparison comparison)
    {
        if (comparison.Winner != Winner.Undecided)
            return new NextTest([], [], comparison.IsExact);
        var qualifying = Qualifying.Of(comparison);
        var smallest = Asking.SmallestSet.Of(comparison);
        var weighed = qualifying.IsExact ? qualifying.Unknowns : Weightiest(comparison, qualifying.Unknowns);
        var proposals = weighed.Select(unknown => Propose(comparison, unknown))
            .OrderByDescending(proposal => proposal.Settles).ThenByDescending(proposal => smallest.Unknowns.Contains(proposal.Unknown))
            .ThenByDescending(proposal => proposal.MaySettle).ThenByDescending(proposal => proposal.Narrows).ToList();
        return new NextTest(proposals, smallest.Unknowns, qualifying.IsExact && smallest.IsExact, qualifying.Unknowns.Count - weighed.Count);
    }

    /// <summary>The questions on which most of the library hangs, still in the order in which a person would check them.</summary>
    private static List<UnknownFact> Weightiest(CardComparison comparison, IReadOnlyList<UnknownFact> unknowns)
    {
        var weights = new Dictionary<UnknownFact, decimal>();
        foreach (var stake in comparison.Groups.SelectMany(group => group.Stakes))
        {
            foreach (var unknown in stake.Prospect.Unknowns)
                weights[unknown] = weights.GetValueOrDefault(unknown) + stake.Weight;
        }

        var kept = unknowns.OrderByDescending(unknown => weights[unknown]).Take(MostWeighed).ToHashSet();
        return unknowns.Where(kept.Contains).ToList();
    }

    /// <summary>The states that an unknown may have, as far as they make a difference.</summary>
    internal static IReadOnlyList<Support> StatesOf(IEnumerable<Stake> stakes, UnknownFact unknown) => stakes
        .SelectMany(stake => stake.Prospect.Cases).SelectMany(one => one.Settled)
        .Where(pair => pair.Key == unknown).Select(pair => pair.Value).Distinct().Order().ToList();

    private static TestProposal Propose(CardComparison comparison, UnknownFact unknown)
    {
        var asking = comparison.Groups.SelectMany(group => group.Stakes).Where(stake => stake.Prospect.Unknowns.Contains(unknown));
        var consequences = StatesOf(asking, unknown).Select(state =>
        {
            var settled = comparison.Settle(unknown, state);
            return new Consequence(state, settled.Winner, settled.Difference);
        }).ToList();
        return new TestProposal(unknown, consequences, comparison.Difference.Width - consequences.Max(one => one.Difference.Width));
    }
}
