namespace FeatureMatrix.Deciding.Planning;

/// <summary>
/// The best plan, by branch and bound: first over the must-have that fewest installs cover, then, where score counts, over the install
/// that adds most. Exact unless the work runs out; then the best plan found, and a bound that no plan passes.
/// </summary>
public sealed class PlanSearch
{
    /// <summary>How many comparisons one search makes before it stops; some seconds.</summary>
    private const long MostWork = 600_000_000;

    private readonly PlanTable _table;
    private readonly PlanGoal _goal;
    private readonly PlanLimits _limits;
    private PlanNode? _best;
    private PlanValue _bestValue;
    private long _work;

    private PlanSearch(PlanProblem problem, PlanGoal goal, PlanLimits limits)
    {
        (_goal, _limits) = (goal, limits);
        _table = new PlanTable(problem, limits);
    }

    /// <summary>The best plan within the limits; null where none reaches the least score.</summary>
    public static Plan? Of(PlanProblem problem, PlanGoal goal, PlanLimits? limits = null)
    {
        limits ??= new PlanLimits();
        var plan = new PlanSearch(problem, goal, limits).Run();
        if (goal == PlanGoal.Fewest || plan is not { IsProved: true })
            return plan;
        // The most score is known now; what remains is the cheapest way to it.
        var cheapest = new PlanSearch(problem, PlanGoal.Fewest, limits with { LeastScore = plan.Value.Score }).Run();
        return cheapest is null || plan.Value.Against(cheapest.Value, goal) < 0 ? plan with { IsProved = false } : cheapest;
    }

    private Plan? Run()
    {
        var root = PlanNode.Root(_table, _limits);
        var bound = new PlanBound(_table, root, _limits.LeastScore).Optimistic(_goal, null);
        Try(root);
        if (_best is not { } best)
            return null;
        var covered = best.Moves.SelectMany(move => _table.Problem.Options[move.Option].Covers).ToHashSet();
        return new Plan(
            best.Moves, best.Seating.Seated(), _bestValue, Enumerable.Range(0, _table.Problem.MustHaves).Where(must => !covered.Contains(must)).ToList(),
            _work < MostWork, _work < MostWork ? _bestValue : bound);
    }

    private void Try(PlanNode node)
    {
        if (_work >= MostWork)
            return;
        var bound = new PlanBound(_table, node, _limits.LeastScore);
        var optimistic = bound.Optimistic(_goal, _best is null ? null : _bestValue);
        _work += bound.Work;
        if (optimistic.Score < _limits.LeastScore || (_best is not null && !MayBeBetter(optimistic)))
            return;
        if (bound.Hardest is { } hardest)
        {
            TryToCover(node, hardest);
            return;
        }

        var suffices = node.Value.Score >= _limits.LeastScore;
        if (suffices && (_best is null || node.Value.Against(_bestValue, _goal) < 0))
            (_best, _bestValue) = (node, node.Value);
        // With every must-have decided a further install only costs more.
        if (suffices && _goal == PlanGoal.Fewest)
            return;
        if (!suffices && bound.Forced is { } forced)
        {
            TryEach(node, forced);
            return;
        }

        _work += node.Open.Count * (long)_table.Titles;
        if (bound.MostGaining is not { } next)
            return;
        if (node.With(next) is { } with)
            Try(with);
        Try(node.Without([next]));
    }

    private bool MayBeBetter(PlanValue value) => _goal == PlanGoal.Most
        ? value.Missed < _bestValue.Missed || (value.Missed == _bestValue.Missed && value.Score > _bestValue.Score)
        : value.Against(_bestValue, _goal) < 0;

    /// <summary>One of the installs that cover the must-have, or none of them.</summary>
    private void TryToCover(PlanNode node, int must)
    {
        _work += node.Open.Count * (long)_table.Titles;
        var covering = node.Open.Where(move => PlanTable.Has(_table.Covers[move.Option], must))
            .OrderByDescending(move => PlanTable.Count(node.NewlyCovered(move))).ThenByDescending(move => node.Seating.Has(_table.Problem.Options[move.Option].Card, move.Rig))
            .ThenByDescending(move => node.Seating.IsAtHand(_table.Problem.Options[move.Option].Card)).ThenByDescending(node.Gain)
            .ThenBy(move => move.Option).ThenBy(move => move.Rig).ToList();
        Try(TryEach(node, covering));
    }

    /// <summary>Each install in turn, without those before it; what is left without any of them.</summary>
    private PlanNode TryEach(PlanNode node, IReadOnlyList<PlanMove> moves)
    {
        foreach (var move in moves)
        {
            if (node.With(move) is { } with)
                Try(with);
            node = node.Without([move]);
        }

        return node;
    }
}
