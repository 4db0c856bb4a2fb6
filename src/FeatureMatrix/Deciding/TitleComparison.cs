using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>One title on two cards.</summary>
public sealed record TitleComparison
{
    /// <summary>The title, with its weight.</summary>
    public required LibraryEntry Entry { get; init; }

    /// <summary>What may come of it on the first card.</summary>
    public required Stake First { get; init; }

    /// <summary>What may come of it on the second card.</summary>
    public required Stake Second { get; init; }

    /// <summary>Weight × worth on the first card less the same on the second, over the joint completions.</summary>
    public required ScoreInterval Difference { get; init; }

    /// <summary>True where no completion makes the first card worse, without any weights.</summary>
    public required bool FirstIsNeverWorse { get; init; }

    /// <summary>True where no completion makes the second card worse.</summary>
    public required bool SecondIsNeverWorse { get; init; }

    /// <summary>True where both cards do alike in every completion.</summary>
    public bool IsEqual => FirstIsNeverWorse && SecondIsNeverWorse;

    /// <summary>Compares one title; unknowns that both cards share are one.</summary>
    public static TitleComparison Of(Stake first, Stake second, WorthScale scale, Policy policy)
    {
        var groups = SharedGroup.Of([first, second]);
        var (firstIsNeverWorse, secondIsNeverWorse) = NeverWorse(first, second, groups);
        return new TitleComparison
        {
            Entry = first.Entry,
            First = first,
            Second = second,
            Difference = groups.Select(group => Tally.Of(group, scale, policy)).Aggregate(Tally.Zero, (one, other) => one.And(other)).Overall,
            FirstIsNeverWorse = firstIsNeverWorse,
            SecondIsNeverWorse = secondIsNeverWorse,
        };
    }

    /// <summary>Whether no completion makes the first side worse, and whether none makes the second worse.</summary>
    internal static (bool First, bool Second) NeverWorse(Stake first, Stake second, IReadOnlyList<SharedGroup>? groups = null)
    {
        if (first.Prospect.IsCertain && second.Prospect.IsCertain)
            return (first.Prospect.Worst.IsNoWorseThan(second.Prospect.Worst), second.Prospect.Worst.IsNoWorseThan(first.Prospect.Worst));
        groups ??= SharedGroup.Of([first, second]);
        return (Always(groups, (one, other) => one.IsNoWorseThan(other)), Always(groups, (one, other) => other.IsNoWorseThan(one)));
    }

    private static bool Always(IReadOnlyList<SharedGroup> groups, Func<Standing, Standing, bool> holds)
    {
        // Two groups are two stakes that share nothing: anything may meet anything.
        var meetings = groups.Count == 1
            ? groups[0].Branches.Select(branch => (branch.Standings[0], branch.Standings[1]))
            : [(groups[0].Stakes[0].Prospect.Standings, groups[1].Stakes[0].Prospect.Standings)];
        return meetings.All(meeting => meeting.Item1.All(one => meeting.Item2.All(other => holds(one, other))));
    }
}
