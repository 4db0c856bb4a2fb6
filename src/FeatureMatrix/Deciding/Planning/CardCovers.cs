namespace FeatureMatrix.Deciding.Planning;

/// <summary>
/// How many further cards the open must-haves of a node ask for at least: as many as it takes where each card covers all that any of
/// its installs does, and no two cover the same.
/// </summary>
internal sealed class CardCovers
{
    /// <summary>Looks at the must-haves that still can be covered.</summary>
    public CardCovers(PlanTable table, PlanNode node, IReadOnlyList<int> open)
    {
        if (open.Count == 0)
            return;
        var rest = new ulong[node.Covered.Length];
        foreach (var i in open)
            rest[i / 64] |= 1ul << (i % 64);
        foreach (var move in node.Open.Where(move => node.Seating.Has(CardOf(move), move.Rig)))
            Remove(rest, table.Covers[move.Option]);
        var further = node.Open.Where(move => !node.Seating.Has(CardOf(move), move.Rig)).GroupBy(CardOf)
            .Select(moves => (Card: moves.Key, Covers: Within(moves.Select(move => table.Covers[move.Option]), rest))).ToList();
        ToAdd = Fewest(further.Select(pair => PlanTable.Count(pair.Covers)), PlanTable.Count(rest));
        if (node.Seating.FreeSlots is { } free)
            SurelyMissed = Math.Max(0, Weight(rest) - further.Select(pair => Weight(pair.Covers)).OrderDescending().Take(free).Sum());

        foreach (var pair in further.Where(pair => node.Seating.IsAtHand(pair.Card)))
            Remove(rest, pair.Covers);
        ToBuy = Fewest(
            further.Where(pair => !node.Seating.IsAtHand(pair.Card)).Select(pair => PlanTable.Count(Within([pair.Covers], rest))), PlanTable.Count(rest));

        int CardOf(PlanMove move) => table.Problem.Options[move.Option].Card;

        int Weight(ulong[] bits) => Enumerable.Range(0, table.Counts.Count).Where(i => PlanTable.Has(bits, i)).Sum(i => table.Counts[i]);
    }

    /// <summary>Must-haves for which there are too few slots, whatever is chosen.</summary>
    public int SurelyMissed { get; }

    /// <summary>Further cards at least, where all are to be covered.</summary>
    public int ToAdd { get; }

    /// <summary>How many of them have to be bought at least.</summary>
    public int ToBuy { get; }

    private static void Remove(ulong[] bits, ulong[] others)
    {
        for (var i = 0; i < bits.Length; i++)
            bits[i] &= ~others[i];
    }

    private static ulong[] Within(IEnumerable<ulong[]> several, ulong[] rest)
    {
        var bits = new ulong[rest.Length];
        foreach (var one in several)
        {
            for (var i = 0; i < bits.Length; i++)
                bits[i] |= one[i] & rest[i];
        }

        return bits;
    }

    private static int Fewest(IEnumerable<int> counts, int wanted)
    {
        var number = 0;
        foreach (var count in counts.OrderDescending())
        {
            if (wanted <= 0)
                break;
            wanted -= count;
            number++;
        }

        return number;
    }
}
