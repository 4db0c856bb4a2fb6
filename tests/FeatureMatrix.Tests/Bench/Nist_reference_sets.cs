using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

/// <summary>
/// Certified values of the NIST Statistical Reference Datasets. The number beside each check is the digits that must agree, a
/// little under what is reached (log relative error, 15 at most): deviations NumAcc1 15.0, NumAcc2 14.1, NumAcc3 9.5, NumAcc4 8.3,
/// Mavro 13.1, Michelso 13.8, all means 15.0; Norris 12.2, 14.4, 13.6, 13.6, 13.6; NoInt1 14.7, 14.8, 15.0; NoInt2 15.0 throughout;
/// Pontius 12.9, 15.0, 14.4. What NumAcc3 and NumAcc4 lack is lost in the data itself: 10000000.1 is no binary number.
/// </summary>
public sealed class Nist_reference_sets
{
    public static TheoryData<string, double[], double, double, double> Univariate => new()
    {
        { "NumAcc1", NistSets.NumAcc1, 10000002, 1, 15 },
        { "NumAcc2", NistSets.NumAcc2, 1.2, 0.1, 14 },
        { "NumAcc3", NistSets.NumAcc3, 1000000.2, 0.1, 9.4 },
        { "NumAcc4", NistSets.NumAcc4, 10000000.2, 0.1, 8.2 },
        { "Mavro", NistSets.Mavro, 2.00185600000000, 0.000429123454003053, 13 },
        { "Michelso", NistSets.Michelso, 299.852400000000, 0.0790105478190518, 13.8 },
    };

    [Theory]
    [MemberData(nameof(Univariate))]
    public void Mean_and_deviation_agree(string set, double[] values, double mean, double deviation, double digits)
    {
        var sample = Sample.Of(values);

        Assert.True(NistSets.LogRelativeError(sample.Mean!.Value, mean) >= 14.9, set);
        var agree = NistSets.LogRelativeError(sample.StandardDeviation!.Value, deviation);
        Assert.True(agree >= digits, $"{set}: {agree} digits");
    }

    [Fact]
    public void Norris_straight_line_agrees()
    {
        var fit = Fit(NistSets.Norris, x => 1, x => x);

        Agrees(fit.Estimates[0], -0.262323073774029, 12);
        Agrees(fit.Estimates[1], 1.00211681802045, 14);
        Agrees(fit.DeviationOf(0)!.Value, 0.232818234301152, 13);
        Agrees(fit.DeviationOf(1)!.Value, 0.429796848199937E-03, 13);
        Agrees(fit.ResidualDeviation!.Value, 0.884796396144373, 13);
        Assert.Equal(34, fit.DegreesOfFreedom);
    }

    [Fact]
    public void NoInt1_line_through_the_origin_agrees()
    {
        var fit = Fit(NistSets.NoInt1, x => x);

        Agrees(fit.Estimates[0], 2.07438016528926, 14);
        Agrees(fit.DeviationOf(0)!.Value, 0.0165289256198347, 14);
        Agrees(fit.ResidualDeviation!.Value, 3.56753034006338, 14);
    }

    [Fact]
    public void NoInt2_line_through_the_origin_agrees()
    {
        var fit = Fit(NistSets.NoInt2, x => x);

        Agrees(fit.Estimates[0], 0.727272727272727, 14);
        Agrees(fit.DeviationOf(0)!.Value, 0.0420827318078432, 14);
        Agrees(fit.ResidualDeviation!.Value, 0.369274472937998, 14);
    }

    [Fact]
    public void Pontius_parabola_agrees()
    {
        var fit = Fit(NistSets.Pontius, x => 1, x => x, x => x * x);

        Agrees(fit.Estimates[0], 0.673565789473684E-03, 12);
        Agrees(fit.Estimates[1], 0.732059160401003E-06, 14);
        Agrees(fit.Estimates[2], -0.316081871345029E-14, 14);
    }

    [Fact]
    public void Weights_count_like_repeated_points()
    {
        var repeated = Fit([(1, 2.1), (1, 2.1), (1, 2.1), (2, 3.9), (4, 8.2)], x => 1, x => x);

        var weighted = LeastSquares.Fit([[1, 1, 1], [1, 2, 4]], [2.1, 3.9, 8.2], [3, 1, 1]);

        Assert.Equal(repeated.Estimates[0], weighted.Estimates[0], 1e-12);
        Assert.Equal(repeated.Estimates[1], weighted.Estimates[1], 1e-12);
        Assert.Equal(repeated.ResidualSquares, weighted.ResidualSquares, 1e-12);
        Assert.Equal(repeated.UnscaledCovariance[0, 1], weighted.UnscaledCovariance[0, 1], 1e-12);
    }

    private static LeastSquares Fit((double X, double Y)[] points, params Func<double, double>[] columns) =>
        LeastSquares.Fit(
            [.. columns.Select(column => points.Select(point => column(point.X)).ToArray())],
            [.. points.Select(point => point.Y)]);

    private static void Agrees(double actual, double certified, double digits)
    {
        var agree = NistSets.LogRelativeError(actual, certified);
        Assert.True(agree >= digits, $"{actual:R} for {certified:R}: {agree} digits");
    }
}
