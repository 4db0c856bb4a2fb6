using FeatureMatrix.Deciding.Fit;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Advice;

/// <summary>What somebody thinks of changing about a card that is there.</summary>
/// <param name="Card">The card in its place; the same one where it stays.</param>
/// <param name="Driver">This driver alone; null for any.</param>
/// <param name="Os">This system alone; null for any.</param>
/// <param name="Memory">Other memory on the board; null for its own.</param>
/// <param name="Rig">The PC it goes into; null for any.</param>
public sealed record Swap(Card Card, Driver? Driver, Os? Os, VideoMemory? Memory, Rig? Rig)
{
    /// <summary>True where nothing but the memory differs from a card.</summary>
    internal bool IsMemoryAlone(Card now) => this == new Swap(now, null, null, Memory, null) && Memory is not null;

    /// <summary>The setups of the card that are left.</summary>
    internal IReadOnlyList<Setup> SetupsOf(Resolver resolver) => resolver.SetupsOf(Card)
        .Where(setup => (Os is null || setup.Os == Os) && (Driver is null || setup.Driver == Driver) && (Rig is null || Rig.Oses.Count == 0 || Rig.Oses.Contains(setup.Os)))
        .Select(setup => Memory is null ? setup : setup with { Memory = Memory }).ToList();

    /// <summary>What differs from a card, in words.</summary>
    internal string Text(Card now)
    {
        var size = Memory is null ? "" : MemoryReport.SizeText(Memory);
        var board = Card == now ? size : size.Length == 0 ? Card.Name : $"{Card.Name} ({size})";
        var words = new[] { board, Driver is null ? "" : Names.Of(Driver), Os?.Name ?? "", Rig is null ? "" : Names.InMiddle(Rig.Name) };
        return string.Join(" on ", words.Where(text => text.Length > 0));
    }
}

/// <summary>What would change on a card: another card, driver, system or PC in its place.</summary>
/// <param name="Weighing">The decisions it draws on.</param>
/// <param name="Now">What stands now, in words.</param>
/// <param name="Then">What would stand then.</param>
/// <param name="Changes">The titles that change, with both verdicts.</param>
/// <param name="Titles">How many were looked at.</param>
public sealed record WhatIfReport(Weighing Weighing, string Now, string Then, IReadOnlyList<(Verdict Now, Verdict Then)> Changes, int Titles)
{
    /// <summary>The PC that the card would go into, and the card; null where no PC was named.</summary>
    public (Rig Rig, Card Card)? Into { get; private init; }

    /// <summary>Judges the library on a card, and again on what would stand in its place.</summary>
    public static WhatIfReport Of(Weighing weighing, Card now, Swap swap)
    {
        var (decisions, setups) = (weighing.Decisions, swap.SetupsOf(weighing.Decisions.Resolver));
        var changes = decisions.Titles.Select(title => (Now: decisions.On(title, now), Then: decisions.Resolver.Resolve(title, swap.Card, setups, decisions.TermsFor(title))))
            .Where(pair => LabelWording.Label(pair.Now) != LabelWording.Label(pair.Then)).ToList();
        var before = swap.IsMemoryAlone(now) ? MemoryReport.SizeText(now.Memory) : swap.Card == now ? "any driver and system" : now.Name;
        return new WhatIfReport(weighing, before, swap.Text(now), changes, decisions.Titles.Count) { Into = swap.Rig is { } rig ? (rig, swap.Card) : null };
    }

    /// <summary>How much changes.</summary>
    public string Headline
    {
        get
        {
            var better = Changes.Count(pair => OutcomeRange.Compare(pair.Then.Overall, pair.Now.Overall) < 0);
            var worse = Changes.Count(pair => OutcomeRange.Compare(pair.Then.Overall, pair.Now.Overall) > 0);
            return Changes.Count == 0
                ? $"Nothing changes in {Names.Count(Titles, "title")} with {Then} instead of {Now}."
                : $"With {Then} instead of {Now}, {Changes.Count} of {Names.Count(Titles, "title")} change: {better} for the better, {worse} for the worse{(better + worse < Changes.Count ? $", {Changes.Count - better - worse} in route or preset only" : "")}.";
        }
    }

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"{Then} instead of {Now}", Headline, Weighing.PolicyText, Into is { } into ? [FitText(into.Rig, into.Card), .. NextTestReport.SwapCautions] : [],
        [
            new Table(
                "What changes", "", [new("Title"), new("Now"), new("Then"), new("Why")],
                Changes.Select(pair => (IReadOnlyList<TableCell>)
                [
                    new TableCell(pair.Now.Title.Name), new TableCell(LabelWording.Label(pair.Now)), new TableCell(LabelWording.Label(pair.Then)),
                    new TableCell(Why(pair.Now, pair.Then)),
                ]).ToList())
            {
                WhenEmpty = "Nothing.",
            },
            .. Into is { } pc ? new[] { TimingTable(pc.Rig) } : [],
        ]);

    private static string FitText(Rig rig, Card card)
    {
        var best = rig.Slots.Count == 0 ? FitVerdict.NotKnown : rig.Slots.Min(slot => Inventory.FitOf(card, rig, slot));
        return $"{card.Name} in {Names.InMiddle(rig.Name)}: {FitWording.Verdict(best)}. The command fit says why; the documents of both boards decide.";
    }

    /// <summary>What the PC does to the titles, whatever the card (rule R12).</summary>
    private Table TimingTable(Rig rig) => new(
        $"Fast-machine warnings on {Names.InMiddle(rig.Name)}", "These are about the PC; they change no card's verdict.", [new("Title"), new("What goes wrong"), new("On this PC")],
        Weighing.Decisions.Titles.SelectMany(title => TimingRule.On(title, rig)).Where(finding => finding.State != TimingState.SeenToWork)
            .Select(finding => (IReadOnlyList<TableCell>)
                [new TableCell(finding.Title.Name), new TableCell(TimingWording.Kind(finding.Hazard.Kind)), new TableCell(TimingWording.Text(finding))]).ToList());

    private static string Why(Verdict now, Verdict then)
    {
        if (then.Setups.Count == 0)
            return "no driver there";
        if (!then.Overall.IsCertain)
            return $"{UnknownWording.Short(then.Overall.Deciding)} not known";
        if (!then.Overall.Best.Runs)
            return WhyNot.Reason(then, route => now.Headline.By.Any(by => IsSameWay(by.Route, route)));
        return then.Headline.By.Count == 0 ? "" : Names.Of(then.Headline.By[0].Route);
    }

    private static bool IsSameWay(Route one, Route other) =>
        (one.Renderer, one.Wrapper, one.Setup.Driver, one.Setup.Os) == (other.Renderer, other.Wrapper, other.Setup.Driver, other.Setup.Os);
}
