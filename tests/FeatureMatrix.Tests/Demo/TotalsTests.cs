using System.Globalization;
using FeatureMatrix.Reports;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Demo;

/// <summary>The totals count in bulk what the verdicts say one by one.</summary>
public sealed class Totals_of_the_demo(LodenSluice demo) : IClassFixture<LodenSluice>
{
    [Fact]
    public void Agree_with_the_verdicts_on_every_card_on_any_terms() => Assert.All(demo.AllDecisions, decisions => Assert.Equal(
        demo.Catalog.Cards.Select(card => Row(card.Name, decisions.Titles.Select(title => decisions.On(title, card).Overall))),
        Rows(TotalsReport.Of(decisions, demo.Catalog.Cards, bySetup: false))));

    [Fact]
    public void Agree_with_the_verdicts_on_every_setup_on_any_terms() => Assert.All(demo.AllDecisions, decisions => Assert.Equal(
        demo.Catalog.Cards.SelectMany(decisions.RecordedSetups).Select(setup => Counts(decisions.Titles.Select(title => decisions.On(title, setup).Overall))),
        Rows(TotalsReport.Of(decisions, demo.Catalog.Cards, bySetup: true)).Select(row => row[(row.LastIndexOf('|') + 1)..])));

    private static string Row(string name, IEnumerable<OutcomeRange> ranges) => $"{name}|{Counts(ranges)}";

    private static string Counts(IEnumerable<OutcomeRange> ranges)
    {
        var all = ranges.ToList();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{all.Count} {all.Count(range => range.CertainlyRuns)} {all.Count(range => !range.CertainlyFails)} {all.Count(range => range.Worst.Equals(Outcome.Works))} {all.Count(range => range.Best.Equals(Outcome.Works))}");
    }

    private static IEnumerable<string> Rows(Table table) => table.Rows.Select(row => $"{row[0].Text}|{string.Join(' ', row.Skip(1).Select(cell => cell.Text))}");
}
