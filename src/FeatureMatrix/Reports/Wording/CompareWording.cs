using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>The sentences of a comparison of two cards.</summary>
internal static class CompareWording
{
    // Rule R17.
    private const string Covered = "covered is what certainly runs and loses nothing graver than you tolerate";

    /// <summary>The answer: who wins and why, what is pending, what the speed floor says, what would flip it.</summary>
    public static string Headline(CompareReport report)
    {
        var sentences = new List<string> { Picture(report) };
        if (report.OneInstall is { } one)
        {
            var (first, second) = (Names.Of(one.First.Setup.Driver), Names.Of(one.Second.Setup.Driver));
            sentences.Add($"With one install each ({(first == second ? $"{first} on both" : $"{first} and {second}")}) "
                + $"the difference is {DecisionWording.Difference(one.Difference)}.");
        }

        if (report.AtFloor is { } floor && floor.Winner != report.Picture.Winner)
            sentences.Add($"At the speed floor: {AtFloor(floor)}");
        return string.Join(" ", sentences);
    }

    /// <summary>How a board compares with the other of the same chip.</summary>
    public static string Against(CardComparison board) => board.Dominance switch
    {
        Dominance.Equal => "equal, on every title and whatever is still open",
        _ => $"difference {DecisionWording.Difference(board.Difference)}",
    };

    /// <summary>Why a title differs: what one card loses and the other keeps, or what is open.</summary>
    public static string Why(CompareReport report, TitleComparison title)
    {
        var first = report.Weighing.Picture.VerdictOn(title.Entry.Title, report.Picture.First);
        var second = report.Weighing.Picture.VerdictOn(title.Entry.Title, report.Picture.Second);
        var reasons = new List<string>();
        Add(report.Picture.First, first, title.First);
        Add(report.Picture.Second, second, title.Second);
        return string.Join("; ", reasons);

        void Add(Card card, Verdict verdict, Stake stake)
        {
            var outcome = verdict.Overall.Best;
            if (!stake.Prospect.IsCertain)
                reasons.Add($"{card.Name}: {UnknownWording.Short(stake.Prospect.Unknowns.ToList())} not known");
            else if (!outcome.Runs)
                reasons.Add($"{card.Name}: does not run");
            else if (outcome.Losses.Count > 0)
                reasons.Add($"{card.Name}: {LabelWording.OutcomeText(outcome)}");
        }
    }

    private static string Picture(CompareReport report)
    {
        var comparison = report.Picture;
        return comparison.Winner switch
        {
            Winner.Equal => comparison.Dominance == Dominance.Equal
                ? $"{comparison.First.Name} and {comparison.Second.Name} are equal for {Names.InMiddle(report.Weighing.Library.Name)}: alike on every title, whatever is still open; let the price decide."
                : $"{comparison.First.Name} and {comparison.Second.Name} come out equal for {Names.InMiddle(report.Weighing.Library.Name)}: what one loses weighs exactly what the other loses.",
            Winner.First => Wins(report, Side.First),
            Winner.Second => Wins(report, Side.Second),
            Winner.Undecided => Undecided(report),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static string Wins(CompareReport report, Side side)
    {
        var comparison = report.Picture;
        var (winner, loser) = side == Side.First ? (comparison.First, comparison.Second) : (comparison.Second, comparison.First);
        var difference = side == Side.First ? comparison.Difference : new ScoreInterval(-comparison.Difference.High, -comparison.Difference.Low);
        var other = side == Side.First ? Side.Second : Side.First;
        var reason = comparison.Ground switch
        {
            Ground.MustHaves => $"{loser.Name} does not cover {Names.List(Missed(comparison, other))}, which you cannot do without ({Covered})",
            Ground.Dominance => $"it is nowhere worse and somewhere better, whatever the titles weigh",
            Ground.Score => $"it scores {DecisionWording.Interval(difference)} more",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var missed = Missed(comparison, side);
        var but = missed.Count > 0 ? $" Neither covers all must-haves; {winner.Name} does not cover {Names.List(missed)} ({Covered})." : "";
        var swing = comparison.Ground == Ground.Score && report.SwingTitles.Count > 0 ? $", most of it on {report.SwingTitles[0].Entry.Title.Name}" : "";
        return $"Take {winner.Name} for {Names.InMiddle(report.Weighing.Library.Name)}: {reason}{swing}.{but}{FlipText(report)}";
    }

    private static string Undecided(CompareReport report)
    {
        var comparison = report.Picture;
        var pending = Pending(comparison);
        var subject = $"{comparison.First.Name} or {comparison.Second.Name} for {Names.InMiddle(report.Weighing.Library.Name)}: undecided";
        if (comparison.ScoreWinner is Winner.First or Winner.Second && pending.Count > 0)
        {
            var ahead = comparison.ScoreWinner == Winner.First ? comparison.First : comparison.Second;
            return $"{subject}; {ahead.Name} is ahead, but {Names.List(pending)} {(pending.Count == 1 ? "is" : "are")} pending.";
        }

        var swing = report.SwingTitles.Where(title => !title.Difference.IsPoint).Select(title => title.Entry.Title.Name).Take(2).ToList();
        return $"{subject}; the difference lies between {DecisionWording.Difference(comparison.Difference).Replace(" to ", " and ", StringComparison.Ordinal)}"
            + $"{(swing.Count > 0 ? $" and hangs on {Names.List(swing)}" : "")}.";
    }

    private static string AtFloor(CardComparison floor) => floor.Winner switch
    {
        Winner.First => $"{floor.First.Name}.",
        Winner.Second => $"{floor.Second.Name}.",
        Winner.Equal => "equal.",
        Winner.Undecided => "undecided, since too little has been measured.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string FlipText(CompareReport report)
    {
        if (report.Picture.Ground != Ground.Score || report.Flips.Count == 0)
            return "";
        var flip = report.Flips[0];
        var direction = flip.Upwards ? "rises above" : "falls below";
        var then = flip.Beyond switch
        {
            Winner.Undecided => "it is undecided",
            Winner.Equal => "they are equal",
            Winner.First => $"{report.Picture.First.Name} wins",
            Winner.Second => $"{report.Picture.Second.Name} wins",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return $" It changes first if the {DecisionWording.Of(flip.Parameter)} {direction} {DecisionWording.Apart(flip.Value, flip.Current)}: then {then}.";
    }

    private static List<string> Missed(CardComparison comparison, Side side) => comparison.MustHaves(side)
        .Where(pair => pair.Coverage == Coverage.Missed).Select(pair => pair.Entry.Title.Name).ToList();

    private static List<string> Pending(CardComparison comparison) =>
    [
        .. comparison.MustHaves(Side.First).Where(pair => pair.Coverage == Coverage.Pending).Select(pair => $"{pair.Entry.Title.Name} on {comparison.First.Name}"),
        .. comparison.MustHaves(Side.Second).Where(pair => pair.Coverage == Coverage.Pending).Select(pair => $"{pair.Entry.Title.Name} on {comparison.Second.Name}"),
    ];
}
