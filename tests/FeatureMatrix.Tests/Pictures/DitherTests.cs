using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures;

public sealed class DitherTests
{
    private static IEnumerable<double> Values => Enumerable.Range(0, 1001).Select(i => i / 1000.0);

    [Theory]
    [InlineData(31)]
    [InlineData(63)]
    public void Rounding_is_off_by_at_most_half_a_step(int top) =>
        Assert.All(Values, value => Assert.InRange(Math.Abs((value * top) - Dither.Nearest(value, top)), 0, 0.5 + 1e-9));

    [Theory]
    [InlineData(31)]
    [InlineData(63)]
    public void Ordered_dithering_is_off_by_less_than_a_step_at_any_pixel(int top)
    {
        foreach (var value in Values)
        {
            for (var pixel = 0; pixel < 16; pixel++)
                Assert.InRange(Math.Abs((value * top) - Dither.Ordered(value, top, pixel % 4, pixel / 4)), 0, 1 - (1.0 / 32) + 1e-9);
        }
    }

    [Theory]
    [InlineData(31)]
    [InlineData(63)]
    public void A_dithered_area_keeps_its_mean_to_a_thirty_second_of_a_step(int top)
    {
        foreach (var value in Values)
        {
            var mean = Enumerable.Range(0, 16).Average(pixel => Dither.Ordered(value, top, pixel % 4, pixel / 4));
            Assert.InRange(mean - (value * top), (-1.0 / 32) - 1e-9, (1.0 / 32) + 1e-9);
        }
    }

    [Fact]
    public void Sixteen_thresholds_are_all_different() =>
        Assert.Equal(16, Enumerable.Range(0, 16).Select(pixel => Dither.Threshold(pixel % 4, pixel / 4)).Distinct().Count());
}
