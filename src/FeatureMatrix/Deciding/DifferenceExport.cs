using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>How one title stands on both cards at one end of a branch; worth is q^s · (1 − (1 − q)(1 − r^c)), 0 where it does not run.</summary>
public sealed record ExportedTitle(Title Title, Standing First, Standing Second);

/// <summary>One completion of what a group shares: the titles at the end that is worst for the first card, and at its best.</summary>
/// <remarks>Stakes of one side that the group does not hold stand as not running on both ends, and so add nothing.</remarks>
public sealed record ExportedBranch(IReadOnlyList<ExportedTitle> Low, IReadOnlyList<ExportedTitle> High);

/// <summary>
/// A comparison as a page or a sheet needs it to follow changed weights and worths: for each group the least of its branches' sums
/// is its low end, the greatest its high end, and the ends of the difference are sums over groups.
/// </summary>
/// <param name="Groups">Per group its distinct branches.</param>
/// <param name="IsLocked">True past <see cref="MostVectors"/>: then the page shows the ends as they are and lets no weight be changed.</param>
public sealed record DifferenceExport(IReadOnlyList<IReadOnlyList<ExportedBranch>> Groups, bool IsLocked)
{
    /// <summary>How many title standings one export may hold.</summary>
    public const int MostVectors = 20_000;

    /// <summary>The export of a comparison.</summary>
    public static DifferenceExport Of(CardComparison comparison)
    {
        var size = comparison.Groups.Sum(group => group.Branches.Count * group.Stakes.Count);
        if (size > MostVectors)
            return new DifferenceExport([], true);
        return new DifferenceExport(
            comparison.Groups.Select(group => (IReadOnlyList<ExportedBranch>)group.Branches
                .Select(branch => new ExportedBranch(End(group, branch, best: false), End(group, branch, best: true))).ToList()).ToList(),
            false);
    }

    private static List<ExportedTitle> End(SharedGroup group, Branch branch, bool best)
    {
        var titles = new Dictionary<Title, ExportedTitle>();
        for (var i = 0; i < group.Stakes.Count; i++)
        {
            var stake = group.Stakes[i];
            var standing = stake.Side == Side.First == best ? branch.Standings[i][^1] : branch.Standings[i][0];
            var title = titles.GetValueOrDefault(stake.Entry.Title) ?? new ExportedTitle(stake.Entry.Title, Standing.DoesNotRun, Standing.DoesNotRun);
            titles[stake.Entry.Title] = stake.Side == Side.First ? title with { First = standing } : title with { Second = standing };
        }

        return titles.Values.ToList();
    }
}
