namespace FeatureMatrix.Deciding.Planning;

/// <summary>A part of a plan: what is installed, and what still may be. Immutable.</summary>
internal sealed class PlanNode
{
    private readonly PlanTable _table;

    private PlanNode(PlanTable table, Seating seating, IReadOnlyList<PlanMove> moves, IReadOnlyList<PlanMove> open, ulong[] covered, long[] worths)
    {
        (_table, Seating, Moves, Open, Covered, Worths) = (table, seating, moves, open, covered, worths);
        var missed = table.Missing;
        for (var i = 0; i < table.Counts.Count; i++)
            missed += PlanTable.Has(covered, i) ? 0 : table.Counts[i];
        Value = new PlanValue(missed, seating.Bought, seating.Seats.Count, seating.Rigs, moves.Count, seating.Doubts, worths.Sum(), seating.Unpriced, seating.Price);
    }

    /// <summary>Which boards sit where.</summary>
    public Seating Seating { get; }

    /// <summary>What is installed.</summary>
    public IReadOnlyList<PlanMove> Moves { get; }

    /// <summary>What still may be installed.</summary>
    public IReadOnlyList<PlanMove> Open { get; }

    /// <summary>The must-haves covered.</summary>
    public ulong[] Covered { get; }

    /// <summary>For each title the best worth so far.</summary>
    public long[] Worths { get; }

    /// <summary>What it comes to as it is.</summary>
    public PlanValue Value { get; }

    /// <summary>Nothing installed.</summary>
    public static PlanNode Root(PlanTable table, PlanLimits limits) =>
        new(table, Seating.Empty(table.Problem, limits), [], table.Moves, new ulong[(table.Counts.Count + 63) / 64], new long[table.Titles]);

    /// <summary>The must-haves that a move would add.</summary>
    public ulong[] NewlyCovered(PlanMove move) => _table.Covers[move.Option].Zip(Covered, (one, other) => one & ~other).ToArray();

    /// <summary>The score that a move would add.</summary>
    public long Gain(PlanMove move)
    {
        var gain = 0L;
        var worths = _table.Worths[move.Option];
        for (var i = 0; i < worths.Length; i++)
            gain += Math.Max(0, worths[i] - Worths[i]);
        return gain;
    }

    /// <summary>With one more install; null where its card finds no place.</summary>
    public PlanNode? With(PlanMove move)
    {
        var option = _table.Problem.Options[move.Option];
        if (Seating.With(option.Card, move.Rig) is not { } seating)
            return null;
        var places = new Dictionary<(int, int), bool>();
        var open = Open.Where(other => other != move && MayFollow(other)).ToList();
        return new PlanNode(
            _table, seating, [.. Moves, move], open, _table.Covers[move.Option].Zip(Covered, (one, two) => one | two).ToArray(),
            _table.Worths[move.Option].Zip(Worths, Math.Max).ToArray());

        bool MayFollow(PlanMove other)
        {
            var next = _table.Problem.Options[other.Option];
            if (_table.Problem.OneDriverPerSystem && next.Card == option.Card && other.Rig == move.Rig && next.System == option.System)
                return false;
            if (!places.TryGetValue((next.Card, other.Rig), out var fits))
                places[(next.Card, other.Rig)] = fits = seating.With(next.Card, other.Rig) is not null;
            return fits;
        }
    }

    /// <summary>With some installs ruled out.</summary>
    public PlanNode Without(IReadOnlyList<PlanMove> moves) =>
        new(_table, Seating, Moves, Open.Where(move => !moves.Contains(move)).ToList(), Covered, Worths);
}
