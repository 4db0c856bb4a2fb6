namespace FeatureMatrix.Bench;

/// <summary>A run with the value of the factor that is looked at, such as a linear frame buffer on or off.</summary>
public sealed record FactorRun(string Factor, LadderRun Run);

/// <summary>One ladder for each value of a factor.</summary>
/// <param name="Factor">The value.</param>
/// <param name="Ladder">The ladder of its runs.</param>
public sealed record FactorLadder(string Factor, Ladder Ladder);

/// <summary>
/// A ladder split by a factor, and whether it had to be: modes differ by more than pixels where a setting goes with them.
/// </summary>
/// <param name="Ladders">In ordinal order of the values.</param>
/// <param name="P">
/// How likely one ladder for all would fit so much worse by chance (F test of the extra sum of squares; G. C. Chow,
/// Econometrica 28, 1960). Null where a part cannot be fitted or the runs have no noise. Large: no effect of the factor was shown.
/// </param>
public sealed record LadderSplit(IReadOnlyList<FactorLadder> Ladders, double? P)
{
    /// <summary>Splits and fits.</summary>
    public static LadderSplit Of(IReadOnlyList<FactorRun> runs, double confidence = Confidence.Usual)
    {
        IReadOnlyList<FactorLadder> ladders =
        [
            .. runs.GroupBy(run => run.Factor, StringComparer.Ordinal).OrderBy(part => part.Key, StringComparer.Ordinal)
                .Select(part => new FactorLadder(part.Key, Ladder.Of([.. part.Select(run => run.Run)], confidence))),
        ];
        LadderFit[] fits = [.. ladders.Select(part => part.Ladder).OfType<LadderFit>()];
        return new LadderSplit(ladders, fits.Length == ladders.Count && fits.Length > 1 ? Chance(fits) : null);
    }

    private static double? Chance(LadderFit[] fits)
    {
        var together = HingeProfile.Of(LadderMode.From(fits.SelectMany(fit => fit.Used)));
        var (squares, freedom) = (fits.Sum(fit => fit.Squares), fits.Sum(fit => fit.DegreesOfFreedom));
        var saved = together.DegreesOfFreedom - freedom;
        return squares > 0 && saved > 0
            ? Confidence.UpperP(Math.Max(0, together.Squares - squares) / saved / (squares / freedom), saved, freedom)
            : null;
    }
}
