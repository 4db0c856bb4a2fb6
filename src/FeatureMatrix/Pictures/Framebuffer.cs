using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>How colours are kept. Alpha always has eight bits.</summary>
internal enum ColourFormat
{
    /// <summary>8:8:8, rounded to nearest.</summary>
    TrueColour,

    /// <summary>5:6:5, rounded to nearest.</summary>
    HighColour,

    /// <summary>5:6:5 with a 4 × 4 ordered dither at every write.</summary>
    HighColourDithered,

    /// <summary>Numbers of any size, not rounded and not cut off at one.</summary>
    FloatingPoint,
}

/// <summary>
/// Colour, depth and stencil of a picture, once for every sample of a pixel. Values are rounded to the format at every write, so
/// layers that are blended lose as much as they would on a card.
/// </summary>
internal sealed class Framebuffer
{
    private readonly Vector4[] colour;
    private readonly uint[] depth;
    private readonly byte[] stencil;
    private readonly (double X, double Y)[] offsets;

    public Framebuffer(int width, int height, ColourFormat format = ColourFormat.TrueColour, DepthFormat? depthFormat = null,
        int samples = 1)
    {
        Width = width;
        Height = height;
        Format = format;
        DepthFormat = depthFormat ?? DepthFormat.Z24;
        offsets = SamplePositions(samples);
        colour = new Vector4[width * height * samples];
        depth = new uint[colour.Length];
        stencil = new byte[colour.Length];
        Array.Fill(depth, DepthFormat.Top);
        Array.Fill(colour, new Vector4(0, 0, 0, 1));
    }

    public int Width { get; }

    public int Height { get; }

    public ColourFormat Format { get; }

    public DepthFormat DepthFormat { get; }

    public int Samples => offsets.Length;

    /// <summary>Where in the pixel each sample lies, from its top left corner, 0..1.</summary>
    public ReadOnlySpan<(double X, double Y)> Offsets => offsets;

    public Vector4 this[int x, int y]
    {
        get => ColourOf(Slot(x, y));
        set
        {
            for (var sample = 0; sample < Samples; sample++)
                Write(Slot(x, y) + sample, x, y, value);
        }
    }

    public int Slot(int x, int y) => ((y * Width) + x) * Samples;

    public Vector4 ColourOf(int slot) => colour[slot];

    public ref uint DepthOf(int slot) => ref depth[slot];

    public ref byte StencilOf(int slot) => ref stencil[slot];

    /// <summary>Rounds a colour to the format and keeps it.</summary>
    public void Write(int slot, int x, int y, Vector4 value) => colour[slot] = Stored(value, x, y);

    public void ClearDepth() => Array.Fill(depth, DepthFormat.Top);

    public void ClearStencil(byte value) => Array.Fill(stencil, value);

    /// <summary>What the screen shows: the mean of each pixel's samples, in bytes.</summary>
    public Picture Resolve()
    {
        var rgb = new byte[Width * Height * 3];
        for (int pixel = 0, at = 0; at < rgb.Length; pixel++, at += 3)
        {
            var sum = Vector4.Zero;
            for (var sample = 0; sample < Samples; sample++)
                sum += colour[(pixel * Samples) + sample];
            sum /= Samples;
            rgb[at] = (byte)Dither.Nearest(sum.X, 255);
            rgb[at + 1] = (byte)Dither.Nearest(sum.Y, 255);
            rgb[at + 2] = (byte)Dither.Nearest(sum.Z, 255);
        }

        return new Picture(Width, Height, rgb);
    }

    private Vector4 Stored(Vector4 value, int x, int y)
    {
        var alpha = Dither.Nearest(value.W, 255) / 255f;
        return Format switch
        {
            ColourFormat.TrueColour => new Vector4(
                Dither.Nearest(value.X, 255) / 255f, Dither.Nearest(value.Y, 255) / 255f, Dither.Nearest(value.Z, 255) / 255f, alpha),
            ColourFormat.HighColour => new Vector4(
                Dither.Nearest(value.X, 31) / 31f, Dither.Nearest(value.Y, 63) / 63f, Dither.Nearest(value.Z, 31) / 31f, alpha),
            ColourFormat.HighColourDithered => new Vector4(
                Dither.Ordered(value.X, 31, x, y) / 31f, Dither.Ordered(value.Y, 63, x, y) / 63f,
                Dither.Ordered(value.Z, 31, x, y) / 31f, alpha),
            ColourFormat.FloatingPoint => value,
            _ => throw new InvalidOperationException($"colour format {Format}"),
        };
    }

    // One sample lies in the middle; more lie on a turned grid, so that no two share a row or column.
    private static (double X, double Y)[] SamplePositions(int samples) => samples switch
    {
        1 => [(0.5, 0.5)],
        2 => [(0.25, 0.25), (0.75, 0.75)],
        4 => [(0.375, 0.125), (0.875, 0.375), (0.125, 0.625), (0.625, 0.875)],
        _ => throw new ArgumentOutOfRangeException(nameof(samples), samples, "1, 2 or 4"),
    };
}
