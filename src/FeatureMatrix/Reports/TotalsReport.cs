using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Reports;

/// <summary>How many titles run, and run without a loss, on each card or setup: for certain and at best. Made for thousands of both.</summary>
public static class TotalsReport
{
    /// <summary>A row for each card, or for each recorded and permitted setup of it.</summary>
    public static Table Of(Decisions decisions, IReadOnlyList<Card> cards, bool bySetup)
    {
        var places = cards.SelectMany(card => bySetup
            ? decisions.RecordedSetups(card).Select(setup => (Name: $"{card.Name}, {Names.Of(setup)}", Setups: (IReadOnlyList<Setup>)[setup]))
            : [(card.Name, decisions.Resolver.SetupsOf(card))]).ToList();
        var totals = CoverageTotals.Of(decisions.Resolver, decisions.Titles, places.Select(place => place.Setups).ToList(), decisions.TermsFor);
        var library = decisions.Library is { } chosen ? $", library {chosen.Name}" : "";
        return new Table(
            $"Totals by {(bySetup ? "setup" : "card")}: {decisions.Catalog.Name}{library}", PolicyWording.Text(decisions.Policy),
            [
                new TableColumn(bySetup ? "Setup" : "Card"), new TableColumn("Titles", true), new TableColumn("Certainly run", true), new TableColumn("May run", true),
                new TableColumn("Certainly lose nothing", true), new TableColumn("May lose nothing", true),
            ],
            places.Zip(totals, (place, total) => (IReadOnlyList<TableCell>)
            [
                new TableCell(place.Name), Number(total.Titles), Number(total.RunAtWorst), Number(total.RunAtBest), Number(total.CompleteAtWorst), Number(total.CompleteAtBest),
            ]).ToList());
    }

    private static TableCell Number(int count) => new(count.ToString(System.Globalization.CultureInfo.InvariantCulture), count);
}
