using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Chips.</summary>
internal sealed class ChipReader(Draft draft)
{
    public static Chip Build(Shelf<Chip>.Item item) => new()
    {
        Id = item.Id,
        Name = item.Fields.RequiredText("name"),
        Maker = item.Fields.Text("maker"),
        Year = item.Fields.Value("year", Quantities.Year),
        Generation = item.Fields.Text("generation"),
        Notes = item.Fields.Text("notes"),
    };

    /// <summary>
    /// The statements about all chips. A chip that is <c>like</c> another has the other's statements about every feature
    /// of which it says nothing itself.
    /// </summary>
    public IReadOnlyList<SupplyFact> Supply()
    {
        var items = draft.Chips.Made.ToDictionary(made => made.Value, made => made.Item);
        var own = items.ToDictionary(pair => pair.Key, pair => Own(pair.Key, pair.Value));
        var parents = items.ToDictionary(pair => pair.Key, pair => Parent(pair.Value));
        return [.. items.Keys.SelectMany(chip => All(chip, items, own, parents))];
    }

    private IReadOnlyList<SupplyFact> Own(Chip chip, Shelf<Chip>.Item item) => draft.Supply.Read(
        item.Fields.Entries("supply"), new Scope { Chip = chip }, null, Provenance.Of(item, draft));

    private Chip? Parent(Shelf<Chip>.Item item) =>
        item.Fields.Word("like") is { } word ? draft.Chips.Find(word, draft.Faults) : null;

    private List<SupplyFact> All(
        Chip chip, Dictionary<Chip, Shelf<Chip>.Item> items, Dictionary<Chip, IReadOnlyList<SupplyFact>> own,
        Dictionary<Chip, Chip?> parents)
    {
        var facts = own[chip].ToList();
        var line = new HashSet<Chip> { chip };
        for (var parent = parents[chip]; parent is not null; parent = parents[parent])
        {
            if (!line.Add(parent))
            {
                draft.Faults.Add(FaultTexts.Cycle(items[chip].Fields.OriginOf("like"), draft.Chips.Kind, chip.Id, "like"));
                break;
            }

            var stated = facts.Select(fact => fact.Capability.Feature).ToHashSet();
            facts.AddRange(own[parent]
                .Where(fact => !stated.Contains(fact.Capability.Feature))
                .Select(fact => fact with { Scope = fact.Scope with { Chip = chip } }));
        }

        return facts;
    }
}
