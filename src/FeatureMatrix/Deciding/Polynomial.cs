namespace FeatureMatrix.Deciding;

/// <summary>A polynomial in one variable, lowest power first.</summary>
internal sealed class Polynomial(IReadOnlyList<decimal> coefficients)
{
    private const int Halvings = 110;
    private readonly decimal[] _coefficients = Trimmed(coefficients);

    /// <summary>The highest power; 0 for constants.</summary>
    public int Degree => Math.Max(0, _coefficients.Length - 1);

    /// <summary>Adds two.</summary>
    public static Polynomial operator +(Polynomial one, Polynomial other) => Combine(one, other, 1);

    /// <summary>Subtracts the second from the first.</summary>
    public static Polynomial operator -(Polynomial one, Polynomial other) => Combine(one, other, -1);

    /// <summary>The value at a point (Horner's scheme).</summary>
    public decimal At(decimal x)
    {
        var value = 0m;
        for (var i = _coefficients.Length - 1; i >= 0; i--)
            value = (value * x) + _coefficients[i];
        return value;
    }

    /// <summary>
    /// Where it is zero between two points, ends included, in order. Between two zeros of the derivative there is at most one,
    /// found by halving; of degree one it is exact.
    /// </summary>
    public IReadOnlyList<decimal> Roots(decimal low, decimal high)
    {
        if (Degree == 0)
            return [];
        if (Degree == 1)
        {
            if (Math.Abs(_coefficients[0]) > Math.Abs(_coefficients[1]) * Math.Max(Math.Abs(low), Math.Abs(high)))
                return [];
            var root = -_coefficients[0] / _coefficients[1];
            return root >= low && root <= high ? [root] : [];
        }

        var turns = Derivative().Roots(low, high).Prepend(low).Append(high).Distinct().ToList();
        var roots = new List<decimal>();
        for (var i = 0; i + 1 < turns.Count; i++)
        {
            if (Halve(turns[i], turns[i + 1]) is { } root && (roots.Count == 0 || roots[^1] != root))
                roots.Add(root);
        }

        return roots;
    }

    private decimal? Halve(decimal low, decimal high)
    {
        var atLow = Math.Sign(At(low));
        var atHigh = Math.Sign(At(high));
        if (atLow == 0)
            return low;
        if (atHigh == 0)
            return high;
        if (atLow == atHigh)
            return null;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            var sign = Math.Sign(At(middle));
            if (sign == 0)
                return middle;
            if (sign == atLow)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }

    private Polynomial Derivative() => new(_coefficients.Skip(1).Select((coefficient, i) => coefficient * (i + 1)).ToList());

    private static Polynomial Combine(Polynomial one, Polynomial other, int sign)
    {
        var sum = new decimal[Math.Max(one._coefficients.Length, other._coefficients.Length)];
        for (var i = 0; i < sum.Length; i++)
        {
            sum[i] = (i < one._coefficients.Length ? one._coefficients[i] : 0)
                + (sign * (i < other._coefficients.Length ? other._coefficients[i] : 0));
        }

        return new Polynomial(sum);
    }

    private static decimal[] Trimmed(IReadOnlyList<decimal> coefficients)
    {
        var length = coefficients.Count;
        while (length > 0 && decimal.Round(coefficients[length - 1], 20) == 0)
            length--;
        return coefficients.Take(length).ToArray();
    }
}
