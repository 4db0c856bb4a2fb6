using FeatureMatrix.Deciding.Planning;

namespace FeatureMatrix.Tests.Deciding.Planning;

/// <summary>Brute force: every set of installs in every rig, each checked and valued from the definitions.</summary>
internal static class EveryPlan
{
    /// <summary>The best value; null where no set keeps to the limits.</summary>
    public static PlanValue? Best(PlanProblem problem, PlanGoal goal, PlanLimits limits)
    {
        var moves = problem.Options.SelectMany((option, i) => option.Rigs.Select(rig => (Option: i, Rig: rig))).ToList();
        PlanValue? best = null;
        for (var set = 0; set < 1 << moves.Count; set++)
        {
            var chosen = moves.Where((_, i) => (set >> i & 1) != 0).ToList();
            if (ValueOf(problem, chosen, limits) is { } value && value.Score >= limits.LeastScore
                && (best is null || Precedes(PlanProblems.Key(value, goal), PlanProblems.Key(best.Value, goal))))
            {
                best = value;
            }
        }

        return best;
    }

    private static bool Precedes(decimal[] one, decimal[] other)
    {
        var i = Enumerable.Range(0, one.Length).Cast<int?>().FirstOrDefault(i => one[i!.Value] != other[i.Value]);
        return i is { } place && one[place] < other[place];
    }

    /// <summary>What a set comes to; null where it breaks a limit.</summary>
    public static PlanValue? ValueOf(PlanProblem problem, IReadOnlyList<(int Option, int Rig)> chosen, PlanLimits limits)
    {
        var seats = chosen.Select(move => (problem.Options[move.Option].Card, move.Rig)).ToHashSet();
        for (var before = -1; before != seats.Count;)
        {
            before = seats.Count;
            seats.UnionWith(seats.Where(seat => problem.Cards[seat.Card].Companion is not null).Select(seat => (problem.Cards[seat.Card].Companion!.Value, seat.Rig)).ToList());
        }

        var boards = seats.Select(seat => seat.Card).Distinct().ToList();
        var bought = boards.Where(board => problem.Cards[board].Owned == 0).ToList();
        var price = bought.Sum(board => problem.Cards[board].Price ?? 0);
        var unpriced = bought.Count(board => problem.Cards[board].Price is null);
        if (boards.Exists(limits.Without.Contains) || boards.Exists(board => seats.Count(seat => seat.Card == board) > Math.Max(1, problem.Cards[board].Owned))
            || bought.Count > limits.MostBought || (limits.Budget is { } budget && (unpriced > 0 || price > budget)))
        {
            return null;
        }

        var doubts = 0;
        for (var rig = 0; rig < problem.Rigs.Count; rig++)
        {
            var inside = seats.Where(seat => seat.Rig == rig).Select(seat => problem.Cards[seat.Card]).ToList();
            if (problem.Rigs[rig].Slots is not null)
            {
                if (FewestDoubts(inside, rig, 0, []) is not { } here)
                    return null;
                doubts += here;
            }

            if (problem.Rigs[rig].Plugs is { } plugs && inside.Count(board => board.Plug == "plug") > plugs.Count)
                return null;
        }

        if (problem.OneDriverPerSystem && chosen.GroupBy(move => (problem.Options[move.Option].Card, move.Rig, problem.Options[move.Option].System)).Any(group => group.Count() > 1))
            return null;
        var covered = chosen.SelectMany(move => problem.Options[move.Option].Covers).ToHashSet();
        var titles = problem.Options.Count == 0 ? 0 : problem.Options[0].Worths.Count;
        var score = Enumerable.Range(0, titles).Sum(title => chosen.Select(move => problem.Options[move.Option].Worths[title]).DefaultIfEmpty(0).Max());
        return new PlanValue(
            problem.MustHaves - covered.Count, bought.Count, seats.Count, seats.Select(seat => seat.Rig).Distinct().Count(), chosen.Count, doubts, score, unpriced, price);
    }

    private static int? FewestDoubts(List<PlanCard> boards, int rig, int from, HashSet<int> taken)
    {
        if (from == boards.Count)
            return 0;
        int? fewest = null;
        foreach (var slot in boards[from].Slots[rig].Where(slot => !taken.Contains(slot.Number)).ToList())
        {
            taken.Add(slot.Number);
            if (FewestDoubts(boards, rig, from + 1, taken) is { } rest && !(fewest <= rest + (slot.IsDoubtful ? 1 : 0)))
                fewest = rest + (slot.IsDoubtful ? 1 : 0);
            taken.Remove(slot.Number);
        }

        return fewest;
    }
}
