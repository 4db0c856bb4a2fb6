using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>
/// What one report says about the steps of one feature: yes up to a step, no from a step on, silent between. A flag has
/// one step.
/// </summary>
/// <param name="Yes">The highest step claimed; 0 for none.</param>
/// <param name="No">The lowest step denied; one more than the feature has for none.</param>
/// <param name="Signs">The public names that say so.</param>
internal sealed record Claim(int Yes, int No, EquatableList<string> Signs)
{
    public static Claim Silent(Feature feature) => new(0, feature.Steps + 1, new([]));

    /// <summary>Has it whole: a flag, or every step of the ladder.</summary>
    public static Claim Has(Feature feature, string sign) => new(feature.Steps, feature.Steps + 1, new([sign]));

    public static Claim Lacks(string sign) => new(0, 1, new([sign]));

    /// <summary>This step and those below; silent about those above.</summary>
    public static Claim AtLeast(Feature feature, int step, string sign) => new(step, feature.Steps + 1, new([sign]));

    /// <summary>This step and those below; none above.</summary>
    public static Claim UpTo(int step, string sign) => new(step, step + 1, new([sign]));

    /// <summary>
    /// Two signs of which either is enough: yes where one says yes, no only where both do. Worked example: linear
    /// filtering of Direct3D 7 shows in an old bit or in a newer one; clear and set together are a yes.
    /// </summary>
    public Claim Or(Claim other) => (other.Yes > Yes, Yes > other.Yes) switch
    {
        (true, _) => new(other.Yes, Math.Max(No, other.No), other.Signs),
        (_, true) => new(Yes, Math.Max(No, other.No), Signs),
        _ => new(Yes, Math.Max(No, other.No), new(Signs.Concat(other.Signs))),
    };

    /// <summary>
    /// Reports of the same thing as one: what any of them says, without the steps that one claims and another denies.
    /// Worked example: up to 512 by one and up to 1024 by another is at least 512, not 2048, and 1024 in dispute.
    /// </summary>
    /// <returns>The claim, and the lowest and highest step in dispute; null for none.</returns>
    public static (Claim Claim, (int First, int Last)? Disputed) Together(Feature feature, IReadOnlyList<Claim> claims)
    {
        var yes = claims.Select(c => c.Yes).DefaultIfEmpty(0).Max();
        var no = claims.Select(c => c.No).DefaultIfEmpty(feature.Steps + 1).Min();
        var signs = new EquatableList<string>(claims.SelectMany(c => c.Signs).Distinct());
        return no > yes
            ? (new(yes, no, signs), null)
            : (new(no - 1, yes + 1, signs), (no, yes));
    }
}
