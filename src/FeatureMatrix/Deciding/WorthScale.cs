using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>
/// What a standing is worth, 0 to 1: q^s · (1 − (1 − q)(1 − r^c)) for s severe and c cosmetic losses, 0 where the title does not
/// run (DESIGN section 5). However many cosmetic losses there are, they cost less than one more severe one, so that for q and r
/// above 0 and below 1 worth never contradicts rule R14.
/// </summary>
/// <param name="Severe">q: what is left after one severe loss, 0 to 1.</param>
/// <param name="Cosmetic">r: what is left after one cosmetic loss, before the bound, 0 to 1.</param>
/// <remarks>Decimal, so that the sums that decide between "better" and "equal" carry no binary rounding.</remarks>
public sealed record WorthScale(decimal Severe, decimal Cosmetic)
{
    /// <summary>The scale of a policy.</summary>
    public static WorthScale Of(Policy policy) => new((decimal)policy.SevereWorth, (decimal)policy.CosmeticWorth);

    /// <summary>The worth of a standing.</summary>
    public decimal Of(Standing standing)
    {
        if (!standing.Runs)
            return 0;
        var keptOfCosmetic = 1 - ((1 - Severe) * (1 - Power(Cosmetic, standing.Cosmetic)));
        return Power(Severe, standing.Severe) * keptOfCosmetic;
    }

    private static decimal Power(decimal number, int times)
    {
        var product = 1m;
        for (var i = 0; i < times; i++)
            product *= number;
        return product;
    }
}
