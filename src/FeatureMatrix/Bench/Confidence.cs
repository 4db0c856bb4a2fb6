using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace FeatureMatrix.Bench;

/// <summary>Shares of certainty between 0 and 1 and the quantiles that belong to them.</summary>
public static class Confidence
{
    /// <summary>95 %, used wherever nothing else is asked.</summary>
    public const double Usual = 0.95;

    /// <summary>The t that a two-sided interval reaches to each side; degrees of freedom need not be whole.</summary>
    internal static double TwoSidedT(double confidence, double degreesOfFreedom) =>
        StudentT.InvCDF(0, 1, degreesOfFreedom, (1 + Checked(confidence)) / 2);

    /// <summary>The probability of a |t| at least as large where there is no difference.</summary>
    internal static double TwoSidedP(double t, double degreesOfFreedom) =>
        2 * StudentT.CDF(0, 1, degreesOfFreedom, -Math.Abs(t));

    /// <summary>The value that an F ratio exceeds with probability 1 − confidence where nothing differs.</summary>
    internal static double UpperF(double confidence, double numerator, double denominator) =>
        FisherSnedecor.InvCDF(numerator, denominator, Checked(confidence));

    /// <summary>The probability of an F at least as large where nothing differs.</summary>
    internal static double UpperP(double f, double numerator, double denominator) =>
        // 1 - CDF would lose every digit of a small p; the complementary beta function keeps them.
        f <= 0 ? 1 : SpecialFunctions.BetaRegularized(denominator / 2, numerator / 2, denominator / (denominator + numerator * f));

    internal static double Checked(double confidence) =>
        confidence is > 0 and < 1
            ? confidence
            : throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "a confidence lies between 0 and 1");
}
