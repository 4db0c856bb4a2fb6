using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Records;

/// <summary>A card record made of one hardware ID and what the PCI ID list calls it.</summary>
public static class CardRecord
{
    /// <summary>The source of the names.</summary>
    public const string SourceId = "pci-id-list";

    /// <summary>The card of the collection that has this ID; null where there is none.</summary>
    public static Card? Known(Catalog catalog, HardwareId id)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        return catalog.Cards.FirstOrDefault(card => card.HardwareIds.Any(text => HardwareId.TryParse(text, out var other, out _) && other == id));
    }

    /// <summary>The records for source, chip and card; a chip or card that the collection has gets only what it lacks.</summary>
    /// <param name="catalog">The collection.</param>
    /// <param name="id">The ID, with vendor and device.</param>
    /// <param name="names">What the list calls it.</param>
    /// <param name="card">Id for the card; null to make one of its name.</param>
    /// <param name="chip">Id of the chip; null to make one of its name.</param>
    public static IEnumerable<RecordChange> Of(Catalog catalog, HardwareId id, PciNames names, string? card, string? chip)
    {
        ArgumentNullException.ThrowIfNull(id);
        ArgumentNullException.ThrowIfNull(names);
        var number = $"{id.Vendor:x4}-{id.Device:x4}";
        var chipName = PlainWords.Of(names.Device ?? $"Chip {number}");
        var cardName = PlainWords.Of(names.Subsystem ?? names.Device ?? $"Card {number}");
        card ??= Known(catalog, id)?.Id ?? Id(cardName, "card", number);
        chip ??= catalog.Cards.FirstOrDefault(one => one.Id == card)?.Chip.Id ?? Id(chipName, "chip", number);
        yield return SourceRecord.Of(SourceId, "The open PCI ID list (Debian package pci.ids)", "documented");
        if (catalog.Chips.All(one => one.Id != chip))
        {
            yield return new RecordChange(
                [new Step.Key("chips"), new Step.Key(chip)], $"cards/{card}.yaml",
                [KeyChange.Keep("name", chipName), .. Maker(names.Vendor), KeyChange.Keep("source", SourceId)]);
        }

        List<KeyChange> ids = [new("hardware-ids", YamlValue.Words([id.ToString()]), KeyRule.Join)];
        yield return new RecordChange(
            [new Step.Key("cards"), new Step.Key(card)], $"cards/{card}.yaml",
            catalog.Cards.Any(one => one.Id == card)
                ? ids
                :
                [
                    KeyChange.Keep("name", cardName), .. Maker(names.SubsystemVendor ?? names.Vendor), KeyChange.Keep("chip", chip), .. ids,
                    KeyChange.Keep("source", SourceId),
                ])
        { InLines = true };
    }

    private static IEnumerable<KeyChange> Maker(string? name) => name is null ? [] : [KeyChange.Keep("maker", PlainWords.Of(name))];

    private static string Id(string name, string kind, string number) => PlainWords.AsId(name) is { Length: > 0 } id ? id : $"{kind}-{number}";
}
