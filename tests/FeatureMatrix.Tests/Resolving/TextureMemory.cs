using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>
/// Bytes of a preset as a card keeps it (rule R11). A texel has one byte as an index into a palette; blocks of 4 x 4 texels have 8
/// or 16 bytes (OpenGL extension EXT_texture_compression_s3tc: half a byte or a byte a texel). Expanded it has two bytes, or four at
/// depths above 16 bit.
/// </summary>
public sealed class Bytes_of_a_texture_preset
{
    private const long Texels = 64 * 64;

    [Theory]
    [InlineData(TextureFormat.Bits16, 2 * Texels, false, false, 32, 2 * Texels)]
    [InlineData(TextureFormat.Bits32, 4 * Texels, false, false, 16, 4 * Texels)]
    [InlineData(TextureFormat.Paletted8, Texels, true, false, 32, Texels)]
    [InlineData(TextureFormat.Paletted8, Texels, false, true, 16, 2 * Texels)]
    [InlineData(TextureFormat.Paletted8, Texels, false, true, 24, 4 * Texels)]
    [InlineData(TextureFormat.Paletted8, Texels, false, true, 32, 4 * Texels)]
    [InlineData(TextureFormat.Compressed4, Texels / 16 * 8, false, true, 32, Texels / 2)]
    [InlineData(TextureFormat.Compressed4, Texels / 16 * 8, true, false, 16, 2 * Texels)]
    [InlineData(TextureFormat.Compressed4, Texels / 16 * 8, true, false, 32, 4 * Texels)]
    [InlineData(TextureFormat.Compressed8, Texels / 16 * 16, false, true, 32, Texels)]
    [InlineData(TextureFormat.Compressed8, Texels / 16 * 16, true, false, 16, 2 * Texels)]
    [InlineData(TextureFormat.Compressed8, Texels / 16 * 16, true, false, 32, 4 * Texels)]
    public void Grow_only_where_the_card_keeps_no_such_format(TextureFormat format, long bytes, bool palettes, bool compression, int depth, long expected) =>
        Assert.Equal(expected, new TextureStorage(palettes, compression, depth).Bytes(new TexturePreset("high", bytes, format, true)));
}

/// <summary>The highest preset that fits (rule R11), of low (1 MiB), medium (2 MiB) and high (4 MiB) beside 2 MiB of frames.</summary>
public sealed class The_texture_preset_that_fits
{
    private const long Mebibyte = 1 << 20;
    private static readonly TextureStorage Plain = new(true, true, 16);
    private static readonly DrawMode Draw = new(new Mode(640, 480), 16, 1, 2 * Mebibyte);

    [Theory]
    [InlineData(6 * Mebibyte, "4096 KiB left, high")]
    [InlineData((6 * Mebibyte) - 1, "4095 KiB left, medium, reduced")]
    [InlineData(4 * Mebibyte, "2048 KiB left, medium, reduced")]
    [InlineData((4 * Mebibyte) - 1, "2047 KiB left, low, reduced")]
    [InlineData(3 * Mebibyte, "1024 KiB left, low, reduced")]
    [InlineData((3 * Mebibyte) - 1, "1023 KiB left, nothing, about, reduced, too large")]
    [InlineData(Mebibyte, "0 KiB left, nothing, about, reduced, too large")]
    public void Is_the_highest_that_what_is_left_of_one_pool_holds(long pool, string expected) =>
        Assert.Equal(expected, Text(new VideoMemory.Unified(pool) { TexturesFromSystemMemory = false }));

    [Theory]
    [InlineData(4 * Mebibyte, "4096 KiB left, high")]
    [InlineData(Mebibyte, "1024 KiB left, low, reduced")]
    public void Is_the_highest_that_a_texture_pool_of_its_own_holds(long textures, string expected) =>
        Assert.Equal(expected, Text(new VideoMemory.Split(Mebibyte, textures) { TexturesFromSystemMemory = false }));

    [Theory]
    [InlineData(6 * Mebibyte, "4096 KiB left, high")]
    [InlineData(4 * Mebibyte, "2048 KiB left, high, spills")]
    [InlineData(Mebibyte, "0 KiB left, high, spills")]
    public void Is_always_the_highest_where_textures_may_stay_in_system_memory(long pool, string expected) =>
        Assert.Equal(expected, Text(new VideoMemory.Unified(pool) { TexturesFromSystemMemory = true }));

    [Theory]
    [InlineData(6 * Mebibyte, "4096 KiB left, high, about")]
    [InlineData(4 * Mebibyte, "2048 KiB left, medium, about, reduced")]
    [InlineData(Mebibyte, "0 KiB left, nothing, about, reduced")]
    public void Is_an_estimate_and_stops_nothing_where_nobody_recorded_whether_they_may(long pool, string expected) =>
        Assert.Equal(expected, Text(new VideoMemory.Unified(pool)));

    [Theory]
    [InlineData(6 * Mebibyte, "4096 KiB left, high, about")]
    [InlineData(2 * Mebibyte, "0 KiB left, nothing, about, reduced")]
    public void Is_an_estimate_and_stops_nothing_where_nobody_measured_it(long pool, string expected) =>
        Assert.Equal(expected, Text(new VideoMemory.Unified(pool) { TexturesFromSystemMemory = false }, measured: false));

    [Theory]
    [InlineData(2 * Mebibyte, "2048 KiB left, nothing, about, reduced, too large")]
    [InlineData(4 * Mebibyte, "4096 KiB left, nothing, about, reduced")]
    [InlineData(8 * Mebibyte, "8192 KiB left, low, reduced")]
    public void Is_certainly_too_large_only_where_it_is_at_its_most_hopeful(long textures, string expected) => Assert.Equal(
        expected,
        Text(new VideoMemory.Split(Mebibyte, textures) { TexturesFromSystemMemory = false }, format: TextureFormat.Paletted8, bytes: 4 * Mebibyte, kept: Plain with { KeepsPalettes = false }));

    [Fact]
    public void Is_none_to_speak_of_where_the_renderer_has_none_or_the_memory_is_not_recorded()
    {
        Assert.Equal("2048 KiB left, nothing, about", Text(TextureFit.Of(new MemoryUse(), new VideoMemory.Unified(4 * Mebibyte), Draw, Plain, Plain)));
        Assert.Equal("not known, nothing, about", Text(TextureFit.Of(Use(true), null, Draw, Plain, Plain)));
    }

    private static string Text(VideoMemory memory, bool measured = true, TextureFormat format = TextureFormat.Bits16, long bytes = Mebibyte, TextureStorage? kept = null) =>
        Text(TextureFit.Of(Use(measured, format, bytes), memory, Draw, kept ?? Plain, Plain));

    private static MemoryUse Use(bool measured, TextureFormat format = TextureFormat.Bits16, long bytes = Mebibyte) =>
        new() { Presets = [new("low", bytes, format, measured), new("medium", 2 * bytes, format, measured), new("high", 4 * bytes, format, measured)] };

    private static string Text(TextureFit fit)
    {
        Assert.Equal(fit.NothingFits, fit.Highest is null && fit.IsReduced);
        var left = fit.BytesLeft is { } bytes ? $"{bytes / 1024} KiB left" : "not known";
        return $"{left}, {fit.Highest?.Name ?? "nothing"}{(fit.Spills ? ", spills" : "")}{(fit.IsEstimated ? ", about" : "")}{(fit.IsReduced ? ", reduced" : "")}{(fit.IsCertainlyTooLarge ? ", too large" : "")}";
    }
}
