namespace FeatureMatrix.Deciding;

/// <summary>
/// How a title fares on a card in one completion, with every loss graded: what rule R14 ranks. Greater is better.
/// </summary>
/// <param name="Runs">True where it runs.</param>
/// <param name="Severe">Severe losses; 0 where it does not run.</param>
/// <param name="Cosmetic">Cosmetic losses; 0 where it does not run.</param>
public readonly record struct Standing(bool Runs, int Severe, int Cosmetic) : IComparable<Standing>
{
    /// <summary>It does not run.</summary>
    public static Standing DoesNotRun { get; }

    /// <summary>It runs with nothing lost.</summary>
    public static Standing Works { get; } = new(true, 0, 0);

    /// <summary>Runs with fewer severe losses, then with fewer cosmetic ones (rule R14).</summary>
    public int CompareTo(Standing other)
    {
        var result = Runs.CompareTo(other.Runs);
        if (result == 0)
            result = other.Severe.CompareTo(Severe);
        return result != 0 ? result : other.Cosmetic.CompareTo(Cosmetic);
    }

    /// <summary>
    /// True where this runs wherever the other does and has, for each strength, no more losses at it or worse: the order that
    /// needs no weights (DESIGN section 5).
    /// </summary>
    /// <example>One severe loss and two severe losses: the first is no worse. One severe and three cosmetic losses against two
    /// severe: neither is, although rule R14 prefers the first.</example>
    public bool IsNoWorseThan(Standing other) =>
        !other.Runs || (Runs && Severe <= other.Severe && Severe + Cosmetic <= other.Severe + other.Cosmetic);

    /// <summary>True where the first is the better by rule R14.</summary>
    public static bool operator >(Standing one, Standing other) => one.CompareTo(other) > 0;

    /// <summary>True where the second is the better by rule R14.</summary>
    public static bool operator <(Standing one, Standing other) => one.CompareTo(other) < 0;

    /// <summary>True where the second is not better by rule R14.</summary>
    public static bool operator >=(Standing one, Standing other) => one.CompareTo(other) >= 0;

    /// <summary>True where the first is not better by rule R14.</summary>
    public static bool operator <=(Standing one, Standing other) => one.CompareTo(other) <= 0;
}
