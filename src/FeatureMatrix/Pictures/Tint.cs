using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>Colours as stored in a frame buffer, 0..1 a channel.</summary>
internal static class Tint
{
    public static readonly Vector4 Black = new(0, 0, 0, 1);
    public static readonly Vector4 White = Vector4.One;

    /// <summary>A solid colour from its web notation, 0xRRGGBB.</summary>
    public static Vector4 Hex(int rgb, double alpha = 1) =>
        new((rgb >> 16) / 255f, ((rgb >> 8) & 255) / 255f, (rgb & 255) / 255f, (float)alpha);

    public static Vector4 Grey(double value, double alpha = 1) => new((float)value, (float)value, (float)value, (float)alpha);

    public static Vector4 Mix(Vector4 from, Vector4 to, double share)
    {
        var s = (float)Math.Clamp(share, 0, 1);
        return (from * (1 - s)) + (to * s);
    }

    /// <summary>Lighter or darker, alpha kept.</summary>
    public static Vector4 Times(this Vector4 colour, double by) =>
        new(colour.X * (float)by, colour.Y * (float)by, colour.Z * (float)by, colour.W);

    public static Vector4 WithAlpha(this Vector4 colour, double alpha) => new(colour.X, colour.Y, colour.Z, (float)alpha);

    /// <summary>0 below the first edge, 1 above the second, smooth between.</summary>
    public static double Step(double from, double to, double value)
    {
        var t = Math.Clamp((value - from) / (to - from), 0, 1);
        return t * t * (3 - (2 * t));
    }
}
