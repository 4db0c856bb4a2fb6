using FeatureMatrix.Bench;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>One mode of a comparison.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="A">The side that is compared.</param>
/// <param name="B">The side that percentages refer to.</param>
/// <param name="IsShown">Whether a difference exceeds the noise.</param>
/// <param name="Percent">A − B as a percentage of B; null where it was not tested.</param>
/// <param name="PercentInterval">Its interval at 95 %.</param>
/// <param name="Result">The result in words.</param>
/// <param name="Short">The same in two or three.</param>
/// <param name="Caveat">What a row between two cards can say of the cards; empty for other changes.</param>
/// <param name="Needed">How many runs on each side would show 2 %.</param>
public sealed record AgainstRow(
    string Mode, MeanSpeed A, MeanSpeed B, bool IsShown, double? Percent, Interval? PercentInterval, string Result, string Short,
    string Caveat, string Needed)
{
    /// <summary>Result and caveat.</summary>
    public string Text => Caveat.Length > 0 ? $"{Result}; {Caveat}" : Result;
}

/// <summary>Two conditions that differ in one thing, mode by mode.</summary>
/// <param name="Subject">Title and scene.</param>
/// <param name="Change">The one thing.</param>
/// <param name="Setup">The setup of the side that percentages refer to, in words.</param>
/// <param name="Rows">In order of pixels.</param>
/// <param name="Text">Everything in words.</param>
public sealed record AgainstReport(string Subject, Change Change, string Setup, IReadOnlyList<AgainstRow> Rows, string Text)
{
    private const double WorthSeeing = 2;

    /// <summary>All pairs of series of a log that differ in one thing alone and share a mode.</summary>
    public static IReadOnlyList<AgainstReport> All(IReadOnlyList<BenchSeries> log) =>
    [
        .. from i in Enumerable.Range(0, log.Count)
           from j in Enumerable.Range(i + 1, log.Count - i - 1)
           let pair = Change.IsBase(log[i].Circumstances, log[j].Circumstances) ? (A: log[i], B: log[j]) : (A: log[j], B: log[i])
           let change = Change.Between(pair.A.Circumstances, pair.B.Circumstances)
           where change is not null
           let report = Of(pair.A, pair.B, change)
           where report.Rows.Count > 0
           select report,
    ];

    /// <summary>A against B; no rows where they share no mode.</summary>
    public static AgainstReport Of(BenchSeries a, BenchSeries b, Change change)
    {
        var bounds = change.What == "card" && a.Ladder() is LadderFit one && b.Ladder() is LadderFit other
            ? CardRow.Between(one, other).ToDictionary(row => row.Pixels, row => row.Meaning)
            : [];
        var rows = a.Modes.Join(b.Modes, mode => mode.Mode, mode => mode.Mode, (left, right) => (left, right))
            .Where(pair => pair.left.Fps.Count > 0 && pair.right.Fps.Count > 0)
            .Select(pair => RowOf(pair.left, pair.right, Caveat(pair.left))).ToList();
        return new AgainstReport(
            BenchWording.Subject(b.Circumstances), change, BenchWording.Setup(b.Circumstances), rows,
            $"{change.A} against {change.B}. {string.Join(" ", rows.Select(row => $"{row.Mode}: {row.A.Text} against {row.B.Text}: {row.Text}."))}");

        string Caveat(ModeRuns mode)
        {
            if (change.What != "card")
                return "";
            var meaning = mode.Mode is { } size ? bounds.GetValueOrDefault(size.Pixels, RowMeaning.NotKnown) : RowMeaning.NotKnown;
            return AgainstWording.Meaning(meaning);
        }
    }

    private static AgainstRow RowOf(ModeRuns a, ModeRuns b, string caveat)
    {
        var comparison = Comparison.Of(a.Fps, b.Fps);
        var tested = comparison as Comparison.Tested;
        return new AgainstRow(
            BenchWording.Of(a.Mode), MeanSpeed.Of(a.Fps), MeanSpeed.Of(b.Fps), tested?.DifferenceShown == true, tested?.Percent,
            tested?.PercentInterval, AgainstWording.Text(comparison), AgainstWording.Short(comparison), caveat,
            AgainstWording.Needed(comparison, WorthSeeing));
    }
}
