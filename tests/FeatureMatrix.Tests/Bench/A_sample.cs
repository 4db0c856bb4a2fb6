using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

public sealed class A_sample
{
    [Fact]
    public void Of_no_runs_knows_nothing()
    {
        var sample = Sample.Of([]);

        Assert.Equal(0, sample.Count);
        Assert.Null(sample.Mean);
        Assert.Null(sample.StandardDeviation);
        Assert.Null(sample.CoefficientOfVariation);
        Assert.Null(sample.MeanInterval());
        Assert.Equal(new Outliers.TooFewToTell(0), Outliers.In(sample));
    }

    [Fact]
    public void Of_one_run_knows_the_mean_and_no_spread()
    {
        var sample = Sample.Of([61.5]);

        Assert.Equal(61.5, sample.Mean);
        Assert.Null(sample.StandardDeviation);
        Assert.Null(sample.StandardError);
        Assert.Null(sample.MeanInterval());
    }

    [Fact]
    public void Of_three_runs_is_reckoned_by_hand()
    {
        var sample = Sample.Of([60, 61, 62]);

        Assert.Equal(61, sample.Mean);
        Assert.Equal(1, sample.StandardDeviation);
        Assert.Equal(1 / 61.0, sample.CoefficientOfVariation);
        // t at 0.975 and 2 degrees of freedom is 4.303 (NIST table): 61 ± 4.303 / √3.
        Assert.Equal(58.5159, sample.MeanInterval()!.Low, 0.0005);
        Assert.Equal(63.4841, sample.MeanInterval()!.High, 0.0005);
    }

    [Fact]
    public void Of_equal_values_has_no_spread_at_all()
    {
        var sample = Sample.Of([33.3, 33.3, 33.3]);

        Assert.Equal(33.3, sample.Mean);
        Assert.Equal(0, sample.StandardDeviation);
        Assert.Equal(new Interval(33.3, 33.3), sample.MeanInterval());
    }

    [Fact]
    public void Around_zero_has_no_coefficient_of_variation() =>
        Assert.Null(Sample.Of([-1, 1]).CoefficientOfVariation);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Refuses_what_is_no_measurement(double value) =>
        Assert.Throws<ArgumentException>(() => Sample.Of([60, value]));

    /// <summary>Three values cannot tell, however far one lies: the honest answer is not an empty list.</summary>
    [Fact]
    public void Of_three_runs_is_too_small_to_name_an_outlier() =>
        Assert.Equal(new Outliers.TooFewToTell(3), Outliers.In(Sample.Of([60.1, 60.2, 31.0])));

    /// <summary>
    /// The worked example of the NIST/SEMATECH e-Handbook for Grubbs' test, 1.3.5.17.1 (data from memory): G = 2.4687
    /// for 245.57; the two-sided critical value for n = 8 is 2.1266 in Grubbs' table.
    /// </summary>
    [Fact]
    public void With_one_gross_value_flags_it()
    {
        var sample = Sample.Of([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]);

        Assert.Equal(2.4687, (245.57 - sample.Mean!.Value) / sample.StandardDeviation!.Value, 0.0001);
        Assert.Equal(2.1266, Outliers.Critical(8, 0.05), 0.0001);
        Assert.Equal([7], Assert.IsType<Outliers.Screened>(Outliers.In(sample)).Flagged);
    }

    /// <summary>
    /// Rosner's data in e-Handbook 1.3.5.17.3 (from memory; its published steps R1 = 3.118 and R3 = 3.179 against 3.158 and 3.144
    /// check the memory): two-sided at 5 % there are three outliers although the first step alone sees none.
    /// </summary>
    [Fact]
    public void With_outliers_that_hide_each_other_flags_all_three()
    {
        var sample = Sample.Of(
        [
            -0.25, 0.68, 0.94, 1.15, 1.20, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.70,
            1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.10, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.40,
            2.47, 2.54, 2.62, 2.64, 2.90, 2.92, 2.92, 2.93, 3.21, 3.26, 3.30, 3.59, 3.68, 4.30, 4.64, 5.34, 5.42, 6.01,
        ]);

        Assert.Equal(54, sample.Count);
        Assert.Equal(3.118, (6.01 - sample.Mean!.Value) / sample.StandardDeviation!.Value, 0.001);
        Assert.Equal(3.158, Outliers.Critical(54, 0.05), 0.001);
        Assert.Equal(3.144, Outliers.Critical(52, 0.05), 0.001);
        Assert.Equal([53, 52, 51], Assert.IsType<Outliers.Screened>(Outliers.In(sample)).Flagged);
    }

    [Fact]
    public void Without_anything_odd_flags_nothing() =>
        Assert.Empty(Assert.IsType<Outliers.Screened>(
            Outliers.In(Sample.Of([60.1, 59.8, 60.4, 60.0, 59.7, 60.2, 60.3]))).Flagged);

    [Fact]
    public void Of_seven_equal_values_flags_nothing() =>
        Assert.Empty(Assert.IsType<Outliers.Screened>(Outliers.In(Sample.Of(Enumerable.Repeat(60.0, 7)))).Flagged);
}
