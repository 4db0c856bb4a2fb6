namespace FeatureMatrix.Bench;

/// <summary>
/// A weighted linear least-squares fit of y to a few columns, by modified Gram-Schmidt orthogonalisation of the columns with y as
/// the last one, which is backward stable and never forms the badly conditioned normal equations (Å. Björck, "Solving
/// linear least squares problems by Gram-Schmidt orthogonalization", BIT 7, 1967). A ladder makes some two hundred fits
/// of six points each; a general matrix library spends ten times the arithmetic on its own objects there.
/// </summary>
internal sealed record LeastSquares(double[] Estimates, double[,] UnscaledCovariance, double ResidualSquares, int DegreesOfFreedom)
{
    /// <summary>Residual standard deviation; null where the fit leaves no degree of freedom.</summary>
    public double? ResidualDeviation => DegreesOfFreedom > 0 ? Math.Sqrt(ResidualSquares / DegreesOfFreedom) : null;

    /// <summary>Standard deviation of one estimate; null where the fit leaves no degree of freedom.</summary>
    public double? DeviationOf(int estimate) => ResidualDeviation * Math.Sqrt(UnscaledCovariance[estimate, estimate]);

    /// <summary>Fits; the columns must be linearly independent.</summary>
    /// <param name="columns">One array for each parameter, as long as <paramref name="y"/>.</param>
    /// <param name="y">The values to be explained.</param>
    /// <param name="weights">The reciprocal variance of each y up to a common factor; 1 throughout where null.</param>
    public static LeastSquares Fit(double[][] columns, double[] y, double[]? weights = null)
    {
        var count = columns.Length;
        double[][] basis = [.. columns.Select(column => Weighted(column, weights))];
        var rest = Weighted(y, weights);
        var triangle = new double[count, count];
        var heights = new double[count];
        for (var k = 0; k < count; k++)
        {
            triangle[k, k] = Math.Sqrt(Dot(basis[k], basis[k]));
            for (var i = 0; i < basis[k].Length; i++)
                basis[k][i] /= triangle[k, k];
            for (var j = k + 1; j < count; j++)
                triangle[k, j] = Project(basis[k], basis[j]);
            heights[k] = Project(basis[k], rest);
        }

        var inverse = InverseOf(triangle);
        var estimates = new double[count];
        var covariance = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var k = i; k < count; k++)
                estimates[i] += inverse[i, k] * heights[k];
            for (var j = 0; j < count; j++)
            {
                for (var k = Math.Max(i, j); k < count; k++)
                    covariance[i, j] += inverse[i, k] * inverse[j, k];
            }
        }

        return new LeastSquares(estimates, covariance, Dot(rest, rest), y.Length - count);
    }

    private static double[] Weighted(double[] values, double[]? weights)
    {
        var weighted = (double[])values.Clone();
        for (var i = 0; weights is not null && i < weighted.Length; i++)
            weighted[i] *= Math.Sqrt(weights[i]);
        return weighted;
    }

    // Takes out of a vector its part along a unit vector, and says how long that part was.
    private static double Project(double[] unit, double[] vector)
    {
        var length = Dot(unit, vector);
        for (var i = 0; i < unit.Length; i++)
            vector[i] -= length * unit[i];
        return length;
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private static double[,] InverseOf(double[,] triangle)
    {
        var count = triangle.GetLength(0);
        var inverse = new double[count, count];
        for (var column = 0; column < count; column++)
        {
            inverse[column, column] = 1 / triangle[column, column];
            for (var row = column - 1; row >= 0; row--)
            {
                for (var k = row + 1; k <= column; k++)
                    inverse[row, column] -= triangle[row, k] * inverse[k, column];
                inverse[row, column] /= triangle[row, row];
            }
        }

        return inverse;
    }
}
