namespace FeatureMatrix.Bench;

/// <summary>What the runs say about the difference of two conditions.</summary>
public abstract record Comparison
{
    private Comparison()
    {
    }

    /// <summary>Why no test is possible.</summary>
    public enum Obstacle
    {
        /// <summary>One side has fewer than two runs, hence no spread to judge by.</summary>
        TooFewRuns,

        /// <summary>All runs of each side are alike to the last digit, so that the noise is hidden by rounding or by a cap.</summary>
        NoSpread,
    }

    /// <summary>The two sides cannot be told apart or called alike.</summary>
    public sealed record NotTested(Sample A, Sample B, Obstacle Because) : Comparison;

    /// <summary>Welch's test was made.</summary>
    public sealed record Tested(Sample A, Sample B, WelchTest Test) : Comparison
    {
        /// <summary>
        /// Whether the difference exceeds the noise at the confidence asked. False means that no difference was <em>shown</em>,
        /// not that there is none: see <see cref="WelchTest.SmallestVisible"/>.
        /// </summary>
        public bool DifferenceShown => Test.P < 1 - Test.Confidence;

        /// <summary>A − B as a percentage of B's mean; null where that mean is 0.</summary>
        public double? Percent => OfB(Test.Difference);

        /// <summary>The interval of A − B as a percentage of B's mean, which is taken as given.</summary>
        public Interval? PercentInterval => B.Mean is 0 ? null : Test.Interval.Times(100 / Math.Abs(B.Mean!.Value));

        /// <summary>The smallest difference that would probably have been seen, as a percentage of B's mean.</summary>
        public double? SmallestVisiblePercent => OfB(Test.SmallestVisible);

        /// <summary>
        /// Runs needed on each side to show a difference of the stated percentage of B's mean with a chance of 80 %, if
        /// the spread stays as observed; at least 2. Null where more than <see cref="WelchTest.MostRuns"/> are needed or B's mean is 0.
        /// </summary>
        public int? RunsNeeded(double percent) =>
            B.Mean is 0 ? null : Test.RunsNeeded(Math.Abs(percent / 100 * B.Mean!.Value));

        private double? OfB(double difference) => B.Mean is 0 ? null : 100 * difference / Math.Abs(B.Mean!.Value);
    }

    /// <summary>Compares A with B, B being the side that percentages refer to (the driver before, the card at hand).</summary>
    public static Comparison Of(Sample a, Sample b, double confidence = Confidence.Usual)
    {
        if (a.StandardDeviation is not { } deviationA || b.StandardDeviation is not { } deviationB)
            return new NotTested(a, b, Obstacle.TooFewRuns);
        if (deviationA == 0 && deviationB == 0)
            return new NotTested(a, b, Obstacle.NoSpread);
        return new Tested(a, b, new WelchTest(
            new Summary(a.Count, a.Mean!.Value, deviationA),
            new Summary(b.Count, b.Mean!.Value, deviationB),
            confidence));
    }
}
