using System.Numerics;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures;

/// <summary>
/// Check values of the brief's fact sheet, section F: the equations of the OpenGL 2.1 specification section 3.10 (3.31 to 3.33),
/// recomputed there to six decimals; density 0.5 at distance 0.8 is the worked example of the DirectX 5 SDK text.
/// </summary>
public sealed class FogFactorTests
{
    [Theory]
    [InlineData(0.5, 0.8, 0.65, 0.5)]
    [InlineData(0.5, 0.8, 0.4, 1)]
    [InlineData(0.5, 0.8, 0.9, 0)]
    [InlineData(100, 500, 200, 0.75)]
    [InlineData(0, 1, 0.25, 0.75)]
    public void Linear_fog_follows_the_published_equation(double start, double end, double distance, double factor) =>
        Assert.Equal(factor, new Fog(FogMode.Linear, Vector4.One) { Start = start, End = end }.Factor(distance), 0.0000005);

    [Theory]
    [InlineData(0.66, 1, 0.516851)]
    [InlineData(0.5, 0.8, 0.670320)]
    [InlineData(0.5, 0.5, 0.778801)]
    [InlineData(1, 1, 0.367879)]
    [InlineData(0.01, 100, 0.367879)]
    [InlineData(0.002, 500, 0.367879)]
    public void Exponential_fog_follows_the_published_equation(double density, double distance, double factor) =>
        Assert.Equal(factor, new Fog(FogMode.Exponential, Vector4.One) { Density = density }.Factor(distance), 0.000001);

    [Theory]
    [InlineData(0.66, 1, 0.646876)]
    [InlineData(0.5, 0.8, 0.852144)]
    [InlineData(0.5, 0.5, 0.939413)]
    [InlineData(1, 1, 0.367879)]
    [InlineData(0.01, 100, 0.367879)]
    [InlineData(0.002, 500, 0.367879)]
    public void Exponential_squared_fog_follows_the_published_equation(double density, double distance, double factor) =>
        Assert.Equal(factor, new Fog(FogMode.ExponentialSquared, Vector4.One) { Density = density }.Factor(distance), 0.000001);

    [Theory]
    [InlineData(0.25, 0xFF0000, 0x808080, 160, 96, 96)]
    [InlineData(0.516851, 0xC86432, 0x000000, 103, 52, 26)]
    public void A_fogged_colour_is_a_mixture_by_the_factor(double factor, int source, int fog, int red, int green, int blue)
    {
        var mixed = new Fog(FogMode.Linear, Tint.Hex(fog)).Blend(Tint.Hex(source), factor);

        Assert.Equal((red, green, blue), (Dither.Nearest(mixed.X, 255), Dither.Nearest(mixed.Y, 255), Dither.Nearest(mixed.Z, 255)));
    }

    [Fact]
    public void Linear_fog_in_z_is_complete_a_few_steps_from_the_viewer()
    {
        // Fact sheet, section F: n = 1, f = 100, end 0.8 is reached at w = 4.807692; the same end in W units lies at 80.2.
        var camera = new Camera { Eye = new(0, 0, 0), Target = new(0, 0, 1), Near = 1, Far = 100 };

        Assert.Equal(0.8, camera.WindowDepth(4.807692), 0.0000005);
        Assert.Equal(0.8, camera.LinearDepth(80.2), 0.0000005);
    }
}
