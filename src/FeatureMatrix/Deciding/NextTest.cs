using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

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
/// <param name="Proposals">Questions, those that settle first, then those that may, then by how much they narrow.</param>
/// <param name="SmallestSet">The fewest questions of which some answers decide; empty where none of up to three do.</param>
public sealed record NextTest(IReadOnlyList<TestProposal> Proposals, IReadOnlyList<UnknownFact> SmallestSet)
{
    private const int MostTried = 12;

    /// <summary>For a comparison; nothing where it is decided.</summary>
    public static NextTest Of(CardComparison comparison)
    {
        if (comparison.Winner != Winner.Undecided)
            return new NextTest([], []);
        var proposals = comparison.Groups.SelectMany(group => group.Unknowns).Distinct()
            .Select(unknown => Propose(comparison, unknown)).Where(Matters)
            .OrderByDescending(proposal => proposal.Settles).ThenByDescending(proposal => proposal.MaySettle)
            .ThenByDescending(proposal => proposal.Narrows).ToList();
        return new NextTest(proposals, Smallest(comparison, proposals));
    }

    /// <summary>The states that an unknown may have, as far as they make a difference.</summary>
    public static IReadOnlyList<Support> StatesOf(CardComparison comparison, UnknownFact unknown) => comparison.Groups
        .SelectMany(group => group.Stakes).SelectMany(stake => stake.Prospect.Cases).SelectMany(one => one.Settled)
        .Where(pair => pair.Key == unknown).Select(pair => pair.Value).Distinct().Order().ToList();

    private static TestProposal Propose(CardComparison comparison, UnknownFact unknown)
    {
        var consequences = StatesOf(comparison, unknown).Select(state =>
        {
            var settled = comparison.Settle(unknown, state);
            return new Consequence(state, settled.Winner, settled.Difference);
        }).ToList();
        return new TestProposal(unknown, consequences, comparison.Difference.Width - consequences.Max(one => one.Difference.Width));
    }

    private static bool Matters(TestProposal proposal) =>
        proposal.MaySettle || proposal.Consequences.Select(one => one.Difference).Distinct().Count() > 1;

    private static List<UnknownFact> Smallest(CardComparison comparison, List<TestProposal> proposals)
    {
        var tried = proposals.Take(MostTried).Select(proposal => proposal.Unknown).ToList();
        for (var size = 1; size <= 3; size++)
        {
            if (Search(comparison, tried, 0, size) is { } found)
                return found;
        }

        return [];
    }

    private static List<UnknownFact>? Search(CardComparison comparison, List<UnknownFact> unknowns, int from, int left)
    {
        if (comparison.Winner != Winner.Undecided)
            return [];
        if (left == 0)
            return null;
        for (var i = from; i < unknowns.Count; i++)
        {
            foreach (var state in StatesOf(comparison, unknowns[i]))
            {
                if (Search(comparison.Settle(unknowns[i], state), unknowns, i + 1, left - 1) is { } rest)
                    return [unknowns[i], .. rest];
            }
        }

        return null;
    }
}
