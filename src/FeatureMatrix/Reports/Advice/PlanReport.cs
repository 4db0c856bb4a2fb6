using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Advice;

/// <summary>A plan in the terms of the collection.</summary>
/// <param name="Plan">The plan by numbers.</param>
/// <param name="Rows">Its installs, rig by rig.</param>
/// <param name="Together">Everything that it gives, with what is open settled alike for all installs.</param>
public sealed record ChosenPlan(Plan Plan, IReadOnlyList<PlannedInstall> Rows, Holding Together);

/// <summary>One install of a plan.</summary>
/// <param name="Option">What is installed.</param>
/// <param name="Rig">The PC; null where the collection records none.</param>
/// <param name="Slot">The slot; null where the rig's slots are not recorded.</param>
/// <param name="IsToBuy">True where the card is not owned.</param>
/// <param name="Companion">The card that an add-in needs beside it; null for none.</param>
public sealed record PlannedInstall(DriverOption Option, Rig? Rig, RigSlot? Slot, bool IsToBuy, Card? Companion)
{
    /// <summary>The board, and its companion.</summary>
    public IEnumerable<Card> Boards => Companion is null ? [Option.Setup.Card] : [Option.Setup.Card, Companion];
}

/// <summary>Another plan that comes close.</summary>
/// <param name="What">How it differs.</param>
/// <param name="Chosen">The plan.</param>
public sealed record PlanAlternative(string What, ChosenPlan Chosen);

/// <summary>
/// The fewest cards, rigs and installs that cover all must-haves, starting from what is owned; then the most weight that the same
/// slots and the budget give; and what comes close to either.
/// </summary>
public sealed record PlanReport
{
    /// <summary>Alternatives come within this share of the score they are held against.</summary>
    public const decimal Near = 0.05m;

    /// <summary>The decisions it draws on.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>What there was to choose from.</summary>
    public required Inventory Inventory { get; init; }

    /// <summary>What all boards to buy may cost together; null for no limit.</summary>
    public required decimal? Budget { get; init; }

    /// <summary>The fewest for the must-haves.</summary>
    public required ChosenPlan Fewest { get; init; }

    /// <summary>The most weight; where no budget was stated it buys no more boards than the must-haves ask for.</summary>
    public required ChosenPlan Most { get; init; }

    /// <summary>Plans that come close.</summary>
    public required IReadOnlyList<PlanAlternative> Alternatives { get; init; }

    /// <summary>Must-haves that the plan does not cover for certain.</summary>
    public IReadOnlyList<LibraryEntry> Uncovered => Fewest.Plan.Missed.Select(i => Inventory.MustHaves[i]).ToList();

    /// <summary>Plans a library.</summary>
    /// <param name="weighing">The library and what is known.</param>
    /// <param name="budget">What all boards to buy may cost together, at the highest price on record; null for no limit.</param>
    /// <param name="rigs">The rigs to plan for; all of the collection where none is named.</param>
    public static PlanReport Of(Weighing weighing, decimal? budget = null, IReadOnlyList<Rig>? rigs = null) => PlanMaker.Of(weighing, budget, rigs);

    /// <summary>The plan in a sentence or two.</summary>
    public string Headline => PlanWording.Headline(this);

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport()
    {
        var tables = new List<Table> { InstallTable("For the must-haves", Fewest), InstallTable("For the most weight", Most) };
        if (Alternatives.Count > 0)
            tables.Add(AlternativeTable());
        if (Uncovered.Count > 0)
            tables.Add(UncoveredTable());
        if (TimingTable() is { Rows.Count: > 0 } timing)
            tables.Add(timing);
        return new DecisionReport($"Plan for {Names.InMiddle(Weighing.Library.Name)}", Headline, Weighing.PolicyText, PlanWording.Cautions(this), tables);
    }

    private Table InstallTable(string title, ChosenPlan chosen) => new(
        title, PlanWording.Note(this, chosen),
        [new("PC"), new("Slot"), new("Card"), new("Driver and system"), new("Covers"), new("To pay"), new("Slot and card")],
        chosen.Rows.Select(row => (IReadOnlyList<TableCell>)
        [
            new TableCell(row.Rig?.Name ?? "any"), new TableCell(row.Slot?.Bus.Name ?? "not recorded"),
            new TableCell(row.Companion is { } companion ? $"{row.Option.Setup.Card.Name}, beside {companion.Name}" : row.Option.Setup.Card.Name),
            new TableCell(Names.Of(row.Option.Setup)), new TableCell(Names.List(row.Option.Holding.Covered.Select(entry => entry.Title.Name).ToList())),
            new TableCell(row.IsToBuy ? DecisionWording.Price(Weighing.PriceOf(row.Option.Setup.Card)) : "owned"),
            new TableCell(row is { Rig: { } rig, Slot: { } slot } ? FitWording.Verdict(Inventory.FitOf(row.Option.Setup.Card, rig, slot)) : "check both documents"),
        ]).ToList());

    private Table AlternativeTable() => new(
        "Close alternatives", $"Plans that cover as many must-haves and score no more than {DecisionWording.Number(Near * 100)} % less.",
        [new("What"), new("Cards", true), new("Installs", true), new("Buys"), new("Guaranteed score", true), new("How")],
        Alternatives.Select(alternative => (IReadOnlyList<TableCell>)
        [
            new TableCell(alternative.What), new TableCell($"{alternative.Chosen.Plan.Value.Cards}", alternative.Chosen.Plan.Value.Cards),
            new TableCell($"{alternative.Chosen.Plan.Value.Installs}", alternative.Chosen.Plan.Value.Installs),
            new TableCell(PlanWording.Buys(this, alternative.Chosen)),
            new TableCell(DecisionWording.Number(alternative.Chosen.Plan.Value.ScoreNumber), (double)alternative.Chosen.Plan.Value.ScoreNumber),
            new TableCell(PlanWording.InstallList(alternative.Chosen)),
        ]).ToList());

    private Table UncoveredTable() => new(
        "Not covered for certain", "", [new("Must-have"), new("Why")],
        Uncovered.Select(entry => (IReadOnlyList<TableCell>)[new TableCell(entry.Title.Name), new TableCell(PlanWording.WhyUncovered(this, entry))]).ToList());

    /// <summary>Rule R12: what a rig does to titles never changes the plan, but nobody should find out on the evening.</summary>
    private Table TimingTable() => new(
        "Fast-machine warnings", "About the PCs of the plan for the must-haves; they never change which cards it takes.", [new("Must-have"), new("PC"), new("Warning")],
        Fewest.Rows.Where(row => row.Rig is not null).SelectMany(row => row.Option.Holding.Covered.Select(entry => (row.Rig, entry.Title))).Distinct()
            .SelectMany(pair => TimingRule.On(pair.Title, pair.Rig!)).Where(finding => finding.State != TimingState.SeenToWork)
            .Select(finding => (IReadOnlyList<TableCell>)
                [new TableCell(finding.Title.Name), new TableCell(finding.Rig.Name), new TableCell(TimingWording.Text(finding))]).ToList());
}
