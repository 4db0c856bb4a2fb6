namespace FeatureMatrix.Deciding;

/// <summary>
/// One end of the difference interval as a function of one parameter: a sum of parts, each the least or the greatest of several
/// polynomials.
/// </summary>
internal sealed class Curve
{
    private readonly List<List<Polynomial>> _parts;
    private readonly bool _greatest;

    private Curve(List<List<Polynomial>> parts, bool greatest)
    {
        _parts = parts;
        _greatest = greatest;
    }

    /// <summary>The curve of some groups, where the rest comes to a fixed sum.</summary>
    /// <param name="groups">The groups that the parameter has a say in.</param>
    /// <param name="fixedPart">What all others come to at this end.</param>
    /// <param name="parameter">The parameter.</param>
    /// <param name="scale">What losses are worth.</param>
    /// <param name="best">True for the upper end of the difference, false for the lower one.</param>
    public static Curve Of(IEnumerable<SharedGroup> groups, decimal fixedPart, Parameter parameter, WorthScale scale, bool best)
    {
        var parts = groups.Select(group => group.Branches.Select(branch => Sum(group, branch, parameter, scale, best)).ToList()).ToList();
        var single = parts.Where(part => part.Count == 1).Aggregate(new Polynomial([fixedPart]), (sum, part) => sum + part[0]);
        return new Curve([.. parts.Where(part => part.Count > 1), [single]], best);
    }

    /// <summary>An end of what a group comes to with everything as it is.</summary>
    public static decimal EndOf(SharedGroup group, WorthScale scale, bool best)
    {
        var ends = group.Branches.Select(branch => group.Stakes.Select((stake, i) => Sign(stake) * stake.Weight * scale.Of(EndIn(stake, branch.Standings[i], best))).Sum());
        return best ? ends.Max() : ends.Min();
    }

    /// <summary>The value at a point.</summary>
    public decimal At(decimal x) => _parts.Sum(part => _greatest ? part.Max(polynomial => polynomial.At(x)) : part.Min(polynomial => polynomial.At(x)));

    /// <summary>Every point where it may change its sign or its polynomial.</summary>
    public IReadOnlyList<decimal> Turns(decimal low, decimal high)
    {
        var bends = _parts.SelectMany(part => part.SelectMany((one, i) => part.Skip(i + 1).SelectMany(other => (one - other).Roots(low, high))))
            .Append(low).Append(high).Distinct().Order().ToList();
        var turns = new List<decimal>(bends);
        for (var i = 0; i + 1 < bends.Count; i++)
        {
            var middle = (bends[i] + bends[i + 1]) / 2;
            var sum = _parts.Select(part => _greatest ? part.MaxBy(polynomial => polynomial.At(middle))! : part.MinBy(polynomial => polynomial.At(middle))!)
                .Aggregate((one, other) => one + other);
            turns.AddRange(sum.Roots(bends[i], bends[i + 1]));
        }

        return turns;
    }

    /// <summary>The end that independent stakes give in a branch: the first card's at one extreme, the second's at the other.</summary>
    private static Polynomial Sum(SharedGroup group, Branch branch, Parameter parameter, WorthScale scale, bool best)
    {
        var (sum, fixedPart) = (new Polynomial([]), 0m);
        for (var i = 0; i < group.Stakes.Count; i++)
        {
            var stake = group.Stakes[i];
            var standing = EndIn(stake, branch.Standings[i], best);
            if (parameter is Parameter.WeightOf weight && stake.Entry.Title != weight.Title)
                fixedPart += Sign(stake) * stake.Weight * scale.Of(standing);
            else if (stake.Side == Side.First)
                sum += Worth(stake, standing, parameter, scale);
            else
                sum -= Worth(stake, standing, parameter, scale);
        }

        return sum + new Polynomial([fixedPart]);
    }

    private static int Sign(Stake stake) => stake.Side == Side.First ? 1 : -1;

    private static Standing EndIn(Stake stake, IReadOnlyList<Standing> standings, bool best) => stake.Side == Side.First == best ? standings[^1] : standings[0];

    /// <summary>
    /// Weight × worth as a polynomial: with k = r^c, worth is k · q^s + (1 − k) · q^(s+1) in q, and q^(s+1) + q^s (1 − q) · r^c in r.
    /// </summary>
    private static Polynomial Worth(Stake stake, Standing standing, Parameter parameter, WorthScale scale)
    {
        if (!standing.Runs)
            return new Polynomial([]);
        switch (parameter)
        {
            case Parameter.WeightOf:
                return new Polynomial([0, scale.Of(standing)]);
            case Parameter.SevereWorth:
                var kept = Power(scale.Cosmetic, standing.Cosmetic);
                var inSevere = new decimal[standing.Severe + 2];
                inSevere[standing.Severe] = stake.Weight * kept;
                inSevere[standing.Severe + 1] = stake.Weight * (1 - kept);
                return new Polynomial(inSevere);
            case Parameter.CosmeticWorth:
                var severe = Power(scale.Severe, standing.Severe);
                var inCosmetic = new decimal[standing.Cosmetic + 1];
                inCosmetic[0] = stake.Weight * severe * scale.Severe;
                inCosmetic[standing.Cosmetic] += stake.Weight * severe * (1 - scale.Severe);
                return new Polynomial(inCosmetic);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static decimal Power(decimal number, int times)
    {
        var product = 1m;
        for (var i = 0; i < times; i++)
            product *= number;
        return product;
    }
}
