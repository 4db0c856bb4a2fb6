namespace FeatureMatrix.Bench;

/// <summary>
/// All values from <see cref="Low"/> to <see cref="High"/>, ends included. An end that the runs do not bound is
/// infinite (or 0 below, where the quantity cannot be negative); an end is never NaN.
/// </summary>
public sealed record Interval(double Low, double High)
{
    /// <summary>Whether the value lies between the ends, ends included.</summary>
    public bool Contains(double value) => Low <= value && value <= High;

    /// <summary>Whether both ends are finite.</summary>
    public bool IsBounded => double.IsFinite(Low) && double.IsFinite(High);

    /// <summary>Both ends multiplied by a positive factor, for instance to turn a share into a percentage.</summary>
    internal Interval Times(double positive) => new(Low * positive, High * positive);

    /// <summary>Frame times in milliseconds from frames per second, and back: 1000 / x, ends exchanged.</summary>
    internal Interval Per1000() => new(1000 / High, Low <= 0 ? double.PositiveInfinity : 1000 / Low);
}
