using System.Globalization;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Wording;

/// <summary>How scores, prices, winners and parameters read.</summary>
public static class DecisionWording
{
    /// <summary>A number with at most two decimals.</summary>
    public static string Number(decimal number) => decimal.Round(number, 2).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A number with as many decimals as it takes to tell it from another, two at least and six at most.</summary>
    public static string Apart(decimal number, decimal other)
    {
        var digits = 2;
        while (digits < 6 && number != other && decimal.Round(number, digits) == decimal.Round(other, digits))
            digits++;
        return decimal.Round(number, digits).ToString("0.######", CultureInfo.InvariantCulture);
    }

    /// <summary>An interval: one number where both ends are equal.</summary>
    public static string Interval(ScoreInterval interval) => Number(interval.Low) == Number(interval.High)
        ? Number(interval.Low)
        : $"{Number(interval.Low)} to {Number(interval.High)}";

    /// <summary>A difference, with its sign.</summary>
    public static string Difference(ScoreInterval interval)
    {
        return Number(interval.Low) == Number(interval.High) ? Signed(interval.Low) : $"{Signed(interval.Low)} to {Signed(interval.High)}";

        static string Signed(decimal number) => number > 0 ? "+" + Number(number) : Number(number);
    }

    /// <summary>A price or a range of them.</summary>
    public static string Price(PriceRange? price)
    {
        if (price is null)
            return "no price on record";
        return $"{Amount(price)}{(price.IsSold ? "" : " (asked)")}";
    }

    /// <summary>A price or a range of them, without how it was found.</summary>
    public static string Amount(PriceRange price)
    {
        var low = decimal.Round(price.Low, 0).ToString(CultureInfo.InvariantCulture);
        var high = decimal.Round(price.High, 0).ToString(CultureInfo.InvariantCulture);
        return low == high ? $"{low} {price.Currency}" : $"{low} to {high} {price.Currency}";
    }

    /// <summary>Who wins, by name.</summary>
    public static string Of(Winner winner, Card first, Card second) => winner switch
    {
        Winner.First => first.Name,
        Winner.Second => second.Name,
        Winner.Equal => "equal",
        Winner.Undecided => "undecided",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A parameter by name.</summary>
    public static string Of(Parameter parameter) => parameter switch
    {
        Parameter.WeightOf weight => $"weight of {weight.Title.Name}",
        Parameter.SevereWorth => "worth kept after a severe loss",
        Parameter.CosmeticWorth => "worth kept after a cosmetic loss",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What is known of a must-have.</summary>
    public static string Of(Coverage coverage) => coverage switch
    {
        Coverage.Covered => "covered",
        Coverage.Pending => "pending",
        Coverage.Missed => "missed",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The must-haves of a card in a few words.</summary>
    public static string MustHaves(IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> mustHaves)
    {
        if (mustHaves.Count == 0)
            return "none set";
        var parts = new List<string> { $"{mustHaves.Count(pair => pair.Coverage == Coverage.Covered)} of {mustHaves.Count} covered" };
        foreach (var coverage in (Coverage[])[Coverage.Missed, Coverage.Pending])
        {
            var names = mustHaves.Where(pair => pair.Coverage == coverage).Select(pair => pair.Entry.Title.Name).ToList();
            if (names.Count > 0)
                parts.Add($"{Of(coverage)}: {Names.List(names)}");
        }

        return string.Join("; ", parts);
    }

    /// <summary>What a card does without weights against another.</summary>
    public static string Of(Dominance dominance, Card first, Card second) => dominance switch
    {
        Dominance.None => "neither is better throughout",
        Dominance.Equal => "alike on every title",
        Dominance.First => $"{first.Name} is never worse and somewhere better",
        Dominance.FirstPerhaps => $"{first.Name} is never worse and perhaps somewhere better",
        Dominance.Second => $"{second.Name} is never worse and somewhere better",
        Dominance.SecondPerhaps => $"{second.Name} is never worse and perhaps somewhere better",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
