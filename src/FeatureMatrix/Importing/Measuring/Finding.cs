using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>All that was read about one feature.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="Claim">What stands.</param>
/// <param name="Disputed">The lowest and highest step that one report claims and another denies; null for none.</param>
internal sealed record Finding(Feature Feature, Claim Claim, (int First, int Last)? Disputed)
{
    public static Finding Of(Feature feature, IReadOnlyList<Claim> claims)
    {
        var (claim, disputed) = Claim.Together(feature, claims);
        return new(feature, claim, disputed);
    }

    /// <summary>
    /// The findings as statements and disputes. A feature that is claimed while one that it implies is denied is in
    /// dispute with itself and states nothing (rule R2). Worked example: drivers set the bit for palettes with alpha
    /// and accept no palette format.
    /// </summary>
    public static MeasuredSupply Supply(
        Feature api, IReadOnlyList<Finding> findings, Support yes, IEnumerable<string> unmapped, SoftwareSign? software)
    {
        var byFeature = findings.ToDictionary(f => f.Feature);
        var statements = new List<MeasuredStatement>();
        var disputes = new List<MeasuredDispute>();
        foreach (var finding in findings)
        {
            var (feature, claim, disputed) = finding;
            if (disputed is var (first, last))
                disputes.Add(new(feature, first, last, claim.Signs));
            if (claim.Yes > 0 && finding.DeniedBy(byFeature) is { } denial)
                disputes.Add(new(feature, 1, claim.Yes, new(claim.Signs.Concat(denial.Signs))));
            else
                statements.AddRange(finding.Statements(api, yes));
        }

        return new(new(statements), new(disputes), new(unmapped), software);
    }

    /// <summary>The claim that denies something this feature cannot be without; null if none does.</summary>
    private Claim? DeniedBy(Dictionary<Feature, Finding> findings) => findings.Values
        .FirstOrDefault(f => f.Feature != Feature
            && f.Claim.No <= f.Feature.Steps
            && Feature.At(1).Implies(f.Feature.At(f.Claim.No)))?.Claim;

    /// <summary>The fewest statements that say what the claim says.</summary>
    private IEnumerable<MeasuredStatement> Statements(Feature api, Support yes)
    {
        var saysAll = Claim.Yes > 0 && (Claim.Yes == Feature.Steps || Claim.No == Claim.Yes + 1);
        if (Claim.Yes > 0)
        {
            var reach = !Feature.HasLevels ? Reach.At : saysAll ? Reach.UpTo : Reach.AtLeast;
            yield return new(api, Feature.At(Claim.Yes), reach, yes, Claim.Signs);
        }

        if (Claim.No <= Feature.Steps && !saysAll)
            yield return new(api, Feature.At(Claim.No), Reach.At, Support.No, Claim.Signs);
    }
}
