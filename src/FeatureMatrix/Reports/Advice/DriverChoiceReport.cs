using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Advice;

/// <summary>A change between two versions of one branch.</summary>
/// <param name="From">The older version.</param>
/// <param name="To">The newer one.</param>
/// <param name="Gained">What the newer one supplies and the older one does not, as far as the library's titles ask.</param>
/// <param name="Lost">The reverse.</param>
/// <param name="Better">Titles that the newer one does better.</param>
/// <param name="Worse">Titles that it does worse.</param>
public sealed record DriverChange(
    DriverOption From, DriverOption To, IReadOnlyList<string> Gained, IReadOnlyList<string> Lost, IReadOnlyList<Title> Better, IReadOnlyList<Title> Worse);

/// <summary>Which driver serves the library best on a card, and what changes from version to version (rule R17).</summary>
public sealed record DriverChoiceReport
{
    /// <summary>The decisions it draws on.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>The operating system; null for all that the policy allows.</summary>
    public required Os? Os { get; init; }

    /// <summary>The installs, best first: most must-haves covered, then guaranteed score, then best score.</summary>
    public required IReadOnlyList<DriverOption> Options { get; init; }

    /// <summary>From version to version, oldest first.</summary>
    public required IReadOnlyList<DriverChange> Changes { get; init; }

    /// <summary>The fewest installs that give every title all that some install of the card gives it.</summary>
    public required IReadOnlyList<DriverOption> WithoutLoss { get; init; }

    /// <summary>The report for a card, on one system or on all.</summary>
    public static DriverChoiceReport Of(Weighing weighing, Card card, Os? os)
    {
        var options = weighing.InstallsOf(card).Where(option => os is null || option.Setup.Os == os).ToList();
        return new DriverChoiceReport
        {
            Weighing = weighing,
            Card = card,
            Os = os,
            Options = options,
            Changes = ChangesOf(weighing, options),
            WithoutLoss = FewestWithoutLoss(options),
        };
    }

