using System.Globalization;
using FeatureMatrix.Bench;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Comparisons of two conditions in words.</summary>
public static class AgainstWording
{
    /// <summary>What the runs say of A against B.</summary>
    /// <example><c>no difference shown at n = 3, could have seen 2.3 %</c>; <c>23.1 % slower (21.4 to 24.8 %), n = 5 and 4</c></example>
    public static string Text(Comparison comparison) => comparison switch
    {
        Comparison.NotTested { Because: Comparison.Obstacle.TooFewRuns } => "not tested: a side with fewer than two runs has no spread to judge by",
        Comparison.NotTested { Because: Comparison.Obstacle.NoSpread } => "not tested: all runs of each side are alike to the last digit, so a cap or rounding hides the noise",
        Comparison.Tested { DifferenceShown: false } tested =>
            $"no difference shown at {Runs(tested)}, could have seen {Percent(tested.SmallestVisiblePercent)}",
        Comparison.Tested { Percent: { } percent, PercentInterval: { } interval } tested => percent > 0
            ? $"{Number(percent)} % faster ({Number(interval.Low)} to {Number(interval.High)} %), {Runs(tested)}"
            : $"{Number(-percent)} % slower ({Number(-interval.High)} to {Number(-interval.Low)} %), {Runs(tested)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The same in two or three words, for a chart.</summary>
    public static string Short(Comparison comparison) => comparison switch
    {
        Comparison.NotTested => "not tested",
        Comparison.Tested { DifferenceShown: true, Percent: { } percent } => $"{Number(Math.Abs(percent))} % {(percent > 0 ? "faster" : "slower")}",
        Comparison.Tested => "no difference shown",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What a row between two cards can say, as a clause.</summary>
    public static string Meaning(RowMeaning meaning) => meaning switch
    {
        RowMeaning.NotComparable => "the processor sets the pace with both: says nothing about the cards",
        RowMeaning.AtLeast => "the processor sets or shares the pace with one: the cards differ by at least this",
        RowMeaning.NotKnown => "what sets the pace is not known",
        RowMeaning.Comparable => "both cards are at their limit",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>How many runs on each side would show a difference of so many percent.</summary>
    public static string Needed(Comparison comparison, double percent) => comparison is Comparison.Tested tested
        ? tested.RunsNeeded(percent)?.ToString(CultureInfo.InvariantCulture) ?? "more than 10000"
        : "not known";

    private static string Runs(Comparison.Tested tested) => tested.A.Count == tested.B.Count
        ? $"n = {tested.A.Count.ToString(CultureInfo.InvariantCulture)}"
        : $"n = {tested.A.Count.ToString(CultureInfo.InvariantCulture)} and {tested.B.Count.ToString(CultureInfo.InvariantCulture)}";

    private static string Percent(double? value) => value is { } percent ? $"{Number(percent)} %" : "nothing";

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
