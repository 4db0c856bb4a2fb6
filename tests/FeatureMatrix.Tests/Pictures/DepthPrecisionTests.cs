using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures;

public sealed class DepthPrecisionTests
{
    /// <summary>Table "Z versus W" of the brief's fact sheet, section F (derived there from the Direct3D projection).</summary>
    [Theory]
    [InlineData(100, 1, 0.000000, 0.000000)]
    [InlineData(100, 2, 0.505051, 0.010101)]
    [InlineData(100, 10, 0.909091, 0.090909)]
    [InlineData(100, 50, 0.989899, 0.494949)]
    [InlineData(100, 100, 1.000000, 1.000000)]
    [InlineData(1000, 2, 0.500501, 0.001001)]
    [InlineData(1000, 10, 0.900901, 0.009009)]
    [InlineData(1000, 50, 0.980981, 0.049049)]
    [InlineData(1000, 100, 0.990991, 0.099099)]
    [InlineData(1000, 1000, 1.000000, 1.000000)]
    public void Z_and_w_of_a_distance_are_the_derived_values(double far, double distance, double z, double w)
    {
        var camera = new Camera { Eye = new(0, 0, 0), Target = new(0, 0, 1), Near = 1, Far = far };

        Assert.Equal(z, camera.WindowDepth(distance), 0.0000005);
        Assert.Equal(w, camera.LinearDepth(distance), 0.0000005);
    }

    [Fact]
    public void Steps_of_sixteen_bit_z_grow_with_the_square_of_the_distance()
    {
        // Derived by hand: n = 1, f = 1000, w = 500: 500² · 999/1000 / 65535 = 3.810941; W: 999/65535 = 0.0152438; Z24: 3.810941/256.
        Assert.Equal(3.810941, DepthFormat.Z16.Resolution(1, 1000, 500), 0.0000005);
        Assert.Equal(0.0148862, DepthFormat.Z24.Resolution(1, 1000, 500), 0.0000005);
        Assert.Equal(0.0152438, DepthFormat.W16.Resolution(1, 1000, 500), 0.0000005);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(5, false)]
    public void Sixteen_bit_z_tells_far_surfaces_apart_only_by_more_than_a_step(double apart, bool mayFail)
    {
        var camera = new Camera { Eye = new(0, 0, 0), Target = new(0, 0, 1), Near = 1, Far = 1000 };
        var equal = Enumerable.Range(0, 200).Select(i => 500 + (i * 0.05))
            .Count(w => DepthFormat.Z16.Store(camera.WindowDepth(w)) == DepthFormat.Z16.Store(camera.WindowDepth(w + apart)));

        Assert.Equal(mayFail, equal > 0);
    }
}
