using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Demo;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Reports;

/// <summary>What to do about a loss, or about a title that does not run: one rule, whoever asks.</summary>
public sealed class Advice_about_a_title(LodenSluice bench) : IClassFixture<LodenSluice>
{
    private const string World =
        """
        chips: {heron: {name: Heron, source: manual, supply: {fog-table: no, ps-version: none}}}
        cards: {heron-16: {name: Heron 16, chip: heron, memory: {unified: 16 MiB}, source: manual, drivers-complete: [dos, windows-95, windows-98se, windows-2000, windows-xp]}}
        drivers:
          heron-9x: {name: Heron 9x, os: [windows-98se], lists: [heron-16], offers: {direct3d: "7", opengl: "1.1"}, source: readme, versions: [{version: "1.0"}]}
          heron-nt: {name: Heron NT, os: [windows-xp], lists: [heron-16], offers: {direct3d: "8"}, source: readme, versions: [{version: "2.0"}]}
        wrappers: {veil: {name: Veil, versions: [{version: "1.0", offers: {direct3d: "6"}, on: opengl 1.1, supplies: {fog-table: emulated}, os: {windows-98se: yes}, costs: Half the frame rate, source: readme}]}}
        titles:
          reed-bay: {name: Reed Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: {fog-table: The far shore ends at an edge}}}}}
          late-bay: {name: Late Bay, os: [windows-98se, windows-xp], source: bench, renderers: {d3d: {api: direct3d 8}}}
          last-bay: {name: Last Bay, os: [windows-xp], source: bench, renderers: {d3d: {api: direct3d 8, needs: {must: [ps-version 1.1]}}}}
        libraries: {shelf: {name: Shelf, titles: [reed-bay, late-bay, last-bay], policy: {os: [windows-98se], wrappers: none}}}
        """;

    private static readonly Decisions Shelf = ShelfOf(World);

    [Theory]
    [InlineData("reed-bay",
        """
        Use Direct3D 6 with Heron 9x 1.0 on Windows 98 SE.
        What you see: The far shore ends at an edge.
        To lose less: allow Veil and use Direct3D 6 through Veil 1.0 with Heron 9x 1.0 on Windows 98 SE: works.
        """)]
    [InlineData("late-bay",
        """
        Why: Heron 9x 1.0 does not offer Direct3D 8 on Windows 98 SE.
        What to do: allow Windows XP and use Direct3D 8 with Heron NT 2.0 on Windows XP: works.
        """)]
    [InlineData("last-bay",
        """
        Why: Last Bay has no Direct3D 8 path on Windows 98 SE.
        Nothing recorded here helps.
        """)]
    public void Names_what_the_policy_forbids_or_says_that_nothing_helps(string title, string answer) =>
        Assert.Equal(answer, string.Join('\n', Shelf.CellOn(Shelf.Catalog.Titles.Single(one => one.Id == title), Shelf.Catalog.Cards.Single())
            .Explain().InShort().Because.Select(line => line.Text)));

    [Fact]
    public void Is_in_the_report_of_a_card_with_reason_and_price()
    {
        var report = CardReport.Of(Shelf, Shelf.Catalog.Cards.Single());

        Assert.Equal(
            [
                "Table fog | Reed Bay | severe | The far shore ends at an edge | allow Veil and use Direct3D 6 through Veil 1.0 with Heron 9x 1.0 on Windows 98 SE",
                "(all) | Last Bay | does not run | Last Bay has no Direct3D 8 path on Windows 98 SE | nothing recorded here helps",
                "(all) | Late Bay | does not run | Heron 9x 1.0 does not offer Direct3D 8 on Windows 98 SE | allow Windows XP and use Direct3D 8 with Heron NT 2.0 on Windows XP: works",
            ],
            report.ToTable().Rows.Select(row => string.Join(" | ", row.Select(cell => cell.Text))));
        Assert.Equal([("allow Veil and use Veil 1.0", "Half the frame rate")], report.Losses.Single().Costs);
        Assert.Equal(["Another system to install."], report.DoesNotRun[1].Remedies.Select(remedy => remedy.Costs));
    }

    [Fact]
    public void Puts_the_caution_beside_a_forced_driver()
    {
        var decisions = ShelfOf(World.Replace("lists: [heron-16], offers: {direct3d: \"8\"}", "lists: [heron-32], offers: {direct3d: \"8\"}", StringComparison.Ordinal)
            .Replace("cards: {", "cards: {heron-32: {name: Heron 32, chip: heron, source: manual}, ", StringComparison.Ordinal));

        var report = CardReport.Of(decisions, decisions.Catalog.Cards.Single(card => card.Id == "heron-16"));

        Assert.Equal(
            "allow Windows XP and forced drivers and use Direct3D 8 with Heron NT 2.0 (forced) on Windows XP: works",
            report.DoesNotRun.Single(title => title.Cell.Title.Id == "late-bay").Remedies[0].Text);
        Assert.Contains(ExplanationBuilder.ForcedCaution, report.Cautions);
    }

    [Fact]
    public void Is_the_same_in_the_losses_of_a_card_as_in_the_explanation_of_the_cell()
    {
        var compared = 0;
        foreach (var decisions in bench.AllDecisions)
        {
            foreach (var loss in decisions.Catalog.Cards.SelectMany(card => CardReport.Of(decisions, card).Losses).SelectMany(feature => feature.Titles))
            {
                var verdict = loss.Cell.Verdict;
                if (verdict.Recommended is not { } route || verdict.Headline.By.Contains(route) || route.Range.Worst.Losses.Contains(loss.Loss))
                    continue;
                compared++;
                Assert.Equal($"use {Names.Of(route.Route)}", loss.Remedies[0].Text);
                Assert.StartsWith($"Use {Names.Of(route.Route)}: ", loss.Cell.Explain().Because[0].Text, StringComparison.Ordinal);
            }
        }

        Assert.InRange(compared, 20, 1000);
    }

    [Fact]
    public void Is_all_that_explain_prints_when_asked_for_a_short_answer() => Assert.Equal(
        """
        Peatfire on Ostrel Tiller 64: loses paletted textures (8-bit index) (severe) and dithering in 16-bit modes (cosmetic), natively
          Use Direct3D through Oldwick 1.4 with Ostrel Tiller driver for Windows 2000 and XP 5.3 on Windows 2000 Professional: works. It removes a loss that is severe or not graded.
          What it costs: Another layer to start and a quarter of the frame rate; wants Windows 2000 or later.

        """,
        CommandRun.Of("explain", "peatfire", "tiller-64", "--short", "--collection", Repository.PathTo("data", "demo")).Results);

    private static Decisions ShelfOf(string world)
    {
        var catalog = Worlds.Load(world);
        return new Decisions(catalog, catalog.Libraries.Single());
    }
}
