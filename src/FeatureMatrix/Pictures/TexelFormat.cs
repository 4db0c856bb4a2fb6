using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>How many bits of each channel a texture keeps.</summary>
internal sealed record TexelFormat(int Red, int Green, int Blue, int Alpha)
{
    public static readonly TexelFormat Rgba8888 = new(8, 8, 8, 8);
    public static readonly TexelFormat Rgb565 = new(5, 6, 5, 0);
    public static readonly TexelFormat Rgba4444 = new(4, 4, 4, 4);
    public static readonly TexelFormat Rgba5551 = new(5, 5, 5, 1);

    public int BytesPerTexel => (Red + Green + Blue + Alpha + 7) / 8;

    /// <summary>The nearest colour the format can keep; without alpha bits everything is solid.</summary>
    public Vector4 Stored(Vector4 colour) => new(
        Channel(colour.X, Red), Channel(colour.Y, Green), Channel(colour.Z, Blue), Alpha == 0 ? 1 : Channel(colour.W, Alpha));

    private static float Channel(float value, int bits)
    {
        var top = (1 << bits) - 1;
        return (float)Dither.Nearest(value, top) / top;
    }
}
