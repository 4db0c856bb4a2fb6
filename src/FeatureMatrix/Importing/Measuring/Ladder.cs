using System.Globalization;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>Places a reported number on the ladder of a feature whose levels are numbers.</summary>
internal static class Ladder
{
    /// <summary>The highest step whose level is not above the amount; 0 where even the lowest is.</summary>
    public static int StepOf(Feature feature, double amount)
    {
        var step = 0;
        for (var i = 0; i < feature.Levels.Count; i++)
        {
            if (Number(feature.Levels[i]) is { } level && level <= amount)
                step = i + 1;
        }

        return step;
    }

    /// <summary>A whole amount: exactly so much and no more.</summary>
    public static Claim UpTo(Feature feature, double amount, string sign) => Claim.UpTo(StepOf(feature, amount), sign);

    /// <summary>At least so much; silent where even the lowest level is more.</summary>
    public static Claim AtLeast(Feature feature, double amount, string sign) =>
        StepOf(feature, amount) is > 0 and var step ? Claim.AtLeast(feature, step, sign) : Claim.Silent(feature);

    /// <summary>
    /// Without the thing itself: a ladder that counts from one still has its first step, since drawing takes one texture;
    /// any other has none.
    /// </summary>
    public static Claim Without(Feature feature, string sign) =>
        feature.HasLevels && feature.Levels[0] == "1" ? Claim.UpTo(1, sign) : Claim.Lacks(sign);

    private static double? Number(string level) =>
        double.TryParse(level, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : null;
}
