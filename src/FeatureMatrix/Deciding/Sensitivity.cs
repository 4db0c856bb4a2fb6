using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>Something the user set, on which the score rests.</summary>
public abstract record Parameter
{
    private Parameter()
    {
    }

    /// <summary>The weight of one title, from 0.</summary>
    public sealed record WeightOf(Title Title) : Parameter;

    /// <summary>What is left after a severe loss, 0 to 1.</summary>
    public sealed record SevereWorth : Parameter;

    /// <summary>What is left after a cosmetic loss, 0 to 1.</summary>
    public sealed record CosmeticWorth : Parameter;
}

/// <summary>A value just beyond which the score says something else.</summary>
/// <param name="Parameter">What would have to change, everything else staying as it is.</param>
/// <param name="Current">Its value now.</param>
/// <param name="Value">Where it flips.</param>
/// <param name="Upwards">True where it has to rise, false where it has to fall; both may start at the current value.</param>
/// <param name="Now">What the score says now, and up to the value.</param>
/// <param name="Beyond">What it says just beyond.</param>
public sealed record Flip(Parameter Parameter, decimal Current, decimal Value, bool Upwards, Winner Now, Winner Beyond);

/// <summary>A title whose being a must-have, or not being one, makes the winner.</summary>
/// <param name="Entry">The title as it stands in the library.</param>
/// <param name="Beyond">Who wins once it is no must-have, or, where it is none now, once it is one that tolerates cosmetic losses.</param>
public sealed record MustHaveFlip(LibraryEntry Entry, Winner Beyond);

/// <summary>
/// Where weights and loss worths flip the score. The ends of the difference interval are piecewise polynomial in each of them: a
/// sum over groups of the least (or greatest) of the branches' polynomials, so that the values are found, not searched for.
/// </summary>
public static class Sensitivity
{
    private const decimal HighestWeight = 1_000_000;

    /// <summary>Values nearer to each other than this are one value found twice.</summary>
    private const decimal Resolution = 0.000_000_000_001m;

    /// <summary>The nearest flip downwards and upwards for every parameter that has one.</summary>
    public static IReadOnlyList<Flip> Of(CardComparison comparison)
    {
        if (comparison.Ground == Ground.MustHaves)
            return [];
        var flips = new List<Flip>();
        var (low, high) = (new Ends(comparison, best: false), new Ends(comparison, best: true));
        foreach (var title in comparison.Titles.Where(title => !title.IsEqual))
            flips.AddRange(Flips(low, high, new Parameter.WeightOf(title.Entry.Title), (decimal)title.Entry.Weight, HighestWeight));
        flips.AddRange(Flips(low, high, new Parameter.SevereWorth(), comparison.Scale.Severe, 1));
        flips.AddRange(Flips(low, high, new Parameter.CosmeticWorth(), comparison.Scale.Cosmetic, 1));
        return flips;
    }

    /// <summary>The must-haves without which somebody else wins, then the titles that would make somebody else win as must-haves; in the order of the library.</summary>
    public static IReadOnlyList<MustHaveFlip> OfMustHaves(CardComparison comparison)
    {
        return comparison.Titles
            .Select(title => (title, entry: title.Entry with { MustHaveTolerance = title.Entry.IsMustHave ? null : Strength.Cosmetic }))
            .Where(pair => MayMiss(pair.title.First) || MayMiss(pair.title.Second))
            .Select(pair => new MustHaveFlip(pair.title.Entry, comparison.With(pair.entry).Winner))
            .Where(flip => flip.Beyond != comparison.Winner)
            .OrderByDescending(flip => flip.Entry.IsMustHave).ToList();

        bool MayMiss(Stake stake) =>
            (stake with { Entry = stake.Entry with { MustHaveTolerance = stake.Entry.MustHaveTolerance ?? Strength.Cosmetic } }).CoverageUnder(comparison.Policy) != Coverage.Covered;
    }

    /// <summary>One end of the difference. A title's weight has a say in the groups of its stakes alone; the others keep their sum.</summary>
    private sealed class Ends
    {
        private readonly CardComparison _comparison;
        private readonly bool _best;
        private readonly ILookup<Title, (SharedGroup Group, decimal End)> _byTitle;
        private readonly decimal _all;

        public Ends(CardComparison comparison, bool best)
        {
            (_comparison, _best) = (comparison, best);
            var ends = comparison.Groups.Select(group => (Group: group, End: Curve.EndOf(group, comparison.Scale, best))).ToList();
            _all = ends.Sum(one => one.End);
            _byTitle = ends.SelectMany(one => one.Group.Stakes.Select(stake => stake.Entry.Title).Distinct().Select(title => (title, one)))
                .ToLookup(pair => pair.title, pair => pair.one);
        }

        public Curve Under(Parameter parameter)
        {
            if (parameter is not Parameter.WeightOf weight)
                return Curve.Of(_comparison.Groups, 0, parameter, _comparison.Scale, _best);
            var own = _byTitle[weight.Title];
            return Curve.Of(own.Select(one => one.Group), _all - own.Sum(one => one.End), parameter, _comparison.Scale, _best);
        }
    }

    /// <summary>In order, one of those that differ by rounding alone; the current value is always among them.</summary>
    private static List<decimal> Apart(IEnumerable<decimal> values, decimal current)
    {
        var apart = new List<decimal>();
        foreach (var value in values.Where(value => Math.Abs(value - current) > Resolution).Append(current).Order())
        {
            if (value == current || apart.Count == 0 || value - apart[^1] > Resolution)
                apart.Add(value);
        }

        return apart;
    }

    private static IEnumerable<Flip> Flips(Ends lowEnds, Ends highEnds, Parameter parameter, decimal current, decimal highest)
    {
        var (low, high) = (lowEnds.Under(parameter), highEnds.Under(parameter));
        var candidates = Apart(low.Turns(0, highest).Concat(high.Turns(0, highest)).Append(0).Append(highest), current);
        var here = candidates.IndexOf(current);
        var now = At(current);
        for (var i = here; i + 1 < candidates.Count; i++)
        {
            var beyond = At((candidates[i] + candidates[i + 1]) / 2);
            if (beyond == now)
                continue;
            yield return new Flip(parameter, current, candidates[i], true, now, beyond);
            break;
        }

        for (var i = here; i > 0; i--)
        {
            var beyond = At((candidates[i] + candidates[i - 1]) / 2);
            if (beyond == now)
                continue;
            yield return new Flip(parameter, current, candidates[i], false, now, beyond);
            break;
        }

        Winner At(decimal value) => (Math.Sign(decimal.Round(low.At(value), 18)), Math.Sign(decimal.Round(high.At(value), 18))) switch
        {
            ( > 0, _) => Winner.First,
            (_, < 0) => Winner.Second,
            (0, 0) => Winner.Equal,
            _ => Winner.Undecided,
        };
    }
}
