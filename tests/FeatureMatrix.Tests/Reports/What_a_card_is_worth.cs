using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Reports;

/// <summary>What a card would add and the most to pay: two boards of one chip of which table fog is not known, and a card without it.</summary>
public sealed class What_a_card_is_worth
{
    private const string World = """
        chips: {sand: {name: Sand, source: bench}, silt: {name: Silt, source: bench, supply: {fog-table: no}}}
        cards:
          dune: {name: Dune, chip: sand, memory: {unified: 32 MiB}, drivers-complete: [windows-98se], source: manual, prices: [{sold: 20 .. 30 EUR}]}
          dune-value: {name: Dune Value, chip: sand, memory: {unified: 16 MiB}, drivers-complete: [windows-98se], source: manual, prices: [{sold: 8 .. 12 EUR}]}
          delta: {name: Delta, chip: silt, memory: {unified: 16 MiB}, drivers-complete: [windows-98se], source: manual, prices: [{sold: 2 .. 4 EUR}]}
        drivers:
          sand-9x: {name: Sand drivers, os: [windows-98se], lists: [dune, dune-value], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}
          silt-9x: {name: Silt drivers, os: [windows-98se], lists: [delta], offers: {direct3d: "7"}, source: readme, versions: [{version: "2.0"}]}
        titles: {low-mist: {name: Low Mist, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 6, needs: {severe: [fog-table]}}}}}
        libraries: {evening: {name: Evening, titles: {low-mist: 4}}}
        """;

    [Theory]
    [InlineData("dune", "Dune adds 2 to 4 to what you own; boards like it go for 20 to 30 EUR, and Dune Value, which does at least as much, for 8 to 12 EUR: do not pay more than 12 EUR.", "12 EUR")]
    [InlineData("dune-value", "Dune Value adds 2 to 4 to what you own; boards like it go for 8 to 12 EUR, and Dune, which does at least as much, for 20 to 30 EUR: do not pay more than 12 EUR.", "12 EUR")]
    [InlineData("delta", "Delta adds 2 to what you own; boards like it go for 2 to 4 EUR, and Dune Value, which does at least as much, for 8 to 12 EUR: do not pay more than 4 EUR.", "4 EUR")]
    public void Is_no_more_than_a_board_costs_that_does_as_much_whatever_is_open(string card, string headline, string most)
    {
        var catalog = Worlds.Load(World);
        var report = CardValueReport.Of(new Weighing(new Decisions(catalog, catalog.Libraries.Single())), catalog.Cards.Single(one => one.Id == card));

        Assert.Equal((headline, most), (report.Headline, report.MostText));
    }

    [Fact]
    public void Is_shown_beside_other_boards_of_its_chip()
    {
        var catalog = Worlds.Load(World);
        var report = CardValueReport.Of(new Weighing(new Decisions(catalog, catalog.Libraries.Single())), catalog.Cards.Single(one => one.Id == "dune"));

        Assert.Equal(["Dune Value | no | 2 to 4 | 8 to 12 EUR"], report.ToReport().Tables[^1].Rows.Select(row => string.Join(" | ", row.Select(cell => cell.Text))));
    }

    [Theory]
    [InlineData("specimens: {mine: {card: dune, owned: yes}}", "dune",
        "You own a Dune already. It adds 2 to 4 to your other cards, and a second one adds nothing: pay nothing for it.", "nothing, you own one",
        "You own no other card; a specimen with 'owned: yes' would say so.")]
    [InlineData("specimens: {mine: {card: dune, owned: yes}, too: {card: dune-value, owned: yes}}", "dune",
        "You own a Dune already. It adds nothing to your other cards, and a second one adds nothing: pay nothing for it.", "nothing, you own one",
        "You own Dune Value beside it. No title gains by this one.")]
    [InlineData("specimens: {mine: {card: dune, owned: yes}}", "delta", "Delta adds nothing to what you own for Evening: pay nothing for it.", "nothing", "You own Dune. No title gains by this one.")]
    [InlineData("specimens: {}", "delta",
        "Delta adds 2 to what you own; boards like it go for 2 to 4 EUR, and Dune Value, which does at least as much, for 8 to 12 EUR: do not pay more than 4 EUR.", "4 EUR",
        "You own no card; a specimen with 'owned: yes' would say so.")]
    public void Says_what_is_owned_already(string specimens, string card, string headline, string most, string owned)
    {
        var catalog = Worlds.Load(World + "\n" + specimens);
        var report = CardValueReport.Of(new Weighing(new Decisions(catalog, catalog.Libraries.Single())), catalog.Cards.Single(one => one.Id == card));

        Assert.Equal((headline, most, owned), (report.Headline, report.MostText, report.ToReport().Tables[0].Lead));
    }
}
