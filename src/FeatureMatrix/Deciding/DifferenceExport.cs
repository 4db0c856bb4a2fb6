using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>
/// What one stake may come to in a branch: the worst and the best of its standings, those that cover its must-have apart from those
/// that miss it. What lies between does not matter, because worth never contradicts the order of standings.
/// </summary>
/// <param name="Covered">Worst and best standing that cover; null where none does.</param>
/// <param name="Missed">Worst and best standing that miss; null where none does, always for titles that are no must-haves.</param>
public readonly record struct ExportedSpan((Standing Low, Standing High)? Covered, (Standing Low, Standing High)? Missed)
{
    /// <summary>The span of standings that come worst first.</summary>
    public static ExportedSpan Of(Stake stake, IReadOnlyList<Standing> standings, Policy policy)
    {
        var covered = standings.Where(standing => stake.IsCoveredAt(standing, policy)).ToList();
        var missed = standings.Where(standing => !stake.IsCoveredAt(standing, policy)).ToList();
        return new ExportedSpan(covered.Count > 0 ? (covered[0], covered[^1]) : null, missed.Count > 0 ? (missed[0], missed[^1]) : null);
    }
}

/// <summary>Stakes that hang on the same unknowns, and every completion of those, as the spans of the stakes in their order.</summary>
public sealed record ExportedGroup(IReadOnlyList<Stake> Stakes, IReadOnlyList<IReadOnlyList<ExportedSpan>> Branches);

/// <summary>
/// A comparison as a page needs it to follow changed weights and worths: it multiplies, adds within a branch, takes extremes over the
/// branches of a group, adds over groups. It never decides a cell, a completion or a must-have again.
/// </summary>
/// <param name="Groups">Per group its distinct branches.</param>
/// <param name="ByTitle">Per title that differs or may differ: its two stakes alone, in the same form.</param>
/// <param name="IsLocked">True past <see cref="MostSpans"/>: then nothing is exported and no weight can be changed.</param>
public sealed record DifferenceExport(IReadOnlyList<ExportedGroup> Groups, IReadOnlyDictionary<Title, IReadOnlyList<ExportedGroup>> ByTitle, bool IsLocked)
{
    /// <summary>How many spans one export may hold; about 100 KB as JSON.</summary>
    public const int MostSpans = 10_000;

    /// <summary>The export of a comparison.</summary>
    public static DifferenceExport Of(CardComparison comparison)
    {
        var groups = comparison.Groups.Select(group => GroupOf(group, comparison.Policy)).ToList();
        if (groups.Sum(group => group.Branches.Count * group.Stakes.Count) > MostSpans)
            return new DifferenceExport([], new Dictionary<Title, IReadOnlyList<ExportedGroup>>(), true);
        return new DifferenceExport(
            groups,
            comparison.Titles.Where(title => !title.IsEqual).ToDictionary(
                title => title.Entry.Title,
                title => (IReadOnlyList<ExportedGroup>)SharedGroup.Of([title.First, title.Second]).Select(group => GroupOf(group, comparison.Policy)).ToList()),
            false);
    }

    private static ExportedGroup GroupOf(SharedGroup group, Policy policy)
    {
        var branches = new List<IReadOnlyList<ExportedSpan>>();
        foreach (var branch in group.Branches)
        {
            var spans = group.Stakes.Select((stake, i) => ExportedSpan.Of(stake, branch.Standings[i], policy)).ToList();
            if (!branches.Exists(other => other.SequenceEqual(spans)))
                branches.Add(spans);
        }

        return new ExportedGroup(group.Stakes, branches);
    }
}
