using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>The largest common mode that a pool holds (rule R10): two buffers and depth at 16 bit take six bytes a pixel.</summary>
public sealed class The_largest_mode_that_fits
{
    [Theory]
    [InlineData(640 * 480 * 6, "640x480")]
    [InlineData((640 * 480 * 6) - 1, "640x400")]
    [InlineData(64 << 20, "1600x1200")]
    [InlineData(320 * 200 * 6, "320x200")]
    public void Is_the_last_of_the_ladder_whose_bytes_do_not_exceed_the_pool(long pool, string expected) => Assert.Equal(expected, Largest(320, 200, pool));

    [Fact]
    public void Is_none_where_the_renderers_lowest_does_not_fit() => Assert.Null(Largest(640, 480, (640 * 480 * 6) - 1));

    [Fact]
    public void Is_the_renderers_lowest_rather_than_a_common_one_with_no_more_pixels() => Assert.Equal("768x400", Largest(768, 400, 768 * 400 * 6));

    [Fact]
    public void Is_a_common_one_above_an_uncommon_lowest() => Assert.Equal("800x600", Largest(700, 500, 800 * 600 * 6));

    private static string? Largest(int width, int height, long pool) =>
        FrameBuffer.LargestThatFits(new MemoryUse { LowestMode = new Mode(width, height), Depths = [16], BackBuffers = 1, DepthBits = 16 }, pool, 16, 1)?.ToString();
}

/// <summary>The mode and depth at which a cell is judged (rule R10), for a renderer that starts at 640x480 and draws at 16 and 32 bit.</summary>
public sealed class The_mode_a_cell_is_judged_at
{
    [Theory]
    [InlineData(800, 600, 32, "800x600, 32 bit")]
    [InlineData(768, 400, 16, "768x400, 16 bit")]
    [InlineData(512, 384, 24, "640x480, 16 bit")]
    public void Is_the_one_wanted_where_the_renderer_has_it(int width, int height, int depth, string expected) =>
        Assert.Equal(expected, Judged(Policy.Default with { Mode = new Mode(width, height), Depth = depth }));

    [Fact]
    public void Is_the_renderers_lowest_where_none_is_wanted() => Assert.Equal("640x480, 16 bit", Judged(Policy.Default));

    private static string Judged(Policy policy)
    {
        var draw = DrawMode.For(new MemoryUse { Depths = [16, 32] }, policy);
        return $"{draw.Mode}, {draw.Depth} bit";
    }
}
