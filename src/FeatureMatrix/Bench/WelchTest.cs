namespace FeatureMatrix.Bench;

/// <summary>A sample reduced to what a t-test needs: at least two values.</summary>
public sealed record Summary(int Count, double Mean, double StandardDeviation)
{
    /// <summary>s² / n, the variance of the mean.</summary>
    internal double MeanVariance => StandardDeviation * StandardDeviation / Count;
}

/// <summary>
/// Welch's t-test of two means that need not share a spread (B. L. Welch, Biometrika 34, 1947; NIST/SEMATECH e-Handbook
/// 1.3.5.3, unequal variances). At least one side has some spread.
/// </summary>
public sealed record WelchTest
{
    /// <summary>The largest number of runs on each side that <see cref="RunsNeeded"/> considers.</summary>
    public const int MostRuns = 10_000;

    /// <summary>Tests A against B.</summary>
    public WelchTest(Summary a, Summary b, double confidence = Bench.Confidence.Usual)
    {
        A = a;
        B = b;
        Confidence = Bench.Confidence.Checked(confidence);
        Difference = a.Mean - b.Mean;
        StandardError = Math.Sqrt(a.MeanVariance + b.MeanVariance);
        DegreesOfFreedom = Satterthwaite(a.MeanVariance, a.Count, b.MeanVariance, b.Count);
        T = Difference / StandardError;
        P = Bench.Confidence.TwoSidedP(T, DegreesOfFreedom);
        var half = Bench.Confidence.TwoSidedT(confidence, DegreesOfFreedom) * StandardError;
        Interval = new Interval(Difference - half, Difference + half);
        SmallestVisible = Power.SmallestShown(DegreesOfFreedom, confidence) * StandardError;
    }

    /// <summary>The side that is compared.</summary>
    public Summary A { get; }

    /// <summary>The side it is compared with.</summary>
    public Summary B { get; }

    /// <summary>The share of repetitions in which <see cref="Interval"/> covers the true difference.</summary>
    public double Confidence { get; }

    /// <summary>Mean of A minus mean of B, in the unit of the values.</summary>
    public double Difference { get; }

    /// <summary>√(sA² / nA + sB² / nB).</summary>
    public double StandardError { get; }

    /// <summary>The interval of the true difference.</summary>
    public Interval Interval { get; }

    /// <summary>The difference in standard errors; its sign is the sign of A − B.</summary>
    public double T { get; }

    /// <summary>By Welch and Satterthwaite; not a whole number in general.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The probability of a difference at least this large, to either side, where there is none.</summary>
    public double P { get; }

    /// <summary>
    /// Hedges' g: the difference in standard deviations, √((sA² + sB²) / 2), times 1 − 3 / (4 ν − 1) against the bias of
    /// few runs (L. V. Hedges, Journal of Educational Statistics 6, 1981).
    /// </summary>
    public double HedgesG =>
        Difference / Math.Sqrt((Square(A.StandardDeviation) + Square(B.StandardDeviation)) / 2)
        * (1 - 3 / (4 * DegreesOfFreedom - 1));

    /// <summary>The true difference that would have been shown with a chance of 80 %, at these n and this spread.</summary>
    public double SmallestVisible { get; }

    /// <summary>
    /// The fewest runs on each side that show a true difference of this size with a chance of 80 %, if the spread stays as
    /// observed; at least 2, null where more than <see cref="MostRuns"/> are needed (always for 0).
    /// </summary>
    public int? RunsNeeded(double difference)
    {
        if (!Suffices(MostRuns))
            return null;
        var (tooFew, enough) = (1, MostRuns);
        while (enough - tooFew > 1)
        {
            var middle = (tooFew + enough) / 2;
            if (Suffices(middle))
                enough = middle;
            else
                tooFew = middle;
        }

        return enough;

        bool Suffices(int runs)
        {
            var (a, b) = (Square(A.StandardDeviation) / runs, Square(B.StandardDeviation) / runs);
            var standardErrors = Math.Abs(difference) / Math.Sqrt(a + b);
            return Power.Of(standardErrors, Satterthwaite(a, runs, b, runs), Confidence) >= Power.Usual;
        }
    }

    private static double Satterthwaite(double a, int countA, double b, int countB) =>
        Square(a + b) / (a * a / (countA - 1) + b * b / (countB - 1));

    private static double Square(double x) => x * x;
}
