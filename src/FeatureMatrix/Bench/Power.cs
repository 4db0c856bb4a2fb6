using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace FeatureMatrix.Bench;

/// <summary>How likely a two-sided t-test is to show a difference that is really there.</summary>
internal static class Power
{
    /// <summary>The customary chance of showing a real difference (J. Cohen, Statistical Power Analysis, 1988).</summary>
    public const double Usual = 0.80;

    /// <summary>
    /// The chance that |T| exceeds the critical t where the true difference is <paramref name="standardErrors"/> standard
    /// errors: T is non-central Student t, integrated over the spread s that the runs may show by chance,
    /// ν s² being chi-squared with ν degrees of freedom.
    /// </summary>
    public static double Of(double standardErrors, double degreesOfFreedom, double confidence)
    {
        var nu = degreesOfFreedom;
        var critical = Confidence.TwoSidedT(confidence, nu);
        var logScale = Math.Log(2) + nu / 2 * Math.Log(nu / 2) - SpecialFunctions.GammaLn(nu / 2);
        var reach = 9 / Math.Sqrt(nu);
        return Integrate.GaussLegendre(Shown, Math.Max(0, 1 - reach), 1 + reach, 128);

        double Shown(double spread)
        {
            var density = Math.Exp(logScale + (nu - 1) * Math.Log(spread) - nu * spread * spread / 2);
            return density * (Normal.CDF(0, 1, standardErrors - critical * spread)
                + Normal.CDF(0, 1, -standardErrors - critical * spread));
        }
    }

    /// <summary>The true difference, in standard errors, that is shown with the usual chance.</summary>
    public static double SmallestShown(double degreesOfFreedom, double confidence) =>
        Brent.FindRoot(
            difference => Of(difference, degreesOfFreedom, confidence) - Usual,
            0,
            Confidence.TwoSidedT(confidence, degreesOfFreedom) * 4 + 4,
            1e-9);
}
