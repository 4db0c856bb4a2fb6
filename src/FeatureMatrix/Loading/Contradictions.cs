using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>
/// Finds statements that one source cannot mean: the same scope, grade and source, and yet a level without those below
/// it, a feature without what it includes, or two answers to one question (rule R2). Two <em>sources</em> that disagree are no
/// fault: the resolver reports them as a conflict (rule R1).
/// </summary>
internal static class Contradictions
{
    public static void Report(IReadOnlyList<SupplyFact> facts, FaultList faults)
    {
        foreach (var said in facts.GroupBy(fact => (fact.Scope, fact.Evidence.Grade, fact.Evidence.Source)))
        {
            var list = said.ToList();
            if (list.Count == 1)
                continue;
            var denials = list.Where(Denies).ToList();
            foreach (var claim in list)
            {
                foreach (var other in denials)
                {
                    if (Denied(claim, other) is { } denied)
                        faults.Add(FaultTexts.DeniedBelow(claim.Evidence.Origin, claim.Capability, denied, other.Evidence.Origin));
                }
            }

            foreach (var same in list.GroupBy(fact => fact.Capability))
            {
                var first = same.First();
                foreach (var again in same.Where(fact => fact.Support != first.Support))
                    faults.Add(FaultTexts.SaidBothWays(again.Evidence.Origin, again.Capability, first.Evidence.Origin));
            }
        }
    }

    private static bool Denies(SupplyFact fact) => fact.Support == Support.No || fact.Reach == Reach.UpTo;

    /// <summary>What the claim includes and the denial denies; null where the two agree.</summary>
    private static Capability? Denied(SupplyFact claim, SupplyFact denial)
    {
        if (claim.Support is not (Support.Yes or Support.Emulated))
            return null;
        foreach (var included in Included(claim.Capability))
        {
            if (denial.ClaimFor(included) == Support.No)
                return included;
        }

        return null;
    }

    /// <summary>The levels below, and what the feature implies, level by level from the lowest; not the capability itself.</summary>
    private static IEnumerable<Capability> Included(Capability capability)
    {
        for (var step = 1; step < capability.Step; step++)
            yield return capability.Feature.At(step);
        foreach (var implied in capability.Feature.Implies)
        {
            foreach (var further in Included(implied))
                yield return further;
            yield return implied;
        }
    }
}
