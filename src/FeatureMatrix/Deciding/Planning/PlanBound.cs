namespace FeatureMatrix.Deciding.Planning;

/// <summary>What may come of a node at best, and where to branch.</summary>
internal sealed class PlanBound
{
    private readonly PlanTable _table;
    private readonly PlanNode _node;
    private readonly long _leastScore;
    private readonly int[] _coveredBy;

    /// <summary>Looks at a node's open moves; the plan has to reach the least score.</summary>
    public PlanBound(PlanTable table, PlanNode node, long leastScore)
    {
        (_table, _node, _leastScore) = (table, node, leastScore);
        _coveredBy = new int[table.Counts.Count];
        foreach (var move in node.Open)
        {
            for (var i = 0; i < _coveredBy.Length; i++)
                _coveredBy[i] += PlanTable.Has(table.Covers[move.Option], i) ? 1 : 0;
        }

        Work = 1 + (node.Open.Count * (long)_coveredBy.Length);
        Hardest = Uncovered.Where(i => _coveredBy[i] > 0).Select(i => (int?)i).MinBy(i => _coveredBy[i!.Value]);
    }

    /// <summary>The must-have to decide next; null where none is open.</summary>
    public int? Hardest { get; }

    /// <summary>Comparisons made so far.</summary>
    public long Work { get; private set; }

    /// <summary>The open move that adds most score; null where none adds any.</summary>
    public PlanMove? MostGaining
    {
        get
        {
            var best = _node.Open.Select(move => (Move: move, Gain: _node.Gain(move))).Where(pair => pair.Gain > 0).ToList();
            return best.Count == 0 ? null : best.MaxBy(pair => pair.Gain).Move;
        }
    }

    /// <summary>
    /// The moves of which one has to be made to reach the least score: those that give some title its best, where its next best is too
    /// little even with every other title at its best. Null where no title forces one.
    /// </summary>
    public IReadOnlyList<PlanMove>? Forced
    {
        get
        {
            Work += _node.Open.Count * (long)_table.Titles * 2;
            var best = Raised(_node.Worths, _node.Open);
            var spare = best.Sum() - _leastScore;
            IReadOnlyList<PlanMove>? forced = null;
            for (var i = 0; i < best.Length; i++)
            {
                if (best[i] - _node.Worths[i] <= spare)
                    continue;
                var next = _node.Open.Select(move => _table.Worths[move.Option][i]).Append(_node.Worths[i]).Where(worth => worth < best[i]).Max();
                if (best[i] - next <= spare)
                    continue;
                var moves = _node.Open.Where(move => _table.Worths[move.Option][i] == best[i]).ToList();
                if (forced is null || moves.Count < forced.Count)
                    forced = moves;
            }

            return forced;
        }
    }

    private IEnumerable<int> Uncovered => Enumerable.Range(0, _coveredBy.Length).Where(i => !PlanTable.Has(_node.Covered, i));

    /// <summary>
    /// A value that nothing below the node betters: in the order of the goal, since a must-have given up costs more than anything that
    /// giving it up saves.
    /// </summary>
    public PlanValue Optimistic(PlanGoal goal, PlanValue? best)
    {
        var now = _node.Value;
        var open = Uncovered.Where(i => _coveredBy[i] > 0).ToList();
        var missed = _table.Missing + Uncovered.Where(i => _coveredBy[i] == 0).Sum(i => _table.Counts[i]);
        var cards = new CardCovers(_table, _node, open);
        Work += _node.Open.Count * (long)(open.Count + 1);
        var value = now with { Missed = missed + cards.SurelyMissed, Rigs = Math.Max(now.Rigs, open.Count > 0 ? 1 : 0), Score = long.MaxValue };
        // Where not all can be covered, nobody knows which are given up, and so nothing more is sure to be needed.
        if (cards.SurelyMissed == 0)
        {
            var most = open.Count == 0 ? 1 : _node.Open.Max(move => PlanTable.Count(_node.NewlyCovered(move)));
            value = value with
            {
                Bought = now.Bought + cards.ToBuy,
                Cards = now.Cards + cards.ToAdd,
                Installs = now.Installs + Math.Max((open.Count + most - 1) / most, cards.ToAdd),
            };
        }

        // The score is worth working out only where it can decide.
        if (best is { } known && value.Against(known, goal) >= 0)
            return value;
        value = value with { Score = MostScore(goal == PlanGoal.Fewest && best is { } other && IsSameCount(value, other) ? other.Installs - now.Installs : null) };
        return _leastScore > now.Score ? value with { Installs = Math.Max(value.Installs, now.Installs + FewestToGain(_leastScore - now.Score)) } : value;
    }

    /// <summary>Installs that it takes at least to gain so much, each gain counted by itself.</summary>
    private int FewestToGain(long wanted)
    {
        var number = 0;
        foreach (var gain in _node.Open.Select(_node.Gain).OrderDescending().TakeWhile(_ => wanted > 0))
        {
            wanted -= gain;
            number++;
        }

        return number;
    }

    private static bool IsSameCount(PlanValue one, PlanValue other) =>
        (one.Missed, one.Bought, one.Cards, one.Rigs) == (other.Missed, other.Bought, other.Cards, other.Rigs);

    private int CardOf(PlanMove move) => _table.Problem.Options[move.Option].Card;

    /// <summary>
    /// The least of three: every open install taken; those of seated cards and of as many further cards as there are slots, each gain
    /// counted by itself; as many single installs as may follow.
    /// </summary>
    private long MostScore(int? installsLeft)
    {
        Work += _node.Open.Count * (long)_table.Titles * 2;
        var seated = Raised(_node.Worths, _node.Open.Where(move => _node.Seating.Has(CardOf(move), move.Rig)));
        var score = Raised(seated, _node.Open).Sum();
        if (_node.Seating.FreeSlots is { } free)
        {
            var gains = _node.Open.Where(move => !_node.Seating.Has(CardOf(move), move.Rig)).GroupBy(CardOf)
                .Select(moves => (Gain: Raised(seated, moves).Sum() - seated.Sum(), _table.Problem.Cards[moves.Key].Copies)).ToList();
            score = Math.Min(score, seated.Sum() + gains.Select(pair => pair.Gain).OrderDescending().Take(free).Sum());
        }

        if (installsLeft is { } installs)
            score = Math.Min(score, _node.Value.Score + _node.Open.Select(_node.Gain).OrderDescending().Take(Math.Max(0, installs)).Sum());
        return score;
    }

    private long[] Raised(long[] worths, IEnumerable<PlanMove> moves)
    {
        var raised = (long[])worths.Clone();
        foreach (var option in moves.Select(move => move.Option).Distinct())
        {
            var other = _table.Worths[option];
            for (var i = 0; i < raised.Length; i++)
                raised[i] = Math.Max(raised[i], other[i]);
        }

        return raised;
    }
}
