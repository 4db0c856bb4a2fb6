namespace FeatureMatrix.Deciding.Planning;

/// <summary>Boards in slots, as few of them as can be where the documents do not say that they agree.</summary>
/// <param name="Slots">For each board its slot.</param>
/// <param name="Doubts">How many sit where something is not documented.</param>
internal sealed record SlotMatching(IReadOnlyList<int> Slots, int Doubts)
{
    /// <summary>The cheapest matching, by shortest augmenting paths; null where the boards do not all find a slot.</summary>
    public static SlotMatching? Of(IReadOnlyList<IReadOnlyList<PlanSlot>> boards, int slots)
    {
        if (boards.Count > slots)
            return null;
        var takenBy = Enumerable.Repeat(-1, slots).ToArray();
        for (var board = 0; board < boards.Count; board++)
        {
            if (!Augment(boards, takenBy, board))
                return null;
        }

        var chosen = boards.Select((_, board) => Array.IndexOf(takenBy, board)).ToList();
        return new SlotMatching(chosen, chosen.Where((slot, board) => Cost(boards, board, slot) > 0).Count());
    }

    /// <summary>Bellman and Ford's search for the cheapest way to free a slot: a board that moves gives its cost back.</summary>
    private static bool Augment(IReadOnlyList<IReadOnlyList<PlanSlot>> boards, int[] takenBy, int start)
    {
        var costs = Enumerable.Repeat(int.MaxValue, takenBy.Length).ToArray();
        var from = new int[takenBy.Length];
        Relax(start, -1, 0);
        for (var changed = true; changed;)
        {
            changed = false;
            for (var slot = 0; slot < costs.Length; slot++)
            {
                if (costs[slot] != int.MaxValue && takenBy[slot] >= 0)
                    changed |= Relax(takenBy[slot], slot, costs[slot] - Cost(boards, takenBy[slot], slot));
            }
        }

        var free = Enumerable.Range(0, costs.Length).Where(slot => takenBy[slot] < 0 && costs[slot] != int.MaxValue).Cast<int?>().MinBy(slot => costs[slot!.Value]);
        for (var slot = free; slot is { } one; slot = from[one] < 0 ? null : from[one])
            takenBy[one] = from[one] < 0 ? start : takenBy[from[one]];
        return free is not null;

        bool Relax(int board, int via, int cost)
        {
            var changed = false;
            foreach (var slot in boards[board].Where(slot => slot.Number != via && cost + (slot.IsDoubtful ? 1 : 0) < costs[slot.Number]))
            {
                costs[slot.Number] = cost + (slot.IsDoubtful ? 1 : 0);
                from[slot.Number] = via;
                changed = true;
            }

            return changed;
        }
    }

    private static int Cost(IReadOnlyList<IReadOnlyList<PlanSlot>> boards, int board, int slot) =>
        boards[board].First(one => one.Number == slot).IsDoubtful ? 1 : 0;
}
