using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// What card, driver and operating system supply under an API (rules R1 to R3). Answers are kept, so that each question
/// is weighed once. Not safe for use from several threads at a time.
/// </summary>
public sealed class SupplyTable
{
    private readonly Dictionary<Feature, List<SupplyFact>> _factsByFeature = [];
    private readonly Dictionary<(Capability, Card, Driver, Os, Feature), Answer> _answers = [];
    private readonly IReadOnlyList<Feature> _features;
    private readonly Implications _implications;

    /// <summary>Indexes the facts of a collection.</summary>
    public SupplyTable(Catalog catalog)
    {
        foreach (var fact in catalog.Facts)
        {
            if (!_factsByFeature.TryGetValue(fact.Capability.Feature, out var facts))
                _factsByFeature[fact.Capability.Feature] = facts = [];
            facts.Add(fact);
        }

        _features = catalog.Features;
        _implications = new Implications(catalog.Features);
    }

    /// <summary>The features with these ids, as far as the vocabulary has them.</summary>
    public IEnumerable<Feature> Features(params string[] ids) => _features.Where(feature => ids.Contains(feature.Id));

    /// <summary>What implies what.</summary>
    public Implications Implications => _implications;

    /// <summary>The supply of one capability on one setup under one API.</summary>
    public Answer Ask(Capability capability, Setup setup, Feature api)
    {
        var key = (capability, setup.Card, setup.Driver, setup.Os, api);
        if (!_answers.TryGetValue(key, out var answer))
            _answers[key] = answer = Capped(_implications.Apply(capability, Stated(capability, setup, api), other => Stated(other, setup, api)), setup);
        return answer;
    }

    /// <summary>What the facts state, before implications.</summary>
    private Answer Stated(Capability capability, Setup setup, Feature api)
    {
        var covering = _factsByFeature.TryGetValue(capability.Feature, out var all)
            ? all.Where(fact => fact.Scope.Covers(setup.Card, setup.Driver, setup.Os, api)).ToList()
            : [];
        var byDriver = FactWeighing.Weigh(covering.Where(fact => fact.Scope.NamesDriver).ToList(), capability);
        var byChip = FactWeighing.Weigh(covering.Where(fact => !fact.Scope.NamesDriver).ToList(), capability);
        var open = new UnknownFact.Supply(
            capability, setup.Card.Chip, CardSpeaks(capability, setup, api) ? setup.Card : null, setup.Driver, setup.Os, api);
        return ChipAndDriver.Combine(capability, byChip, byDriver, open);
    }

    /// <summary>
    /// True where a fact about this very card speaks of the capability, or of one that implications tie to it: then the unknown is
    /// the card's own, because what is left open for it may differ from what is left open for the chip's other cards.
    /// </summary>
    private bool CardSpeaks(Capability capability, Setup setup, Feature api) =>
        _implications.TiedTo(capability).Any(related =>
            _factsByFeature.TryGetValue(related.Feature, out var facts) && facts.Exists(fact =>
                fact.Scope.Card == setup.Card && fact.Scope.Covers(setup.Card, setup.Driver, setup.Os, api) && fact.ClaimFor(related) != Support.Unknown));

    /// <summary>A forced driver's answers show no grade above inferred (rule R9).</summary>
    private static Answer Capped(Answer answer, Setup setup) =>
        setup.Install == Install.Forced && answer.Grade > Grade.Inferred ? answer with { Grade = Grade.Inferred } : answer;
}
