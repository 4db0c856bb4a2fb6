using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

public sealed class Student_t_quantiles
{
    /// <summary>
    /// Upper critical values of the NIST/SEMATECH e-Handbook table 1.3.6.7.2, whose stored copy has seven wrong cells in
    /// the .001 column (df 1 and 7 to 12); those are the recomputed values.
    /// </summary>
    [Theory]
    [InlineData(1, 3.078, 6.314, 12.706, 31.821, 63.657, 318.309)]
    [InlineData(2, 1.886, 2.920, 4.303, 6.965, 9.925, 22.327)]
    [InlineData(3, 1.638, 2.353, 3.182, 4.541, 5.841, 10.215)]
    [InlineData(4, 1.533, 2.132, 2.776, 3.747, 4.604, 7.173)]
    [InlineData(5, 1.476, 2.015, 2.571, 3.365, 4.032, 5.893)]
    [InlineData(6, 1.440, 1.943, 2.447, 3.143, 3.707, 5.208)]
    [InlineData(7, 1.415, 1.895, 2.365, 2.998, 3.499, 4.785)]
    [InlineData(8, 1.397, 1.860, 2.306, 2.896, 3.355, 4.501)]
    [InlineData(9, 1.383, 1.833, 2.262, 2.821, 3.250, 4.297)]
    [InlineData(10, 1.372, 1.812, 2.228, 2.764, 3.169, 4.144)]
    [InlineData(11, 1.363, 1.796, 2.201, 2.718, 3.106, 4.025)]
    [InlineData(12, 1.356, 1.782, 2.179, 2.681, 3.055, 3.930)]
    [InlineData(13, 1.350, 1.771, 2.160, 2.650, 3.012, 3.852)]
    [InlineData(14, 1.345, 1.761, 2.145, 2.624, 2.977, 3.787)]
    [InlineData(15, 1.341, 1.753, 2.131, 2.602, 2.947, 3.733)]
    [InlineData(16, 1.337, 1.746, 2.120, 2.583, 2.921, 3.686)]
    [InlineData(17, 1.333, 1.740, 2.110, 2.567, 2.898, 3.646)]
    [InlineData(18, 1.330, 1.734, 2.101, 2.552, 2.878, 3.610)]
    [InlineData(19, 1.328, 1.729, 2.093, 2.539, 2.861, 3.579)]
    [InlineData(20, 1.325, 1.725, 2.086, 2.528, 2.845, 3.552)]
    [InlineData(21, 1.323, 1.721, 2.080, 2.518, 2.831, 3.527)]
    [InlineData(22, 1.321, 1.717, 2.074, 2.508, 2.819, 3.505)]
    [InlineData(23, 1.319, 1.714, 2.069, 2.500, 2.807, 3.485)]
    [InlineData(24, 1.318, 1.711, 2.064, 2.492, 2.797, 3.467)]
    [InlineData(25, 1.316, 1.708, 2.060, 2.485, 2.787, 3.450)]
    [InlineData(26, 1.315, 1.706, 2.056, 2.479, 2.779, 3.435)]
    [InlineData(27, 1.314, 1.703, 2.052, 2.473, 2.771, 3.421)]
    [InlineData(28, 1.313, 1.701, 2.048, 2.467, 2.763, 3.408)]
    [InlineData(29, 1.311, 1.699, 2.045, 2.462, 2.756, 3.396)]
    [InlineData(30, 1.310, 1.697, 2.042, 2.457, 2.750, 3.385)]
    [InlineData(40, 1.303, 1.684, 2.021, 2.423, 2.704, 3.307)]
    [InlineData(60, 1.296, 1.671, 2.000, 2.390, 2.660, 3.232)]
    [InlineData(100, 1.290, 1.660, 1.984, 2.364, 2.626, 3.174)]
    public void Published_table_is_met(
        double df, double p90, double p95, double p975, double p99, double p995, double p999)
    {
        Assert.Equal(p90, Upper(0.90), 0.00051);
        Assert.Equal(p95, Upper(0.95), 0.00051);
        Assert.Equal(p975, Upper(0.975), 0.00051);
        Assert.Equal(p99, Upper(0.99), 0.00051);
        Assert.Equal(p995, Upper(0.995), 0.00051);
        Assert.Equal(p999, Upper(0.999), 0.00051);

        double Upper(double oneTail) => Confidence.TwoSidedT(2 * oneTail - 1, df);
    }

    /// <summary>df 4 to 4: 6.388; 2 to 15: 3.682; 1 to 10: 4.965 in the 5 % table of e-Handbook 1.3.6.7.3 (values from memory).</summary>
    [Theory]
    [InlineData(4, 4, 6.388)]
    [InlineData(2, 15, 3.682)]
    [InlineData(1, 10, 4.965)]
    public void Published_F_values_are_met(double numerator, double denominator, double critical)
    {
        Assert.Equal(critical, Confidence.UpperF(0.95, numerator, denominator), 0.00051);
        Assert.Equal(0.05, Confidence.UpperP(critical, numerator, denominator), 0.0001);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(95)]
    public void A_confidence_outside_0_to_1_is_refused(double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Confidence.TwoSidedT(confidence, 5));
}
