using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Advice;

/// <summary>Asks for the plans that a <see cref="PlanReport"/> shows.</summary>
internal sealed class PlanMaker
{
    private readonly Weighing _weighing;
    private readonly Inventory _inventory;
    private readonly PlanProblem _problem;
    private readonly decimal? _budget;

    private PlanMaker(Weighing weighing, decimal? budget, IReadOnlyList<Rig>? rigs)
    {
        var decisions = weighing.Decisions;
        (_weighing, _budget) = (weighing, budget);
        _inventory = Inventory.Of(weighing.Library, decisions.Catalog.Cards, rigs ?? decisions.Catalog.Rigs, decisions.RecordedSetups, decisions.On);
        _problem = Problem(price => price.High);
    }

    public static PlanReport Of(Weighing weighing, decimal? budget, IReadOnlyList<Rig>? rigs)
    {
        var maker = new PlanMaker(weighing, budget, rigs);
        var limits = new PlanLimits { Budget = budget };
        var fewest = maker.Find(PlanGoal.Fewest, limits)!;
        var room = budget is null ? limits with { MostBought = fewest.Plan.Value.Bought } : limits;
        var most = maker.Find(PlanGoal.Most, room)!;
        return new PlanReport
        {
            Weighing = weighing,
            Inventory = maker._inventory,
            Budget = budget,
            Fewest = fewest,
            Most = most,
            Alternatives = maker.Alternatives(fewest, most, limits, room).ToList(),
        };
    }

    private PlanProblem Problem(Func<PriceRange, decimal> price) => _inventory.ToProblem(
        card => _weighing.Decisions.Catalog.Specimens.Count(specimen => specimen.Owned && specimen.Card == card),
        card => _weighing.PriceOf(card) is { } range ? price(range) : null);

    private ChosenPlan? Find(PlanGoal goal, PlanLimits limits, PlanProblem? problem = null) =>
        PlanSearch.Of(problem ?? _problem, goal, limits) is { } plan ? Chosen(plan) : null;

    private ChosenPlan Chosen(Plan plan)
    {
        var rows = plan.Moves.Select(move => RowOf(move, plan)).OrderBy(row => row.Rig?.Id, StringComparer.Ordinal)
            .ThenBy(row => row.Option.Setup.Card.Id, StringComparer.Ordinal).ThenBy(row => row.Option.Setup.Os.Id, StringComparer.Ordinal)
            .ThenBy(row => row.Option.Setup.Driver.Id, StringComparer.Ordinal).ToList();
        return new ChosenPlan(plan, rows, Holding.Of(_weighing.Library, entry => rows.Select(row => _weighing.Decisions.On(entry.Title, row.Option.Setup))));
    }

    private PlannedInstall RowOf(PlanMove move, Plan plan)
    {
        var option = _inventory.Installs[move.Option];
        var seat = plan.Seats.Single(seat => seat.Rig == move.Rig && _inventory.Cards[seat.Card] == option.Setup.Card);
        var rig = _inventory.Rigs.Count == 0 ? null : _inventory.Rigs[move.Rig];
        var companion = _problem.Cards[seat.Card].Companion is { } number ? _inventory.Cards[number] : null;
        return new PlannedInstall(option, rig, seat.Slot is { } slot ? rig?.Slots[slot] : null, _problem.Cards[seat.Card].Owned == 0, companion);
    }

    private IEnumerable<PlanAlternative> Alternatives(ChosenPlan fewest, ChosenPlan most, PlanLimits limits, PlanLimits room)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { KeyOf(fewest), KeyOf(most) };
        var nearMost = room with { LeastScore = AtLeast(most) };
        if (Find(PlanGoal.Fewest, nearMost) is { } smaller && smaller.Plan.Value.Missed == most.Plan.Value.Missed && seen.Add(KeyOf(smaller)))
            yield return new PlanAlternative("Nearly the most weight with less", smaller);
        foreach (var seat in fewest.Plan.Seats.Select(seat => seat.Card).Distinct().Order())
        {
            var without = limits with { Without = new HashSet<int> { seat }, LeastScore = AtLeast(fewest), MostBought = fewest.Plan.Value.Bought };
            if (Find(PlanGoal.Fewest, without) is { } other && other.Plan.Value.Missed == fewest.Plan.Value.Missed && seen.Add(KeyOf(other)))
                yield return new PlanAlternative($"The must-haves without {_inventory.Cards[seat].Name}", other);
        }

        foreach (var seat in most.Plan.Seats.Select(seat => seat.Card).Distinct().Order())
        {
            var without = nearMost with { Without = new HashSet<int> { seat } };
            if (Find(PlanGoal.Most, without) is { } other && other.Plan.Value.Missed == most.Plan.Value.Missed && seen.Add(KeyOf(other)))
                yield return new PlanAlternative($"The most weight without {_inventory.Cards[seat].Name}", other);
        }

        if (_budget is not null && Find(PlanGoal.Fewest, limits, Problem(price => price.Low)) is { } lucky
            && lucky.Plan.Value.Missed < fewest.Plan.Value.Missed && seen.Add(KeyOf(lucky)))
        {
            yield return new PlanAlternative("Within the budget only at the lowest prices on record", lucky);
        }
    }

    private static long AtLeast(ChosenPlan chosen) => (long)(chosen.Plan.Value.Score * (1 - PlanReport.Near));

    private static string KeyOf(ChosenPlan chosen) => string.Join(';', chosen.Plan.Moves.OrderBy(move => move.Option).ThenBy(move => move.Rig));
}
