using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Demo;

/// <summary>
/// What data/demo/README.md tells, asserted: all names and values are the demo's own inventions, so nothing outside the
/// project says what is right; the labels follow from the demo's files by rules R1 to R17.
/// </summary>
public sealed class The_story_of_the_Loden_Sluice_bench(LodenSluice bench) : IClassFixture<LodenSluice>
{
    /// <summary>Default terms, the empty library: any system, any wrapper, nothing forced, each renderer's lowest mode.</summary>
    private const string AnyTerms = "";

    private const string Evening = "sluice-evening";

    private const string Shelf = "long-shelf";

    [Fact]
    public void Shows_every_label_of_rule_R14()
    {
        var outcomes = new HashSet<OutcomeLabel>();
        var routes = new HashSet<RouteLabel>();
        var (forced, softwareOnly, failsAtMode) = (false, false, false);
        foreach (var cell in bench.AllCells())
        {
            outcomes.Add(cell.Verdict.Headline.Outcome);
            routes.Add(cell.Verdict.Headline.Route);
            forced |= cell.Verdict.Headline.IsForced;
            softwareOnly |= cell.Verdict.IsSoftwareOnly;
            failsAtMode |= cell.Label.Contains("does not run at 1024x768; works to", StringComparison.Ordinal);
        }

        Assert.Equal(Enum.GetValues<OutcomeLabel>(), outcomes.Order());
        Assert.Empty(new[]
        {
            RouteLabel.Natively, RouteLabel.WrapperOnly, RouteLabel.NativeNotKnown, RouteLabel.NativeNotPermitted, RouteLabel.None,
        }.Except(routes));
        Assert.True(forced);
        Assert.True(softwareOnly);
        Assert.True(failsAtMode);
    }

    [Theory]
    [InlineData(Evening, "reedcutter", "kite-2", "works, natively")]
    [InlineData(Evening, "mirebound", "kite-2", "loses table (pixel) fog (severe), natively")]
    [InlineData(Evening, "mirebound", "bulrush-agp", "does not run")]
    [InlineData(Evening, "mirebound", "beacon-32", "works, natively")]
    [InlineData(Evening, "marl-pit", "kite-2", "works, wrapper only")]
    [InlineData(Evening, "bellfounder", "bulrush-pci", "works, through a wrapper, native not permitted")]
    [InlineData(Evening, "bellfounder", "lantern-3d", "works, through a wrapper, native not known")]
    [InlineData(Evening, "bellfounder", "placard-64", "software only")]
    [InlineData(Evening, "ironmonger-arena", "kite-9", "loses 2 textures in one pass (cosmetic), wrapper only")]
    [InlineData(Evening, "nine-fathom-bell", "kite-2", "loses W-buffer (wrong picture, cosmetic), wrapper only")]
    [InlineData(Evening, "long-dusk-patrol", "beacon-32", "runs by one of Direct3D, standard depth or Direct3D, W-buffer, natively; decided by W-buffer")]
    [InlineData(Shelf, "hollow-regatta", "bulrush-pci", "loses 3D drawing in 32-bit colour (cosmetic), natively (forced)")]
    [InlineData(Shelf, "glass-estuary", "beacon-32", "not known, at best loses pixel shader version 1.1 (severe), natively")]
    [InlineData(Shelf, "glass-estuary", "tiller-64", "runs, texture sizes that are not powers of two not known, natively")]
    [InlineData(Shelf, "mirebound", "kite-2-pellworth", "does not run at 1024x768; works to 960x720")]
    [InlineData(Shelf, "mirebound", "tiller-64", "works, natively")]
    public void Reads(string library, string title, string card, string label) =>
        Assert.Equal(label, bench.Cell(library, title, card).Label);

    [Fact]
    public void Gives_no_Kite_2_driver_that_draws_both_fens()
    {
        var decisions = bench.AllDecisions.Single(d => d.Library?.Id == Evening);
        var drivers = decisions.RecordedSetups(bench.Card("kite-2"))
            .Where(setup => Draws("reedcutter", setup) && Draws("mirebound", setup)).Select(setup => setup.Driver.Id);

        Assert.Empty(drivers);

        bool Draws(string title, Setup setup) => decisions.On(bench.Title(title), setup).Headline.Outcome == OutcomeLabel.Works;
    }

