using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Records;

/// <summary>The card and the driver version that a report speaks of, in the collection or new to it.</summary>
public sealed record ReportTarget
{
    /// <summary>The collection.</summary>
    public required Catalog Catalog { get; init; }

    /// <summary>Id of the card.</summary>
    public required string Card { get; init; }

    /// <summary>Name for a card that the collection does not have.</summary>
    public required string CardName { get; init; }

    /// <summary>Id of the driver's branch.</summary>
    public required string Branch { get; init; }

    /// <summary>The driver's version.</summary>
    public required string Version { get; init; }

    /// <summary>Id of the source that the records and statements name.</summary>
    public required string Source { get; init; }

    /// <summary>Operating system the report was made on; null where nobody said, which a known driver does not need.</summary>
    public Os? Os { get; init; }

    /// <summary>True where the report gives the driver away as a software renderer.</summary>
    public bool IsSoftware { get; init; }

    /// <summary>The card, if the collection has it.</summary>
    public Card? KnownCard => Catalog.Cards.FirstOrDefault(card => card.Id == Card);

    /// <summary>The driver version, if the collection has it.</summary>
    public Driver? KnownDriver => Catalog.Drivers.FirstOrDefault(driver => driver.Branch.Id == Branch && driver.Version == Version);

    /// <summary>
    /// The records of card and driver. What the collection has of them stays; a known driver is not made to list the card,
    /// since a report cannot tell a listed driver from a forced one.
    /// </summary>
    public IEnumerable<RecordChange> Records()
    {
        if (KnownCard is null)
        {
            yield return new RecordChange(
                [new Step.Key("chips"), new Step.Key(Card + "-chip")], $"cards/{Card}.yaml",
                [KeyChange.Keep("name", $"Chip of {CardName}"), KeyChange.Keep("source", Source)]);
            yield return new RecordChange(
                [new Step.Key("cards"), new Step.Key(Card)], $"cards/{Card}.yaml",
                [KeyChange.Keep("name", CardName), KeyChange.Keep("chip", Card + "-chip"), KeyChange.Keep("source", Source)])
            { InLines = true };
        }

        if (Catalog.Branches.All(branch => branch.Id != Branch))
        {
            yield return new RecordChange(
                [new Step.Key("drivers"), new Step.Key(Branch)], $"drivers/{Branch}.yaml",
                [KeyChange.Keep("name", $"Driver of {CardName}"), KeyChange.Keep("source", Source)])
            { InLines = true };
        }

        var version = new List<KeyChange>();
        if (KnownDriver is null)
        {
            if (Os is not null)
                version.Add(new KeyChange("os", YamlValue.Words([Os.Id]), KeyRule.Join));
            version.Add(new KeyChange("lists", YamlValue.Words([Card]), KeyRule.Join));
            version.Add(KeyChange.Keep("source", Source));
        }

        if (IsSoftware)
            version.Add(KeyChange.Keep("software", "yes"));
        if (version.Count > 0)
        {
            yield return new RecordChange(
                [new Step.Key("drivers"), new Step.Key(Branch), new Step.Key("versions"), new Step.Item([("version", Version)], [])],
                $"drivers/{Branch}.yaml", version);
        }
    }
}
