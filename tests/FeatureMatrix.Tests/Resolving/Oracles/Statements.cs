using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Resolving.Oracles;

using Support = FeatureMatrix.Model.Support;

/// <summary>
/// What statements about one thing come to by R1. Null states: nobody said anything. Otherwise the states it may have, and
/// the statements that won or disagree.
/// </summary>
internal sealed record Weighed(IReadOnlyList<Support>? States, IReadOnlyList<Statement> Winners, bool HearsayOnly = false)
{
    public static Weighed Silent { get; } = new(null, []);
}

/// <summary>One claim: what it is about, what it says, how good it is.</summary>
internal sealed record Statement(Scope Scope, Support Claim, Grade Grade);

/// <summary>R1, written from DESIGN.</summary>
internal static class Statements
{
    private static readonly Support[] YesOrNo = [Support.No, Support.Yes];

    public static Weighed Weigh(IReadOnlyList<Statement> statements)
    {
        if (statements.Count == 0)
            return Weighed.Silent;
        var solid = statements.Where(statement => statement.Grade > Grade.Hearsay).ToList();
        var hearsay = Narrowest(statements).Where(statement => statement.Grade == Grade.Hearsay).ToList();
        if (solid.Count == 0)
            return new Weighed([.. hearsay.Select(h => h.Claim).Concat(YesOrNo).Distinct()], hearsay, true);

        // Facts with none narrower remain; among them the better grade wins; equal grades that disagree are a conflict.
        var remaining = Narrowest(solid);
        var best = remaining.Max(statement => statement.Grade);
        var winners = remaining.Where(statement => statement.Grade == best).ToList();

        // Hearsay never overrides a better-graded wider fact: where it disagrees it makes a conflict.
        var doubts = hearsay.Where(h => winners.Exists(winner => IsNarrower(h.Scope, winner.Scope)) && winners.Exists(winner => winner.Claim != h.Claim));
        List<Statement> voices = [.. winners, .. doubts];
        return new Weighed([.. voices.Select(voice => voice.Claim).Distinct()], voices);
    }

    /// <summary>Statements about a thing without scopes: runtimes, operating systems of a wrapper, forced installs.</summary>
    public static Weighed WeighUnscoped(IEnumerable<(Support Claim, Grade Grade)> claims) =>
        Weigh([.. claims.Select(claim => new Statement(Scope.Everything, claim.Claim, claim.Grade))]);

    private static List<Statement> Narrowest(IReadOnlyList<Statement> statements) =>
        [.. statements.Where(wide => !statements.Any(other => IsNarrower(other.Scope, wide.Scope)))];

    private static bool IsNarrower(Scope one, Scope other) => Within(one, other) && !Within(other, one);

    /// <summary>Every setup that the one covers is covered by the other.</summary>
    private static bool Within(Scope one, Scope other)
    {
        var chip = one.Card?.Chip ?? one.Chip;
        if (other.Chip is not null && chip != other.Chip)
            return false;
        if (other.Card is not null && one.Card != other.Card)
            return false;
        if (other.Api is not null && one.Api != other.Api)
            return false;
        if (other.Drivers is { } range)
        {
            if (one.Drivers is not { } inner || inner.Branch != range.Branch || inner.First < range.First || inner.Last > range.Last)
                return false;
        }

        return other.Os is null || one.Os == other.Os || (one.Os is null && RunsOnlyOn(one.Drivers, other.Os));
    }

    private static bool RunsOnlyOn(DriverRange? range, Os os) =>
        range is not null && range.Branch.Versions.Skip(range.First).Take(range.Last - range.First + 1)
            .All(driver => driver.Oses.Count == 1 && driver.Oses[0] == os);
}
