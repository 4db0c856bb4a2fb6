using FeatureMatrix.Deciding.Fit;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>What would change on a card: another card, driver, system or PC in its place.</summary>
/// <param name="Weighing">The decisions it draws on.</param>
/// <param name="Now">What stands now, in words.</param>
/// <param name="Then">What would stand then.</param>
/// <param name="Changes">The titles that change, with both verdicts.</param>
/// <param name="Titles">How many were looked at.</param>
public sealed record WhatIfReport(Weighing Weighing, string Now, string Then, IReadOnlyList<(Verdict Now, Verdict Then)> Changes, int Titles)
{
    /// <summary>The PC that the card would go into, and the card; null where no PC was named.</summary>
    public (Rig Rig, Card Card)? Into { get; init; }

    /// <summary>Judges the library on some setups of a card, and again on others.</summary>
    public static WhatIfReport Of(Weighing weighing, string now, Func<Title, Verdict> before, string then, Func<Title, Verdict> after)
    {
        var titles = weighing.Decisions.Titles;
        var changes = titles.Select(title => (Now: before(title), Then: after(title)))
            .Where(pair => LabelWording.Label(pair.Now) != LabelWording.Label(pair.Then)).ToList();
        return new WhatIfReport(weighing, now, then, changes, titles.Count);
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
                ]).ToList()),
            .. Into is { } pc ? new[] { TimingTable(pc.Rig) } : [],
        ]);

    private static string FitText(Rig rig, Card card)
    {
        var best = rig.Slots.Count == 0 ? FitVerdict.NotKnown : rig.Slots.Min(slot => Inventory.FitOf(card, rig, slot));
        return $"{card.Name} in {Names.InMiddle(rig.Name)}: {FitWording.Verdict(best)}. The command fit says why; the documents of both boards decide.";
    }

    /// <summary>What the PC does to the titles, whatever the card (rule R12).</summary>
    private Table TimingTable(Rig rig) => new(
        $"Fast-machine warnings on {rig.Name}", "These are about the PC; they change no card's verdict.", [new("Title"), new("What goes wrong"), new("On this PC")],
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
        {
            var stopped = then.Routes.Where(finding => finding.Form.IsPermitted && finding.Form.ShutGate is not null).ToList();
            var closest = stopped.Find(finding => now.Headline.By.Any(by => IsSameWay(by.Route, finding.Route))) ?? stopped.MaxBy(finding => finding.Form.Gates.TakeWhile(gate => !gate.IsShut).Count());
            return closest is null ? "no route on record" : GateWording.Stops(closest.Form.ShutGate!, closest.Route, [closest.Route.Setup.Os.Name]);
        }

        return then.Headline.By.Count == 0 ? "" : Names.Of(then.Headline.By[0].Route);
    }

    private static bool IsSameWay(Route one, Route other) =>
        (one.Renderer, one.Wrapper, one.Setup.Driver, one.Setup.Os) == (other.Renderer, other.Wrapper, other.Setup.Driver, other.Setup.Os);
}
