namespace FeatureMatrix.Bench;

/// <summary>
/// The hinge t(p) = c + k · max(0, p − knee), fitted for one given knee, which makes it linear in c and k. Weights are the
/// reciprocal squares of the expected times (noise is a share of the frame time), so that squares are squares of shares.
/// </summary>
/// <param name="Knee">Megapixels where the rise begins; infinite for the flat line.</param>
/// <param name="Flat">c, milliseconds.</param>
/// <param name="Slope">k, milliseconds a megapixel; never negative.</param>
/// <param name="Squares">Weighted squares of the mode means around the hinge.</param>
/// <param name="VarianceFlat">Variance of c for runs of unit noise.</param>
/// <param name="Covariance">Covariance of c and k, likewise.</param>
/// <param name="VarianceSlope">Variance of k, likewise.</param>
internal sealed record Hinge(
    double Knee, double Flat, double Slope, double Squares, double VarianceFlat, double Covariance, double VarianceSlope)
{
    /// <summary>Fits c and k; where the best k would be negative, a flat line instead.</summary>
    public static Hinge Fit(IReadOnlyList<LadderMode> modes, double[] expected, double knee)
    {
        double[] times = [.. modes.Select(mode => mode.MeanTime)];
        double[] weights = [.. modes.Select((mode, i) => mode.Times.Count / (expected[i] * expected[i]))];
        double[] ones = [.. modes.Select(_ => 1.0)];
        if (knee < modes[^1].Megapixels)
        {
            var fit = LeastSquares.Fit([ones, [.. modes.Select(mode => Math.Max(0, mode.Megapixels - knee))]], times, weights);
            var covariance = fit.UnscaledCovariance;
            if (fit.Estimates[1] > 0)
            {
                return new Hinge(
                    knee, fit.Estimates[0], fit.Estimates[1], fit.ResidualSquares, covariance[0, 0], covariance[0, 1], covariance[1, 1]);
            }
        }

        var flat = LeastSquares.Fit([ones], times, weights);
        return new Hinge(knee, flat.Estimates[0], 0, flat.ResidualSquares, flat.UnscaledCovariance[0, 0], 0, 0);
    }

    /// <summary>The frame time at a mode, milliseconds.</summary>
    public double At(double megapixels) => Flat + Slope * Beyond(megapixels);

    /// <summary>The variance of <see cref="At"/> for runs of unit noise.</summary>
    public double VarianceAt(double megapixels) => VarianceOf(Beyond(megapixels));

    /// <summary>a = c − k · knee, the part of a rising frame time that does not grow with pixels.</summary>
    public double Fixed => Slope == 0 ? Flat : Flat - Slope * Knee;

    /// <summary>The variance of <see cref="Fixed"/> for runs of unit noise.</summary>
    public double VarianceFixed => Slope == 0 ? VarianceFlat : VarianceOf(-Knee);

    private double Beyond(double megapixels) => Math.Max(0, megapixels - Knee);

    private double VarianceOf(double slope) =>
        VarianceFlat + 2 * slope * Covariance + slope * slope * VarianceSlope;
}