    [Fact]
    public void Has_one_driver_of_the_Beacon_that_covers_the_evening_without_a_wrapper()
    {
        var decisions = bench.AllDecisions.Single(d => d.Library?.Id == Evening);
        var drivers = decisions.RecordedSetups(bench.Card("beacon-32"))
            .Where(setup => decisions.Library!.Entries.Where(entry => entry.IsMustHave)
                .All(entry => decisions.On(entry.Title, setup).Headline is { Route: RouteLabel.Natively, Range.Worst: { Runs: true, Severe: 0, Ungraded: 0 } }))
            .Select(setup => setup.Driver.Id);

        Assert.Equal(["corvane-beacon-9x@7.52"], drivers);
    }

    [Fact]
    public void Cannot_tell_the_two_Kite_2_boards_apart_on_the_evening()
    {
        var titles = bench.Catalog.Libraries.Single(library => library.Id == Evening).Entries.Select(entry => entry.Title.Id).ToList();

        Assert.Equal(
            titles.Select(title => bench.Cell(Evening, title, "kite-2").Label),
            titles.Select(title => bench.Cell(Evening, title, "kite-2-pellworth").Label));
    }

    [Fact]
    public void Offers_the_wrapper_beside_what_the_late_board_dropped()
    {
        var verdict = bench.Verdict(Shelf, "peatfire", "tiller-64");

        Assert.Equal(RouteLabel.Natively, verdict.Headline.Route);
        Assert.Equal(["severe tex-pal8", "cosmetic dither-16bpp"], Losses(verdict.Headline.Range.Worst));
        Assert.Equal("oldwick@1.4", verdict.Recommended!.Route.Wrapper!.Id);
        Assert.Empty(Losses(verdict.Recommended.Range.Worst));
    }

    [Fact]
    public void Lets_what_was_seen_win_and_flags_it()
    {
        var cell = bench.Cell(Evening, "furrow-and-pike", "lantern-3d");

        Assert.True(cell.IsContradicted);
        Assert.Equal("works, natively", cell.Label);
        Assert.Equal(
            ["tex-colorkey"], cell.Verdict.Contradictions.SelectMany(c => c.Suspects).Select(fact => fact.Capability.Feature.Id).Distinct());
    }

    [Fact]
    public void Leaves_open_what_two_members_saw_differently()
    {
        var verdict = bench.Verdict(Shelf, "ferrymen", "beacon-32");

        Assert.Equal(OutcomeLabel.RunsNotKnown, verdict.Headline.Outcome);
        Assert.Equal("fog-w", Assert.IsType<UnknownFact.ObservedFeature>(Assert.Single(verdict.Headline.Deciding)).Capability.Feature.Id);
    }

    [Fact]
    public void Leaves_open_where_data_sheet_and_errata_sheet_disagree()
    {
        var feature = bench.Catalog.Features.Single(f => f.Id == "tex-npot");
        var direct3d = bench.Catalog.Features.Single(f => f.Id == "direct3d");
        var resolver = bench.AllDecisions.First().Resolver;
        var setup = resolver.SetupsOf(bench.Card("tiller-64")).First(s => s.Install == Install.Listed && !s.Os.IsDos);

        var answer = resolver.Supply.Ask(feature.At(1), setup, direct3d);

        Assert.Equal(AnswerReason.Conflict, answer.Reason);
        Assert.Equal(["ostrel-errata", "ostrel-sheet"], answer.Facts.Select(fact => fact.Evidence.Source!.Id).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Judges_each_wrapper_version_by_itself_on_the_system_that_cannot_have_its_runtime()
    {
        var routes = bench.Verdict(AnyTerms, "marl-pit", "kite-2").Routes
            .Where(finding => finding.Route.Setup.Os.Id == "windows-95" && finding.Route.Setup.Driver.Id == "kestrin-kite-9x@5.12"
                && finding.Route.Wrapper?.Wrapper.Id == "pondglass")
            .OrderBy(finding => finding.Route.Wrapper!.Id, StringComparer.Ordinal)
            .Select(finding => $"{finding.Route.Wrapper!.Id} {(finding.Range.CertainlyRuns ? "runs" : finding.Range.CertainlyFails ? "fails" : "?")}");

        Assert.Equal(["pondglass@1.2 runs", "pondglass@2.0 fails", "pondglass@3.1 fails"], routes);
    }

    private static IEnumerable<string> Losses(Outcome outcome) =>
        outcome.Losses.Select(loss => $"{loss.Strength.ToString().ToLowerInvariant()} {loss.Choices[0].Feature.Id}");
}
