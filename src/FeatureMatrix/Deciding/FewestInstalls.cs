using System.Numerics;

namespace FeatureMatrix.Deciding;

/// <summary>Something that can be installed, and what it covers.</summary>
/// <param name="Index">Its place in the list that was asked about.</param>
/// <param name="Card">The number of its card: choosing a second install of one card costs no further card.</param>
/// <param name="IsOwned">True where the card need not be bought.</param>
/// <param name="Covers">One bit for each thing to cover.</param>
/// <param name="Worth">Breaks ties: more is better.</param>
public sealed record InstallOption(int Index, int Card, bool IsOwned, ulong Covers, decimal Worth);

/// <summary>What a choice costs, in the order in which it counts: cards to buy, cards, installs.</summary>
public readonly record struct InstallCost(int Bought, int Cards, int Installs)
{
    /// <summary>Negative where this costs less.</summary>
    public int Against(InstallCost other) => (Bought, Cards, Installs).CompareTo((other.Bought, other.Cards, other.Installs));
}

/// <summary>The fewest installs that cover everything.</summary>
/// <param name="Chosen">The options chosen.</param>
/// <param name="Cost">What they cost.</param>
/// <param name="LowerBound">No choice has fewer installs than this, proved before the search began.</param>
/// <param name="IsProved">True where the search ended: nothing costs less.</param>
/// <param name="CannotCover">Bits that no option covers; they were left out.</param>
public sealed record FewestInstalls(
    IReadOnlyList<InstallOption> Chosen, InstallCost Cost, int LowerBound, bool IsProved, ulong CannotCover)
{
    private const int MostNodes = 2_000_000;

    /// <summary>Branch and bound over the thing that fewest options cover.</summary>
    public static FewestInstalls Of(IReadOnlyList<InstallOption> options, ulong wanted)
    {
        var coverable = options.Aggregate(0ul, (bits, option) => bits | option.Covers) & wanted;
        var useful = options.Where(option => (option.Covers & coverable) != 0).Where(option => !options.Any(other => Replaces(other, option, coverable))).ToList();
        var search = new Search(useful, coverable);
        search.Try(0, []);
        var most = useful.Count == 0 ? 1 : useful.Max(option => BitOperations.PopCount(option.Covers & coverable));
        var bound = (BitOperations.PopCount(coverable) + most - 1) / most;
        return new FewestInstalls(search.Best, Search.CostOf(search.Best), bound, search.Nodes < MostNodes, wanted & ~coverable);
    }

    /// <summary>True where the other option of the same card does at least as much.</summary>
    private static bool Replaces(InstallOption other, InstallOption option, ulong wanted)
    {
        if (other == option || other.Card != option.Card || (option.Covers & wanted & ~other.Covers) != 0)
            return false;
        return (option.Covers & wanted) != (other.Covers & wanted) || other.Worth > option.Worth || (other.Worth == option.Worth && other.Index < option.Index);
    }

    private sealed class Search(List<InstallOption> options, ulong wanted)
    {
        private bool _found;

        public List<InstallOption> Best { get; private set; } = [];

        public int Nodes { get; private set; }

        public static InstallCost CostOf(List<InstallOption> chosen) => new(
            chosen.Where(option => !option.IsOwned).Select(option => option.Card).Distinct().Count(),
            chosen.Select(option => option.Card).Distinct().Count(), chosen.Count);

        public void Try(ulong covered, List<InstallOption> chosen)
        {
            if (Nodes >= MostNodes)
                return;
            Nodes++;
            var left = wanted & ~covered;
            var cost = CostOf(chosen);
            if (left == 0)
            {
                if (!_found || Compare(chosen, cost) < 0)
                    (Best, _found) = ([.. chosen], true);
                return;
            }

            // One more install at least; every further cost only grows.
            if (_found && (cost with { Installs = cost.Installs + 1 }).Against(CostOf(Best)) > 0)
                return;
            var hardest = Bits(left).MinBy(bit => options.Count(option => (option.Covers & bit) != 0));
            foreach (var option in options.Where(option => (option.Covers & hardest) != 0)
                .OrderByDescending(option => BitOperations.PopCount(option.Covers & left)).ThenBy(option => option.Index))
            {
                chosen.Add(option);
                Try(covered | option.Covers, chosen);
                chosen.RemoveAt(chosen.Count - 1);
            }
        }

        private int Compare(List<InstallOption> chosen, InstallCost cost)
        {
            var result = cost.Against(CostOf(Best));
            return result != 0 ? result : Best.Sum(option => option.Worth).CompareTo(chosen.Sum(option => option.Worth));
        }

        private static IEnumerable<ulong> Bits(ulong bits)
        {
            for (; bits != 0; bits &= bits - 1)
                yield return bits & (~bits + 1);
        }
    }
}
