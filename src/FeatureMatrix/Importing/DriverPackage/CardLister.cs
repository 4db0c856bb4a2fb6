namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>Decides whether a package lists a card for a system.</summary>
public static class CardLister
{
    /// <summary>
    /// Compares the IDs the card reports with every line of the sections that the system reads. A certain hit is never
    /// taken back by a doubt about another line; a doubt that could bring a closer kind of hit makes the answer unknown.
    /// </summary>
    /// <param name="package">The package.</param>
    /// <param name="card">The card; what nobody has read of it may leave the answer unknown.</param>
    /// <param name="os">The system.</param>
    /// <param name="sameChip">Further device numbers of the same chip; the card's own always counts.</param>
    public static CardListing List(InfPackage package, PciCard card, TargetWindows os, params IReadOnlyCollection<PciDevice> sameChip)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(sameChip);
        var readings = SystemSections.Readings(package, os).Select(r => List(package, card, os, sameChip, r)).ToList();
        if (readings.All(r => r.Status == readings[0].Status))
            return readings[0];
        return readings[0] with
        {
            Status = ListingStatus.Unknown,
            Hits = [],
            Siblings = [],
            Doubts = [new ListingDoubt(ListingDoubtKind.DocumentationDisagrees), .. readings.SelectMany(r => r.Doubts).Distinct()],
        };
    }

    private static CardListing List(
        InfPackage package, PciCard card, TargetWindows os, IReadOnlyCollection<PciDevice> sameChip, SystemSections sections)
    {
        var match = new IdMatcher(card);
        var hits = new List<ListingHit>();
        var siblings = new List<ListedDevice>();
        var doubts = new List<ListingDoubt>(sections.Doubts);
        foreach (var device in sections.Sections.SelectMany(s => s.Devices!).Distinct())
        {
            if (match.Closest(device) is { } closest)
            {
                if (package.InstallDoubt(device, os) is { } doubt)
                    doubts.Add(doubt);
                else
                    hits.Add(new ListingHit(device, closest.Id, closest.Specificity, closest.Rank, package.InstallFor(device, os)));
            }
            else if (device.Ids.Any(i => i.Pci is { Vendor: { } v, Device: { } d } && IsSameChip(new PciDevice(v, d))))
            {
                siblings.Add(device);
            }

            doubts.AddRange(match.Doubts(device));
        }

        hits.Sort((a, b) => (a.Rank, a.Device.Line).CompareTo((b.Rank, b.Device.Line)));
        var best = hits.Count == 0 ? ListingStatus.NotListed
            : hits.Any(h => h.Specificity > IdSpecificity.Class) ? ListingStatus.Listed
            : ListingStatus.Generic;
        var status = best != ListingStatus.Listed && doubts.Count > 0 ? ListingStatus.Unknown : best;
        return new CardListing(os, status, hits, best == ListingStatus.Listed ? [] : siblings, doubts);

        bool IsSameChip(PciDevice device) => device == card.Device || sameChip.Contains(device);
    }
}