    /// <summary>The best install, and whether one is enough.</summary>
    public string Headline
    {
        get
        {
            if (Options.Count == 0)
                return $"No driver on record brings {Card.Name} up{(Os is null ? "" : $" under {Os.Name}")} on this policy.";
            var best = Options[0];
            var missed = best.Holding.NotCovered;
            var musts = missed.Count == 0
                ? best.Holding.Covered.Count > 0 ? "it covers every must-have" : $"it scores {DecisionWording.Interval(best.Holding.Score)}"
                : $"it leaves {Names.List(missed.Select(entry => entry.Title.Name).ToList())} uncovered";
            var several = WithoutLoss.Count > 1
                ? $" No one install works without loss: it takes {Names.List(WithoutLoss.Select(option => Names.Of(option.Setup)).ToList())} to give every title the best this card can do."
                : "";
            return $"Install {Names.Of(best.Setup)} on {Card.Name}: {musts}.{several}";
        }
    }

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"Drivers for {Card.Name}{(Os is null ? "" : $" on {Os.Name}")}", Headline, Weighing.PolicyText,
        Options.Any(option => option.Setup.Install == Install.Forced) ? [ExplanationBuilder.ForcedCaution] : [],
        [
            new Table(
                "Installs, best first", "Most must-haves covered, then the guaranteed score, then the best score.",
                [new("Driver and system"), new("Must-haves covered", true), new("Not covered"), new("Score")],
                Options.Select(option => (IReadOnlyList<TableCell>)
                [
                    new TableCell(Names.Of(option.Setup)), new TableCell($"{option.Holding.Covered.Count}", option.Holding.Covered.Count),
                    new TableCell(Names.List(option.Holding.NotCovered.Select(entry => entry.Title.Name).ToList())),
                    new TableCell(DecisionWording.Interval(option.Holding.Score)),
                ]).ToList()),
            new Table(
                "From version to version", "Features as far as the library's titles ask for them.",
                [new("From"), new("To"), new("Gained"), new("Lost"), new("Better"), new("Worse")],
                Changes.Select(change => (IReadOnlyList<TableCell>)
                [
                    new TableCell(Names.Of(change.From.Setup)), new TableCell(Names.Of(change.To.Setup)),
                    new TableCell(Names.List(change.Gained)), new TableCell(Names.List(change.Lost)),
                    new TableCell(Names.List(change.Better.Select(title => title.Name).ToList())),
                    new TableCell(Names.List(change.Worse.Select(title => title.Name).ToList())),
                ]).ToList()),
        ]);

    /// <summary>The best install of each card, for every format.</summary>
    public static Table TableOf(IReadOnlyList<DriverChoiceReport> reports) => new(
        "What to install on each card", "The one install that serves the library best: most must-haves covered, then the guaranteed score, then the best score.",
        [new("Card"), new("Driver and system"), new("Must-haves covered", true), new("Not covered"), new("Score"), new("Installs for every title at its best", true)],
        reports.Select(report => (IReadOnlyList<TableCell>)(report.Options.Count == 0
            ? [new(report.Card.Name), new("none on record"), new("0", 0), new(""), new(""), new("0", 0)]
            :
            [
                new(report.Card.Name), new(Names.Of(report.Options[0].Setup)),
                new($"{report.Options[0].Holding.Covered.Count}", report.Options[0].Holding.Covered.Count),
                new(Names.List(report.Options[0].Holding.NotCovered.Select(entry => entry.Title.Name).ToList())),
                new(DecisionWording.Interval(report.Options[0].Holding.Score)), new($"{report.WithoutLoss.Count}", report.WithoutLoss.Count),
            ])).ToList());

    private static List<DriverChange> ChangesOf(Weighing weighing, List<DriverOption> options)
    {
        var changes = new List<DriverChange>();
        foreach (var branch in options.GroupBy(option => (option.Setup.Os, option.Setup.Driver.Branch)).OrderBy(branch => branch.Key.Os.Id, StringComparer.Ordinal)
            .ThenBy(branch => branch.Key.Branch.Id, StringComparer.Ordinal))
        {
            var versions = branch.OrderBy(option => option.Setup.Driver.Order).ToList();
            for (var i = 0; i + 1 < versions.Count; i++)
                changes.Add(ChangeOf(weighing, versions[i], versions[i + 1]));
        }

        return changes;
    }

    private static DriverChange ChangeOf(Weighing weighing, DriverOption from, DriverOption to)
    {
        var supply = weighing.Decisions.Resolver.Supply;
        List<string> gained = [], lost = [];
        var asked = weighing.Library.Entries.SelectMany(entry => entry.Title.Renderers).Where(renderer => renderer.Api is not null)
            .SelectMany(renderer => renderer.Needs.SelectMany(need => need.Choices).Append(renderer.Api!.Value).Select(capability => (capability, api: renderer.Api!.Value.Feature)))
            .Distinct().OrderBy(pair => pair.capability.Feature.Id, StringComparer.Ordinal).ThenBy(pair => pair.capability.Step).ThenBy(pair => pair.api.Id, StringComparer.Ordinal);
        foreach (var (capability, api) in asked)
        {
            var before = supply.Ask(capability, from.Setup, api);
            var after = supply.Ask(capability, to.Setup, api);
            if (!before.IsSettled || !after.IsSettled || before.Support == after.Support)
                continue;
            var name = capability.Feature.IsApi ? Names.Api(capability) : $"{Names.Of(capability)} ({api.Name})";
            (after.Support > before.Support ? gained : lost).Add(name);
        }

        var over = weighing.Library.Entries.Select((entry, i) => (entry.Title, difference: to.Holding.Over(from.Holding, i))).ToList();
        return new DriverChange(
            from, to, gained, lost, over.Where(pair => pair.difference.Low > 0).Select(pair => pair.Title).ToList(),
            over.Where(pair => pair.difference.High < 0).Select(pair => pair.Title).ToList());
    }

    private static List<DriverOption> FewestWithoutLoss(List<DriverOption> options)
    {
        if (options.Count == 0)
            return [];
        var titles = Enumerable.Range(0, options[0].Holding.Stakes.Count)
            .Select(i => (i, best: options.Max(option => option.Holding.Stakes[i].Prospect.Worst)))
            .Where(pair => options.Exists(option => option.Holding.Stakes[pair.i].Prospect.Worst < pair.best)).ToList();
        if (titles.Count == 0)
            return [options[0]];
        // The titles that differ take the place of must-haves; of equally few installs those that come first here.
        var offers = options.Select((option, number) => new PlanOption(
            0, number, [0], Enumerable.Range(0, titles.Count).Where(i => option.Holding.Stakes[titles[i].i].Prospect.Worst == titles[i].best).ToList(), [])).ToList();
        var problem = new PlanProblem([new PlanCard(1, null, null, "", [[]])], [new PlanRig(null, null)], offers, titles.Count, OneDriverPerSystem: false);
        return PlanSearch.Of(problem, PlanGoal.Fewest)!.Moves.Select(move => move.Option).Order().Select(option => options[option]).ToList();
    }
}
