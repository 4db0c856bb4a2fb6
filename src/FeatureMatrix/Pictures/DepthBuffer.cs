namespace FeatureMatrix.Pictures;

/// <summary>What a depth buffer keeps for each pixel.</summary>
/// <param name="Bits">Bits of the stored whole number, 8 to 32.</param>
/// <param name="Linear">True for a W-buffer (equal steps everywhere), false for a Z-buffer (fine near, coarse far).</param>
internal readonly record struct DepthFormat(int Bits, bool Linear)
{
    public static readonly DepthFormat Z16 = new(16, false);
    public static readonly DepthFormat Z24 = new(24, false);
    public static readonly DepthFormat W16 = new(16, true);

    public uint Top => (uint)((1UL << Bits) - 1);

    /// <summary>The stored number nearest to a depth of 0..1; outside values are clamped.</summary>
    public uint Store(double depth) => (uint)Math.Floor((Math.Clamp(depth, 0, 1) * Top) + 0.5);

    /// <summary>
    /// The eye distance between two neighbouring stored numbers at this eye distance w: two surfaces nearer to each other than this can
    /// come out in the wrong order. Derived from Z = f/(f−n)·(1−n/w), so dw = w²·(f−n)/(f·n) · dZ; W steps are (f−n)/(2^bits−1).
    /// </summary>
    public double Resolution(double near, double far, double eyeDepth) =>
        (Linear ? far - near : eyeDepth * eyeDepth * (far - near) / (far * near)) / Top;
}

/// <summary>Tests of a new value against the stored one.</summary>
internal enum Comparison
{
    Always,
    Less,
    LessOrEqual,
    Equal,
    NotEqual,
}

internal static class Comparisons
{
    public static bool Passes(this Comparison test, uint value, uint stored) => test switch
    {
        Comparison.Always => true,
        Comparison.Less => value < stored,
        Comparison.LessOrEqual => value <= stored,
        Comparison.Equal => value == stored,
        Comparison.NotEqual => value != stored,
        _ => throw new InvalidOperationException($"comparison {test}"),
    };
}
