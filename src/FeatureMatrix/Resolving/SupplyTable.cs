using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// What card, driver and operating system supply under an API (rules R1 to R3). Answers are kept, so that each question
/// is weighed once. May be asked from several threads at once; they take turns.
/// </summary>
public sealed class SupplyTable
{
    private readonly Dictionary<(Feature Feature, object? Anchor), List<(int Place, SupplyFact Fact)>> _facts = [];
    private readonly Dictionary<(Capability, Card, Driver, Os, Feature), Answer> _answers = [];
    private readonly Dictionary<(Capability, Feature), Answer> _statedHere = [];
    private readonly Dictionary<(Feature, Feature), List<SupplyFact>> _coveringHere = [];
    private readonly IReadOnlyList<Feature> _features;
    private readonly Implications _implications;
    private readonly Lock _turn = new();
    private Setup? _here;

    /// <summary>Indexes the facts of a collection.</summary>
    public SupplyTable(Catalog catalog)
    {
        for (var place = 0; place < catalog.Facts.Count; place++)
        {
            var fact = catalog.Facts[place];
            var key = (fact.Capability.Feature, Anchor(fact.Scope));
            if (!_facts.TryGetValue(key, out var facts))
                _facts[key] = facts = [];
            facts.Add((place, fact));
        }

        _features = catalog.Features;
        _implications = new Implications(catalog.Features);
    }

    /// <summary>The feature with this id; null where the vocabulary has none.</summary>
    public Feature? Feature(string id) => _features.FirstOrDefault(feature => feature.Id == id);

    /// <summary>What implies what.</summary>
    public Implications Implications => _implications;

    /// <summary>The supply of one capability on one setup under one API.</summary>
    public Answer Ask(Capability capability, Setup setup, Feature api)
    {
        var key = (capability, setup.Card, setup.Driver, setup.Os, api);
        lock (_turn)
        {
            if (!_answers.TryGetValue(key, out var answer))
                _answers[key] = answer = Capped(_implications.Apply(capability, Stated(capability, setup, api), other => Stated(other, setup, api)), setup);
            return answer;
        }
    }

    /// <summary>Forgets the answers so far, for who goes through many setups and comes back to none.</summary>
    internal void Forget() => _answers.Clear();

    /// <summary>What the facts state, before implications. Kept for the setup that was asked about last: the levels of a ladder ask about each other.</summary>
    private Answer Stated(Capability capability, Setup setup, Feature api)
    {
        if (!ReferenceEquals(_here, setup))
        {
            _statedHere.Clear();
            _coveringHere.Clear();
            _here = setup;
        }

        if (!_statedHere.TryGetValue((capability, api), out var stated))
            _statedHere[(capability, api)] = stated = Weighed(capability, setup, api);
        return stated;
    }

    private Answer Weighed(Capability capability, Setup setup, Feature api)
    {
        if (!_coveringHere.TryGetValue((capability.Feature, api), out var covering))
            _coveringHere[(capability.Feature, api)] = covering = Covering(capability.Feature, setup, api);
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
        _implications.TiedTo(capability).Any(related => Anchored(related.Feature, setup.Card).Any(one =>
            one.Fact.Scope.Covers(setup.Card, setup.Driver, setup.Os, api) && one.Fact.ClaimFor(related) != Support.Unknown));

    /// <summary>
    /// What a scope hangs on: the narrowest of card, chip and driver branch that it names; null for none. Only facts that hang on the setup's
    /// own can cover it, so that the others need not be looked at.
    /// </summary>
    private static object? Anchor(Scope scope) => (object?)scope.Card ?? (object?)scope.Chip ?? scope.Drivers?.Branch;

    private List<(int Place, SupplyFact Fact)> Anchored(Feature feature, object? anchor) => _facts.GetValueOrDefault((feature, anchor)) ?? [];

    /// <summary>The facts about a feature that cover a setup, in the order of the collection.</summary>
    private List<SupplyFact> Covering(Feature feature, Setup setup, Feature api)
    {
        var found = new List<(int Place, SupplyFact Fact)>();
        foreach (var anchor in new object?[] { setup.Card, setup.Card.Chip, setup.Driver.Branch, null })
            found.AddRange(Anchored(feature, anchor).Where(one => one.Fact.Scope.Covers(setup.Card, setup.Driver, setup.Os, api)));
        return found.OrderBy(one => one.Place).Select(one => one.Fact).ToList();
    }

    /// <summary>A forced driver's answers show no grade above inferred (rule R9).</summary>
    private static Answer Capped(Answer answer, Setup setup) =>
        setup.Install == Install.Forced ? answer.AtMost(Grade.Inferred) : answer;
}
