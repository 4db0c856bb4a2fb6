using System.Numerics;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures;

/// <summary>Blocks worked by hand from the rules of EXT_texture_compression_s3tc (OpenGL registry).</summary>
public sealed class S3tcDecodingTests
{
    private static readonly (int, int, int, int) Red = (255, 0, 0, 255);
    private static readonly (int, int, int, int) Blue = (0, 0, 255, 255);

    // First row 0 1 2 3, all others 0.
    private static readonly byte[] Indices = [0b11_10_01_00, 0, 0, 0];

    [Fact]
    public void First_end_greater_gives_two_colours_at_thirds() =>
        Assert.Equal([Red, Blue, (170, 0, 85, 255), (85, 0, 170, 255)], FirstRow(S3tcKind.Dxt1, [0x00, 0xF8, 0x1F, 0x00, .. Indices]));

    [Fact]
    public void First_end_smaller_gives_one_half_way_and_one_clear() =>
        Assert.Equal([Blue, Red, (128, 0, 128, 255), (0, 0, 0, 0)], FirstRow(S3tcKind.Dxt1, [0x1F, 0x00, 0x00, 0xF8, .. Indices]));

    [Fact]
    public void Equal_ends_give_the_clear_colour_too() =>
        Assert.Equal([Red, Red, Red, (0, 0, 0, 0)], FirstRow(S3tcKind.Dxt1, [0x00, 0xF8, 0x00, 0xF8, .. Indices]));

    [Fact]
    public void The_128_bit_kinds_have_four_colours_whatever_the_order() =>
        Assert.Equal([(0, 0, 255, 0), (255, 0, 0, 17), (85, 0, 170, 136), (170, 0, 85, 255)],
            FirstRow(S3tcKind.Dxt3, [0x10, 0xF8, 0, 0, 0, 0, 0, 0, 0x1F, 0x00, 0x00, 0xF8, .. Indices]));

    [Fact]
    public void Alpha_runs_in_sevenths_where_the_first_end_is_greater()
    {
        // Ends 224 and 0; texels 0..7 coded 0..7: 224, 0, then 6/7, 5/7 ... 1/7 of 224.
        byte[] block = [224, 0, 0b10_001_000, 0b1_100_011_0, 0b111_110_10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];

        Assert.Equal([224, 0, 192, 160, 128, 96, 64, 32], Alphas(block));
    }

    [Fact]
    public void Alpha_runs_in_fifths_with_clear_and_solid_where_it_is_not()
    {
        byte[] block = [50, 150, 0b10_001_000, 0b1_100_011_0, 0b111_110_10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];

        Assert.Equal([50, 150, 70, 90, 110, 130, 0, 255], Alphas(block));
    }

    [Theory]
    // Sizes of the levels of a 256 × 64 texture: Microsoft, "DDS File Layout for Textures".
    [InlineData(256, 64, 8192, 16384)]
    [InlineData(128, 32, 2048, 4096)]
    [InlineData(32, 8, 128, 256)]
    [InlineData(4, 1, 8, 16)]
    [InlineData(1, 1, 8, 16)]
    public void An_image_takes_whole_blocks(int width, int height, int dxt1, int dxt5)
    {
        Assert.Equal(dxt1, S3tc.ImageBytes(S3tcKind.Dxt1, width, height));
        Assert.Equal(dxt5, S3tc.ImageBytes(S3tcKind.Dxt5, width, height));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Colours_on_one_line_survive_to_within_a_step(int kind)
    {
        // Grey ramps: the ends are kept in 5:6:5 bits, inner colours are at most a sixth of the spread away.
        var ramp = Texture.Paint(16, 16, (u, _) => Tint.Grey(u));
        var read = S3tc.RoundTrip((S3tcKind)kind, ramp);

        for (var i = 0; i < 256; i++)
            Assert.InRange(Math.Abs(read.Base.Texels[i].Y - ramp.Base.Texels[i].Y), 0, (0.25 / 6) + (0.5 / 31));
    }

    [Fact]
    public void Holes_stay_holes_in_the_small_kind()
    {
        var read = S3tc.RoundTrip(S3tcKind.Dxt1, Patterns.Fence);

        Assert.Equal(Patterns.Fence.Base.Texels.Select(t => t.W), read.Base.Texels.Select(t => t.W));
    }

    [Fact]
    public void Soft_alpha_is_kept_to_a_fifteenth_or_a_seventh_of_the_spread()
    {
        var exact = Patterns.Smoke.Base.Texels;
        var (three, five) = (S3tc.RoundTrip(S3tcKind.Dxt3, Patterns.Smoke), S3tc.RoundTrip(S3tcKind.Dxt5, Patterns.Smoke));

        Assert.All(Enumerable.Range(0, exact.Length), i =>
        {
            Assert.InRange(Math.Abs(three.Base.Texels[i].W - exact[i].W), 0, (0.5 / 15) + 1e-6);
            Assert.InRange(Math.Abs(five.Base.Texels[i].W - exact[i].W), 0, (0.5 / 7) + (1.0 / 255));
        });
    }

    private static (int, int, int, int)[] FirstRow(S3tcKind kind, byte[] block) =>
        [.. S3tc.DecodeBlock(kind, block).Take(4).Select(Bytes)];

    private static int[] Alphas(byte[] block) => [.. S3tc.DecodeBlock(S3tcKind.Dxt5, block).Take(8).Select(t => Bytes(t).Item4)];

    private static (int, int, int, int) Bytes(Vector4 colour) => (
        Dither.Nearest(colour.X, 255), Dither.Nearest(colour.Y, 255), Dither.Nearest(colour.Z, 255), Dither.Nearest(colour.W, 255));
}
