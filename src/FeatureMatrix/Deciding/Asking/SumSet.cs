using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding.Asking;

/// <summary>What some stakes come to in one completion: whether either side misses a must-have, and the difference of the scores.</summary>
/// <param name="Misses">1 where the first side misses one, 2 where the second does, 3 where both do.</param>
/// <param name="Value">First less second.</param>
internal readonly record struct Sum(int Misses, decimal Value)
{
    /// <summary>Nothing.</summary>
    public static Sum Zero { get; } = new(0, 0);

    /// <summary>Who wins where nothing else counts.</summary>
    public Winner Winner => Misses switch
    {
        1 => Winner.Second,
        2 => Winner.First,
        _ => Math.Sign(Value) switch { > 0 => Winner.First, < 0 => Winner.Second, _ => Winner.Equal },
    };

    /// <summary>Two parts together, rounded to what decimals carry without fault.</summary>
    public static Sum operator +(Sum one, Sum other) => new(one.Misses | other.Misses, decimal.Round(one.Value + other.Value, 18));

    /// <summary>What a stake comes to at a standing.</summary>
    public static Sum Of(Stake stake, Standing standing, WorthScale scale, Policy policy)
    {
        var worth = decimal.Round(stake.Weight * scale.Of(standing), 18);
        var misses = !stake.IsCoveredAt(standing, policy);
        return stake.Side == Side.First ? new Sum(misses ? 1 : 0, worth) : new Sum(misses ? 2 : 0, -worth);
    }
}

/// <summary>
/// Everything that independent stakes may come to: every sum where there are not too many, else an interval for each kind of
/// miss, which holds all of them and perhaps more.
/// </summary>
internal sealed class SumSet
{
    private const int MostSums = 20_000;
    private readonly decimal[][] _byMiss;

    private SumSet(decimal[][] byMiss, bool isExact) => (_byMiss, IsExact) = (byMiss, isExact);

    /// <summary>Nothing but zero.</summary>
    public static SumSet Zero { get; } = Of([Sum.Zero]);

    /// <summary>False where only the ends of each kind of miss are sure to be there.</summary>
    public bool IsExact { get; }

    /// <summary>These sums.</summary>
    public static SumSet Of(IEnumerable<Sum> sums)
    {
        var byMiss = sums.Distinct().ToLookup(sum => sum.Misses, sum => sum.Value);
        return new SumSet(Enumerable.Range(0, 4).Select(miss => byMiss[miss].Order().ToArray()).ToArray(), true);
    }

    /// <summary>Anything within a tally's intervals.</summary>
    public static SumSet Within(Tally tally) => new(
        Enumerable.Range(0, 4).Select(miss => tally.Where((miss & 1) != 0, (miss & 2) != 0) is { } interval ? new[] { interval.Low, interval.High }.Distinct().ToArray() : []).ToArray(), false);

    /// <summary>One of this and one of the other, in every way.</summary>
    public SumSet And(SumSet other)
    {
        var isExact = IsExact && other.IsExact;
        var count = (long)_byMiss.Sum(values => values.Length) * other._byMiss.Sum(values => values.Length);
        if (isExact && count <= MostSums * 20L)
        {
            var all = Of(Sums().SelectMany(one => other.Sums().Select(two => one + two)));
            if (all._byMiss.Sum(values => values.Length) <= MostSums)
                return all;
        }

        return OfEnds(Ends().SelectMany(one => other.Ends().Select(two => one + two)));
    }

    /// <summary>This set as if nothing but its ends were known.</summary>
    public SumSet EndsAlone() => OfEnds(Ends());

    private static SumSet OfEnds(IEnumerable<Sum> sums)
    {
        var ends = sums.ToLookup(sum => sum.Misses, sum => sum.Value);
        return new SumSet(Enumerable.Range(0, 4).Select(miss => ends[miss].Any() ? new[] { ends[miss].Min(), ends[miss].Max() }.Distinct().ToArray() : []).ToArray(), false);
    }

    /// <summary>True where some sum of this set, added to both, makes them different winners; where inexact, where one might.</summary>
    public bool Parts(Sum one, Sum other)
    {
        for (var miss = 0; miss < 4; miss++)
        {
            if (_byMiss[miss].Length > 0 && Parts(_byMiss[miss], one with { Misses = one.Misses | miss }, other with { Misses = other.Misses | miss }))
                return true;
        }

        return false;
    }

    private bool Parts(decimal[] values, Sum one, Sum other)
    {
        var (isOneFixed, isOtherFixed) = (one.Misses is 1 or 2, other.Misses is 1 or 2);
        if (isOneFixed && isOtherFixed)
            return one.Winner != other.Winner;
        if (isOneFixed || isOtherFixed)
        {
            var (settled, open) = isOneFixed ? (one, other) : (other, one);
            // Some value has to keep the open one from winning the same way.
            return settled.Winner == Winner.First ? open.Value + values[0] <= 0 : open.Value + values[^1] >= 0;
        }

        if (one.Value == other.Value)
            return false;
        var (low, high) = (-Math.Max(one.Value, other.Value), -Math.Min(one.Value, other.Value));
        if (!IsExact)
            return values[0] <= high && values[^1] >= low;
        var at = Array.BinarySearch(values, low);
        at = at < 0 ? ~at : at;
        return at < values.Length && values[at] <= high;
    }

    private IEnumerable<Sum> Sums() => _byMiss.SelectMany((values, miss) => values.Select(value => new Sum(miss, value)));

    private IEnumerable<Sum> Ends() => _byMiss.SelectMany((values, miss) => values.Length == 0 ? [] : new[] { values[0], values[^1] }.Select(value => new Sum(miss, value)));
}
