using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>
/// What a title's outcome is worth, 0 to 1 (DESIGN section 5): 0 if it does not run, else q^s · (1 − (1 − q)(1 − r^c)) for s
/// severe and c cosmetic losses. However many cosmetic losses there are, they cost less than one severe loss, so the worth
/// never contradicts the order of rule R14.
/// </summary>
/// <param name="Severe">q, what one severe loss leaves; more than 0, less than 1.</param>
/// <param name="Cosmetic">r, what one cosmetic loss leaves before the bound; more than 0, less than 1.</param>
public sealed record Worth(double Severe, double Cosmetic)
{
    /// <summary>The worths a policy states.</summary>
    public static Worth Of(Policy policy) => new(policy.SevereWorth, policy.CosmeticWorth);

    /// <summary>The worth of an outcome whose ungraded losses are taken for cosmetic: the most it can be.</summary>
    public double Most(Outcome outcome) => Value(outcome.Runs, outcome.Severe, outcome.Cosmetic + outcome.Ungraded);

    /// <summary>The worth of an outcome whose ungraded losses are taken for severe: the least it can be.</summary>
    public double Least(Outcome outcome) => Value(outcome.Runs, outcome.Severe + outcome.Ungraded, outcome.Cosmetic);

    /// <summary>The worth of a number of losses.</summary>
    public double Value(bool runs, int severe, int cosmetic) =>
        runs ? Math.Pow(Severe, severe) * (1 - ((1 - Severe) * (1 - Math.Pow(Cosmetic, cosmetic)))) : 0;
}
