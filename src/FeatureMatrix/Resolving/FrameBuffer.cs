using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// Frame-buffer arithmetic (rule R10). Every figure is a lower bound: boards pad lines and align buffers, so only "does not
/// fit" is certain.
/// </summary>
public static class FrameBuffer
{
    /// <summary>
    /// Modes worth asking about, smallest first: the 4:3 ladder, 5:4, and the DOS modes. The sizes are those of the VESA
    /// mode numbers 0x100 to 0x11F and of VGA mode 13h (Linux kernel documentation, fb/vesafb.rst; FACTS C4).
    /// </summary>
    public static IReadOnlyList<Mode> CommonModes { get; } =
    [
        new(320, 200), new(320, 240), new(400, 300), new(512, 384), new(640, 400), new(640, 480), new(800, 600),
        new(960, 720), new(1024, 768), new(1152, 864), new(1280, 960), new(1280, 1024), new(1600, 1200),
    ];

    /// <summary>Bytes a pixel of a colour or depth buffer takes: 15 bits are stored in two bytes, 24 packed in three.</summary>
    public static int BytesPerPixel(int bits) => (bits + 7) / 8;

    /// <summary>
    /// Bytes = width × height × (front colour + samples × (back buffers × colour + depth)). The front buffer is not
    /// multiplied by the samples (OpenGL ARB_multisample: the multisample buffer holds the samples beside the front buffer).
    /// </summary>
    /// <param name="mode">The mode.</param>
    /// <param name="colourBits">Colour depth in bits.</param>
    /// <param name="backBuffers">1 for double buffering, 2 for triple.</param>
    /// <param name="depthBits">Depth-buffer bits with stencil; 0 for none.</param>
    /// <param name="samples">Samples a pixel; 1 for no multisampling.</param>
    /// <example>640 × 480, 16 bit, one back buffer, 16-bit depth: 307,200 × 6 = 1,843,200 bytes, 1.76 MiB.</example>
    public static long Bytes(Mode mode, int colourBits, int backBuffers, int depthBits, int samples)
    {
        long colour = BytesPerPixel(colourBits);
        long depth = BytesPerPixel(depthBits);
        return mode.Pixels * (colour + (samples * ((backBuffers * colour) + depth)));
    }

    /// <summary>What a renderer needs at a mode and depth.</summary>
    public static long Bytes(MemoryUse use, Mode mode, int colourBits, int samples) =>
        Bytes(mode, colourBits, use.BackBuffers, use.DepthBits ?? colourBits, samples);

    /// <summary>The largest common mode, from the renderer's lowest up, that a pool can hold; null where none fits.</summary>
    public static Mode? LargestThatFits(MemoryUse use, long pool, int colourBits, int samples) =>
        CommonModes.Where(mode => mode.Pixels > use.LowestMode.Pixels).Prepend(use.LowestMode)
            .Where(mode => Bytes(use, mode, colourBits, samples) <= pool)
            .Select(mode => (Mode?)mode).LastOrDefault();
}

/// <summary>Where and how a cell is judged: the library's mode and depth, else the renderer's lowest (rule R10).</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Depth">Colour depth in bits.</param>
/// <param name="Samples">Samples a pixel.</param>
/// <param name="FrameBytes">The frame buffer that follows, in bytes.</param>
public sealed record DrawMode(Mode Mode, int Depth, int Samples, long FrameBytes)
{
    /// <summary>The mode at which a renderer is judged under a policy.</summary>
    public static DrawMode For(MemoryUse use, Policy policy)
    {
        var mode = policy.Mode is { } wanted && wanted.Pixels >= use.LowestMode.Pixels ? wanted : use.LowestMode;
        var depth = policy.Depth is { } bits && use.Depths.Contains(bits) ? bits : use.Depths[0];
        return new DrawMode(mode, depth, policy.Samples, FrameBuffer.Bytes(use, mode, depth, policy.Samples));
    }
}
