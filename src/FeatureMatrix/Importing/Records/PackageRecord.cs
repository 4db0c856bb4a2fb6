using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Records;

/// <summary>What a driver package says about one system: the system, and the listing of the card there.</summary>
/// <param name="Os">The system in the collection.</param>
/// <param name="Listing">What the package says of the card on it.</param>
public sealed record SystemListing(Os Os, CardListing Listing)
{
    /// <summary>True where the package certainly installs on the card there without being forced.</summary>
    public bool Installs => Listing.Status is ListingStatus.Listed or ListingStatus.Generic;
}

/// <summary>A driver package as a driver record: the systems and cards that its INF file lists.</summary>
public sealed class PackageRecord
{
    private readonly Catalog _catalog;
    private readonly InfPackage _package;

    private PackageRecord(Catalog catalog, InfPackage package, Card card)
    {
        _catalog = catalog;
        _package = package;
        Listings = Of(card) ?? [];
        IsIdentified = Of(card) is not null;
        // Of a card that nobody can ask about the package says nothing, whatever it says of others.
        var described = !IsIdentified ? [] : IsListed ? Listings : Siblings().SelectMany(sibling => Of(sibling)!);
        Oses = [.. described.Where(one => one.Installs).Select(one => one.Os).Distinct().OrderBy(os => os.Id, StringComparer.Ordinal)];
        Cards = [.. Described(card).Where(one => Oses.Count > 0 && Of(one)!.Where(o => Oses.Contains(o.Os)).All(o => o.Installs))];
    }

    /// <summary>False where the card has no hardware ID in the collection, so that nothing can be asked.</summary>
    public bool IsIdentified { get; }

    /// <summary>One answer for each system that reads such packages, by the system's id.</summary>
    public IReadOnlyList<SystemListing> Listings { get; }

    /// <summary>True where the package lists the card for some system.</summary>
    public bool IsListed => Listings.Any(one => one.Installs);

    /// <summary>The systems of the record: those for which the card, or else a sibling of its chip in the collection, is listed.</summary>
    public IReadOnlyList<Os> Oses { get; }

    /// <summary>The cards of the collection that the package lists for all of <see cref="Oses"/>.</summary>
    public IReadOnlyList<Card> Cards { get; }

    /// <summary>Asks a package about a card of the collection.</summary>
    public static PackageRecord Of(Catalog catalog, InfPackage package, Card card) => new(catalog, package, card);

    /// <summary>The card that the hardware IDs in the collection describe, the most specific one; null where there is none.</summary>
    public static PciCard? PciOf(Card card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.HardwareIds
            .Select(text => HardwareId.TryParse(text, out var id, out _) ? PciCard.From(id!) : null).OfType<PciCard>()
            .OrderByDescending(pci => (pci.Subsystem is null ? 0 : 2) + (pci.Revision is null ? 0 : 1)).FirstOrDefault();
    }

    /// <summary>The version to record: the driver's, else its date, else unknown.</summary>
    public string Version => PlainWords.Of(_package.Version.DriverVersion
        ?? _package.Version.DriverDate?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) ?? "unknown").Replace('@', '-');

    /// <summary>The records; none where the package lists no card of the collection, because a driver must list one.</summary>
    public IEnumerable<RecordChange> Records(string branch, string version, string source)
    {
        if (Cards.Count == 0)
            yield break;
        if (_catalog.Branches.All(one => one.Id != branch))
        {
            yield return new RecordChange(
                [new Step.Key("drivers"), new Step.Key(branch)], $"drivers/{branch}.yaml",
                [
                    KeyChange.Keep("name", PlainWords.Of($"Driver of {_package.Version.Provider ?? "an unnamed provider"}")),
                    KeyChange.Keep("source", source),
                ])
            { InLines = true };
        }

        List<KeyChange> keys =
        [
            new("os", YamlValue.Words(Oses.Select(os => os.Id)), KeyRule.Join),
            new("lists", YamlValue.Words(Cards.Select(card => card.Id)), KeyRule.Join),
        ];
        if (_package.Version.DriverDate is { } date)
            keys.Add(KeyChange.Keep("released", date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));
        keys.Add(KeyChange.Keep("source", source));
        yield return new RecordChange(
            [new Step.Key("drivers"), new Step.Key(branch), new Step.Key("versions"), new Step.Item([("version", version)], [])],
            $"drivers/{branch}.yaml", keys);
    }

    private IEnumerable<Card> Siblings() => _catalog.Cards.Where(card => PciOf(card) is not null && Of(card)!.Any(one => one.Installs));

    private IEnumerable<Card> Described(Card card) => Siblings().Prepend(card).Distinct().Where(one => PciOf(one) is not null);

    private IReadOnlyList<SystemListing>? Of(Card card)
    {
        if (PciOf(card) is not { } pci)
            return null;
        var sameChip = _catalog.Cards.Where(other => other.Chip == card.Chip).Select(PciOf).OfType<PciCard>().Select(other => other.Device).Distinct().ToList();
        return
        [
            .. _catalog.Oses.Select(os => (os, target: TargetWindows.Of(os.Id))).Where(pair => pair.target is not null)
                .Select(pair => new SystemListing(pair.os, CardLister.List(_package, pci, pair.target!, sameChip))),
        ];
    }
}
