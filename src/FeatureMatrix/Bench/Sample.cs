namespace FeatureMatrix.Bench;

/// <summary>
/// The values of one measured condition, one for each run that counts, in the order they were measured. What fewer runs
/// cannot tell is null: the mean needs one run, everything about spread needs two.
/// </summary>
public sealed record Sample
{
    private Sample(IReadOnlyList<double> values, double? mean, double? standardDeviation)
    {
        Values = values;
        Mean = mean;
        StandardDeviation = standardDeviation;
    }

    /// <summary>The measured values, unit as given; may be empty.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>The number of runs, n.</summary>
    public int Count => Values.Count;

    /// <summary>The arithmetic mean; null where nothing was measured.</summary>
    public double? Mean { get; }

    /// <summary>The sample standard deviation (divisor n − 1); null below two runs.</summary>
    public double? StandardDeviation { get; }

    /// <summary>s / √n, the standard error of the mean; null below two runs.</summary>
    public double? StandardError => StandardDeviation / Math.Sqrt(Count);

    /// <summary>s / |mean| as a share (0.02 is 2 %); null below two runs or where the mean is 0.</summary>
    public double? CoefficientOfVariation => Mean is null or 0 ? null : StandardDeviation / Math.Abs(Mean.Value);

    /// <summary>
    /// Two passes over the differences from the first value, which are exact or nearly so for values of like size: the
    /// mean, then the squares around it, corrected by the rounding that the mean left (Chan, Golub and LeVeque, "Algorithms
    /// for computing the sample variance", The American Statistician 37, 1983).
    /// </summary>
    /// <exception cref="ArgumentException">A value is infinite or not a number.</exception>
    public static Sample Of(IEnumerable<double> values)
    {
        double[] all = [.. values];
        if (!all.All(double.IsFinite))
            throw new ArgumentException("a measured value must be a finite number", nameof(values));
        if (all.Length == 0)
            return new Sample(all, null, null);

        var origin = all[0];
        var shift = all.Average(x => x - origin);
        if (all.Length == 1)
            return new Sample(all, origin, null);

        var deviations = all.Select(x => x - origin - shift).ToArray();
        var remainder = deviations.Sum();
        var squares = deviations.Sum(d => d * d) - remainder * remainder / all.Length;
        return new Sample(all, origin + shift, Math.Sqrt(Math.Max(0, squares) / (all.Length - 1)));
    }

    /// <summary>
    /// The interval that covers the true mean in the stated share of repetitions: mean ± t · s / √n, t the two-sided Student
    /// quantile at n − 1 degrees of freedom (NIST/SEMATECH e-Handbook 1.3.5.2). Null below two runs: one run has no spread.
    /// </summary>
    public Interval? MeanInterval(double confidence = Confidence.Usual)
    {
        if (StandardError is not { } error)
            return null;
        var half = Confidence.TwoSidedT(confidence, Count - 1) * error;
        return new Interval(Mean!.Value - half, Mean.Value + half);
    }

    /// <summary>The same sample without the values at the given positions.</summary>
    public Sample Without(IReadOnlyCollection<int> positions) =>
        Of(Values.Where((_, position) => !positions.Contains(position)));
}
