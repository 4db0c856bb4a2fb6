using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Fit;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Demo;

/// <summary>Decisions on the demo, as the tool writes them.</summary>
public sealed class DecisionTests(LodenSluice demo) : IClassFixture<LodenSluice>
{
    [Fact]
    public void Kite_or_Bulrush_for_the_sluice_evening() => Assert.Equal(
        "Take Kestrin Kite 2 for the sluice evening: it scores 1.4 more, most of it on Mirebound. Neither covers all must-haves; Kestrin Kite 2 does not cover Mirebound (covered is what certainly runs and loses nothing graver than you tolerate). It changes first if the worth kept after a severe loss falls below 0.06: then Tarnholt Bulrush 16 AGP wins. With one install each (Kestrin Kite driver for Windows 9x 6.31 and Tarnholt Bulrush driver for Windows 98 2.02) the difference is +1.3. At the speed floor: undecided, since too little has been measured.",
        CompareReport.Of(For("sluice-evening"), demo.Card("kite-2"), demo.Card("bulrush-agp")).Headline);

    [Fact]
    public void The_office_board_equals_the_boxed_one_exactly()
    {
        var report = CompareReport.Of(For("sluice-evening"), demo.Card("kite-2"), demo.Card("kite-2-pellworth"));
        Assert.Equal(new ScoreInterval(0, 0), report.Picture.Difference);
        Assert.StartsWith(
            "Kestrin Kite 2 and Pellworth Office K2 are equal for the sluice evening: alike on every title, whatever is still open; let the price decide.",
            report.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void No_one_driver_of_the_Kite_works_without_loss() => Assert.Equal(
        "Install Kestrin Kite driver for Windows 9x 6.31 on Windows 98 Second Edition on Kestrin Kite 2: it leaves Mirebound uncovered. No one install works without loss: it takes Kestrin Kite driver for Windows 9x 6.31 on Windows 98 Second Edition and Kestrin Kite driver for Windows 9x 4.20 on Windows 98 Second Edition to give every title the best this card can do.",
        DriverChoiceReport.Of(For("sluice-evening"), demo.Card("kite-2"), null).Headline);

    [Fact]
    public void The_long_shelf_needs_one_card_more() => Assert.Equal(
        "Buy Kestrin Kite 9 (30 to 48 EUR) and put it into the window-sill bench with Kestrin Kite 9 driver for Windows 2000 and XP 71.02 on Windows 2000 Professional: that covers every must-have, and no plan needs less. Filling the other slots with what you own adds no more than 0.6 to a guaranteed 28.22.",
        PlanReport.Of(For("long-shelf")).Headline);

    [Fact]
    public void Forty_euros_leave_the_long_shelf_one_title_short()
    {
        var report = PlanReport.Of(For("long-shelf"), 40);
        Assert.StartsWith(
            "Put Ostrel Tiller 64 into the window-sill bench with Ostrel Tiller driver for Windows 2000 and XP 5.3 on Windows 2000 Professional: that covers 2 of 3 must-haves, and no plan needs less; nothing within 40 EUR covers Drowned Parish for certain as well.",
            report.Headline, StringComparison.Ordinal);
        Assert.Equal(
            ["Drowned Parish: only Kestrin Kite 9 would cover it; no slot, system or money is left for it here"],
            report.ToReport().Tables.Single(table => table.Title == "Not covered for certain").Rows.Select(row => string.Join(": ", row.Select(cell => cell.Text))));
        Assert.Contains("Within the budget only at the lowest prices on record", report.Alternatives.Select(alternative => alternative.What));
    }

    [Fact]
    public void A_three_volt_board_is_never_planned_into_the_loft() => Assert.All(
        PlanReport.Of(For("long-shelf"), null, [demo.Catalog.Rigs.Single(rig => rig.Id == "loft-2400")]).Most.Rows,
        row => Assert.NotEqual(FitVerdict.DoNotInsert, Inventory.FitOf(row.Option.Setup.Card, row.Rig!, row.Slot!)));

    [Fact]
    public void What_a_Kite_9_would_add_to_the_shelf() => Assert.Equal(
        "Kestrin Kite 9 adds 4.09 to 5.45 to what you own and covers Drowned Parish; no other card on record does as much; boards like it go for 30 to 48 EUR, so do not pay more than 48 EUR.",
        CardValueReport.Of(For("long-shelf"), demo.Card("kite-9")).Headline);

    [Fact]
    public void One_look_up_settles_the_two_Sedges()
    {
        var report = NextTestReport.Of(new Weighing(new Decisions(demo.Catalog, null)), demo.Card("sedge-4"), demo.Card("sedge-6"));
        Assert.Equal("One answer can settle Tarnholt Sedge 4 and Tarnholt Sedge 6: Does Tarnholt Sedge 6 work under Windows 2000 Professional?", report.Headline);
        Assert.All(report.Steps, step => Assert.Null(step.Install));
        Assert.Empty(report.ToWorksheet("sedges").Tasks);
    }

    [Fact]
    public void Tests_at_the_speed_floor_take_each_card_and_install_once()
    {
        var report = NextTestReport.Of(For("sluice-evening"), demo.Card("kite-2"), demo.Card("beacon-32"));
        Assert.StartsWith("The picture is decided (Corvane Beacon 32); at the speed floor it is not.", report.Headline, StringComparison.Ordinal);
        var cards = report.Steps.Select(step => step.Install!.Card.Id).ToList();
        Assert.Equal(cards.Distinct().Count(), 1 + cards.Zip(cards.Skip(1)).Count(pair => pair.First != pair.Second));
        var installs = report.Steps.Select(step => step.Install!).ToList();
        Assert.Equal(installs.Distinct().Count(), 1 + installs.Zip(installs.Skip(1)).Count(pair => pair.First != pair.Second));
        var worksheet = report.ToWorksheet("speeds");
        Assert.Equal(report.Steps.SelectMany(step => step.Routes).Distinct(), worksheet.Tasks.Select(task => task.Route));
    }

    private Weighing For(string library) => new(new Decisions(demo.Catalog, demo.Catalog.Libraries.Single(one => one.Id == library)));

    [Theory]
    [InlineData("kite-2 beacon-32 --library sluice-evening",
        "loses N: so many features are missing or wrong, and how badly; wrapper: only through one; +: a wrapper or another driver loses less. Terms: operating systems: Windows 98 Second Edition; wrappers: Pondglass and Brassgate; mode: 640x480; colour depth: 16 bit; speed floor: 30 frames a second.")]
    [InlineData("sedge-4",
        "loses N: so many features are missing or wrong, and how badly; wrapper: only through one; no: does not run. Terms: any system and wrapper, no forced drivers, each title's lowest mode and depth.")]
    public void A_table_for_a_post_explains_the_marks_that_it_uses_and_no_other(string words, string note)
    {
        var printed = CommandRun.Of(["coverage", .. words.Split(' '), "--short", "--format", "forum", "--collection", Repository.PathTo("data", "demo")]).Results;
        Assert.Equal(note, printed.Split('\n')[1].TrimEnd());
    }
}
