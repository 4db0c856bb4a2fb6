namespace FeatureMatrix.Pictures;

/// <summary>How a colour channel of 0..1 becomes one of a few levels.</summary>
internal static class Dither
{
    // The classical 4 × 4 ordered-dither matrix: each threshold 0..15 once.
    private static readonly byte[] Matrix = [0, 8, 2, 10, 12, 4, 14, 6, 3, 11, 1, 9, 15, 7, 13, 5];

    /// <summary>A threshold in (0, 1) that repeats every four pixels; the sixteen have mean one half.</summary>
    public static double Threshold(int x, int y) => (Matrix[((y & 3) * 4) + (x & 3)] + 0.5) / 16;

    /// <summary>The nearest of 0..<paramref name="top"/>: never more than half a step away.</summary>
    public static int Nearest(double value, int top) => (int)((Math.Clamp(value, 0, 1) * top) + 0.5);

    /// <summary>
    /// The level below or above, chosen by place, so that a flat area keeps its mean to within 1/32 of a step: always less
    /// than one step away.
    /// </summary>
    public static int Ordered(double value, int top, int x, int y) =>
        Math.Min(top, (int)((Math.Clamp(value, 0, 1) * top) + Threshold(x, y)));
}
