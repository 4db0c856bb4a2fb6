using MathNet.Numerics.Distributions;

namespace FeatureMatrix.Bench;

/// <summary>What a search for outlying runs found. Flagging is advice: a flagged run stays in the sample until someone discards it with a reason.</summary>
public abstract record Outliers
{
    private Outliers()
    {
    }

    /// <summary>
    /// Below seven values. At three the largest possible deviation, (n − 1) / √n = 1.1547 standard deviations, hardly
    /// passes the critical 1.1543, and then only because two values happen to agree; up to six the test flags good values.
    /// </summary>
    public sealed record TooFewToTell(int Count) : Outliers;

    /// <summary>The positions of the flagged values, most extreme first; empty where nothing stands out.</summary>
    public sealed record Screened(IReadOnlyList<int> Flagged) : Outliers;

    /// <summary>The fewest values that are screened.</summary>
    public const int FewestValues = 7;

    /// <summary>
    /// The generalized extreme Studentized deviate test (B. Rosner, Technometrics 25, 1983; NIST/SEMATECH e-Handbook
    /// 1.3.5.17.3), two-sided. It looks for one outlier below fifteen values, where it is Grubbs' test, and for up
    /// to a fifth of the values above. Values must be roughly normal around one mean.
    /// </summary>
    public static Outliers In(Sample sample, double significance = 0.05)
    {
        var n = sample.Count;
        if (n < FewestValues)
            return new TooFewToTell(n);

        var most = n < 15 ? 1 : n / 5;
        List<int> removed = [];
        var flagged = 0;
        for (var i = 1; i <= most; i++)
        {
            var rest = sample.Without(removed);
            if (rest.StandardDeviation is not > 0)
                break;
            var farthest = Enumerable.Range(0, n).Except(removed)
                .MaxBy(position => Math.Abs(sample.Values[position] - rest.Mean!.Value));
            var deviate = Math.Abs(sample.Values[farthest] - rest.Mean!.Value) / rest.StandardDeviation.Value;
            removed.Add(farthest);
            if (deviate > Critical(rest.Count, significance))
                flagged = i;
        }

        return new Screened([.. removed.Take(flagged)]);
    }

    /// <summary>Grubbs' two-sided critical deviate for n values: (n − 1) t / √(n (n − 2 + t²)), t at 1 − α / 2n and n − 2.</summary>
    internal static double Critical(int n, double significance)
    {
        var t = StudentT.InvCDF(0, 1, n - 2, 1 - significance / (2 * n));
        return (n - 1) * t / Math.Sqrt(n * (n - 2 + t * t));
    }
}
