using System.Globalization;
using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What a driver package says about a card, system by system.</summary>
public static class PackageReport
{
    /// <summary>Whether the card is listed and by how specific an ID; else which listed siblings of its chip could be forced.</summary>
    public static ExplanationLine Of(InfPackage package, PackageRecord record, Card card)
    {
        ArgumentNullException.ThrowIfNull(package);
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(card);
        var lines = record.Listings.Select(OnSystem).ToList();
        if (!record.IsIdentified)
            lines.Add(new(LineKind.Gap, $"No hardware ID of {card.Name} is recorded, so the package cannot be asked about it. 'identify' records one."));
        if (record.Listings.Any(one => one.Listing.Siblings.Count > 0))
            lines.Add(new(LineKind.Caution, ExplanationBuilder.ForcedCaution));
        if (record is { IsIdentified: true, Cards.Count: 0 })
            lines.Add(new(LineKind.Gap, "The package certainly lists no card of this collection, so no driver is recorded."));
        else if (record is { IsIdentified: true, IsListed: false })
            lines.Add(new(LineKind.Statement, $"The driver is recorded for {Names.List([.. record.Cards.Select(one => one.Name)])}; on {card.Name} it counts as forced."));
        return new ExplanationLine(
            LineKind.Statement, PlainWords.Of($"Package of {package.Version.Provider ?? "an unnamed provider"}, version {record.Version}: {card.Name}"), lines);
    }

    /// <summary>Faults of the file, each with its place.</summary>
    public static IEnumerable<string> Faults(string file, InfPackage package) => package.Faults.Select(fault => string.Create(
        CultureInfo.InvariantCulture, $"{file}({fault.Line},{fault.Column}): {PackageWording.Fault(fault)}"));

    private static ExplanationLine OnSystem(SystemListing one)
    {
        var lines = new List<ExplanationLine>();
        lines.AddRange(one.Listing.Hits.Select(hit => new ExplanationLine(LineKind.Fact, string.Create(
            CultureInfo.InvariantCulture,
            $"line {hit.Device.Line}: '{PlainWords.Of(hit.Device.Description)}' by {hit.Id}, which names {PackageWording.Specificity(hit.Specificity)}"))));
        lines.AddRange(one.Listing.Siblings.Select(sibling => new ExplanationLine(LineKind.Gap, string.Create(
            CultureInfo.InvariantCulture, $"line {sibling.Line}: '{PlainWords.Of(sibling.Description)}' has the same chip; its driver could be forced"))));
        lines.AddRange(one.Listing.Doubts.Select(doubt => new ExplanationLine(LineKind.Gap, PackageWording.Doubt(doubt))));
        return new ExplanationLine(Kind(one.Listing.Status), $"{one.Os.Name}: {PackageWording.Status(one.Listing.Status)}", lines);
    }

    private static LineKind Kind(ListingStatus status) => status switch
    {
        ListingStatus.Unknown => LineKind.Gap,
        ListingStatus.NotListed => LineKind.Loss,
        ListingStatus.Generic or ListingStatus.Listed => LineKind.Met,
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
