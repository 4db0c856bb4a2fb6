using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

using Support = FeatureMatrix.Model.Support;

/// <summary>R1 to R3 and R8's supplied set, written from DESIGN: what a setup or a wrapper version supplies.</summary>
internal sealed class SupplyOracle(Catalog catalog)
{
    private readonly IReadOnlyList<Capability> _capabilities =
        [.. catalog.Features.SelectMany(feature => Enumerable.Range(1, feature.Steps).Select(feature.At))];

    private readonly Dictionary<(Card, Driver, Os, Feature), Dictionary<Capability, IReadOnlyList<Support>>> _stated = [];

    /// <summary>What card, driver and operating system supply of a capability at an API.</summary>
    public Question Ask(Capability capability, Setup setup, Feature api)
    {
        var (card, driver, os) = (setup.Card, setup.Driver, setup.Os);
        if (!_stated.TryGetValue((card, driver, os, api), out var stated))
        {
            // Silence completes to yes or no.
            stated = _capabilities.ToDictionary(c => c, c => States(c, card, driver, os, api) ?? [Support.No, Support.Yes]);
            _stated.Add((card, driver, os, api), stated);
        }

        // A card fact about it, or about anything that implications tie to it, makes the unknown the card's own.
        var tied = Tied(capability);
        var named = catalog.Facts.Any(fact =>
            fact.Scope.Card == card && fact.Scope.Covers(card, driver, os, api) && tied.Any(other => fact.ClaimFor(other) != Support.Unknown));
        return Question.Of(
            new UnknownFact.Supply(capability, card.Chip, named ? card : null, driver, os, api), Narrowed(capability, stated[capability], other => stated[other]));
    }

    /// <summary>
    /// What a renderer meets of a capability through a wrapper (R8): supplied, else passed on, else missing from a complete
    /// list (unless what is supplied implies it), else unknown.
    /// </summary>
    public Question AskWrapped(Capability capability, Setup setup, WrapperVersion version)
    {
        if (version.Passes.Contains(capability.Feature) && Supplied(capability, version) is null)
            return Ask(capability, setup, version.Target.Feature);

        // Implications hold within what one supplier has: the wrapper's own set here, what it hands through in Ask.
        var stated = Stated(capability);
        return stated.Key is null ? stated : Question.Of(stated.Key, Narrowed(capability, stated.States, other => Stated(other).States));

        Question Stated(Capability asked)
        {
            var key = new UnknownFact.WrapperSupply(asked, version);
            if (Supplied(asked, version) is { } supplied)
                return Question.Of(key, supplied);
            var implied = _capabilities.Any(other => other != asked && other.Implies(asked) && Supplied(other, version) is { } states && !states.Contains(Support.No));
            return version.IsComplete && !version.Passes.Contains(asked.Feature) ? Question.Answered(implied) : Question.YesOrNo(key);
        }
    }

    private HashSet<Capability> Tied(Capability capability)
    {
        var tied = new HashSet<Capability> { capability };
        int before;
        do
        {
            before = tied.Count;
            tied.UnionWith(_capabilities.Where(one => tied.Any(other => one.Implies(other) || other.Implies(one))).ToList());
        }
        while (tied.Count > before);
        return tied;
    }

    private static IReadOnlyList<Support>? Supplied(Capability capability, WrapperVersion version) => Statements.WeighUnscoped(
        version.Supplies.Select(fact => (fact.ClaimFor(capability), fact.Evidence.Grade)).Where(claim => claim.Item1 != Support.Unknown)).States;

    /// <summary>
    /// Levels and implications exclude the impossible: what something present implies is not missing, and what implies
    /// something missing is. Where statements contradict each other nothing is excluded.
    /// </summary>
    private IReadOnlyList<Support> Narrowed(Capability capability, IReadOnlyList<Support> states, Func<Capability, IReadOnlyList<Support>> stated)
    {
        if (states.Count == 1)
            return states;
        var present = _capabilities.Any(other => other != capability && other.Implies(capability) && !stated(other).Contains(Support.No));
        var missing = _capabilities.Any(other => other != capability && capability.Implies(other) && stated(other) is [Support.No]);
        if (present == missing)
            return states;
        var left = states.Where(state => (state == Support.No) == missing).ToList();
        return left.Count == 0 ? states : left;
    }

    /// <summary>What a driver's claim comes to over what the chip may have (R3).</summary>
    private static IReadOnlyList<Support> Over(Support driver, Weighed chip, bool isApi, bool namesHardware)
    {
        if (driver != Support.Yes)
            return [driver];
        if (!isApi && !namesHardware)
            return chip.States ?? [Support.Yes, Support.No];
        return chip.States is null || chip.HearsayOnly ? [Support.Yes] : [.. chip.States.Select(state => state == Support.No ? Support.Emulated : Support.Yes)];
    }

    /// <summary>R1 for facts with and without a driver apart, then R3. Null where all are silent.</summary>
    private IReadOnlyList<Support>? States(Capability capability, Card card, Driver driver, Os os, Feature api)
    {
        var facts = catalog.Facts.Where(fact => fact.Scope.Covers(card, driver, os, api) && fact.ClaimFor(capability) != Support.Unknown)
            .Select(fact => new Statement(fact.Scope, fact.ClaimFor(capability), fact.Evidence.Grade)).ToList();
        var chip = Statements.Weigh([.. facts.Where(fact => fact.Scope.Drivers is null)]);
        var drivers = Statements.Weigh([.. facts.Where(fact => fact.Scope.Drivers is not null)]);
        if (drivers.States is null)
            return chip.States;
        var namesHardware = drivers.Winners.Any(winner => winner.Claim == Support.Yes && (winner.Scope.Chip is not null || winner.Scope.Card is not null));
        var claims = drivers.HearsayOnly ? drivers.Winners.Select(winner => winner.Claim).Distinct() : drivers.States;
        var states = claims.SelectMany(claim => Over(claim, chip, capability.Feature.IsApi, namesHardware));

        // Hearsay overrides nothing: the chip's own answer stays possible.
        return [.. (drivers.HearsayOnly ? states.Concat(chip.States ?? [Support.No, Support.Yes]) : states).Distinct()];
    }
}
