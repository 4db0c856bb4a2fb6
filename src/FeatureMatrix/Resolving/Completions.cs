using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>One completion as far as it mattered: what was settled, what came of it, and by which route.</summary>
internal sealed record Leaf<T>(IReadOnlyDictionary<UnknownFact, Support> Settled, T Result);

/// <summary>
/// Walks the completions of the unknowns (rule R13): evaluates until an unknown is needed, branches on its states, respects
/// implications. An unknown that does not matter is never branched on.
/// </summary>
internal sealed class Completions(int limit)
{
    /// <summary>How many completions the search for the best result looks at, at most.</summary>
    public const int MostTries = 20_000;

    /// <summary>An evaluation: a result, or the unknown it needs next.</summary>
    public delegate (T? Result, Question? Ask) Evaluation<T>(IReadOnlyDictionary<UnknownFact, Support> settled)
        where T : class;

    /// <summary>All leaves, or null where there are more than the limit.</summary>
    public List<Leaf<T>>? Walk<T>(Evaluation<T> evaluate)
        where T : class
    {
        var leaves = new List<Leaf<T>>();
        return Walk(evaluate, [], leaves) ? leaves : null;
    }

    private bool Walk<T>(Evaluation<T> evaluate, Dictionary<UnknownFact, Support> settled, List<Leaf<T>> leaves)
        where T : class
    {
        var (result, ask) = evaluate(settled);
        if (ask is not { } question)
        {
            if (leaves.Count == limit)
                return false;
            leaves.Add(new Leaf<T>(new Dictionary<UnknownFact, Support>(settled), result!));
            return true;
        }

        foreach (var state in Implications.Consistent(question.Unknown, question.Possible, settled))
        {
            settled[question.Unknown] = state;
            if (!Walk(evaluate, settled, leaves))
                return false;
            settled.Remove(question.Unknown);
        }

        return true;
    }

    /// <summary>
    /// The best result where there are too many leaves to walk: the most hopeful states are tried first, and the search ends
    /// at a result that cannot be bettered. Exact within <see cref="MostTries"/> leaves.
    /// </summary>
    public static T Best<T>(Evaluation<T> evaluate, Comparison<T> compare, Predicate<T> cannotBeBettered)
        where T : class
    {
        T? best = null;
        var tries = 0;
        Try([]);
        return best!;

        void Try(Dictionary<UnknownFact, Support> settled)
        {
            var (result, ask) = evaluate(settled);
            if (ask is not { } question)
            {
                tries++;
                if (best is null || compare(result!, best) < 0)
                    best = result;
                return;
            }

            foreach (var state in Implications.Consistent(question.Unknown, question.Possible, settled).Reverse())
            {
                if (tries == MostTries || (best is not null && cannotBeBettered(best)))
                    return;
                settled[question.Unknown] = state;
                Try(settled);
                settled.Remove(question.Unknown);
            }
        }
    }

    /// <summary>
    /// The unknowns for which some completion of the rest lets the answer change the result: two leaves that agree on all
    /// else, with different results.
    /// </summary>
    public static List<UnknownFact> Deciding<T>(IReadOnlyList<Leaf<T>> leaves, Func<T, T, bool> same) => Deciding(leaves, same, MayShareTheRest);

    /// <summary>
    /// As <see cref="Deciding{T}(IReadOnlyList{Leaf{T}}, Func{T, T, bool})"/>, with those that only seem to decide because of what
    /// they imply: the conditions that tell leaves with different results apart.
    /// </summary>
    public static List<UnknownFact> Parting<T>(IReadOnlyList<Leaf<T>> leaves, Func<T, T, bool> same) => Deciding(leaves, same, (_, _, _) => true);

    private static List<UnknownFact> Deciding<T>(
        IReadOnlyList<Leaf<T>> leaves, Func<T, T, bool> same,
        Func<IReadOnlyDictionary<UnknownFact, Support>, IReadOnlyDictionary<UnknownFact, Support>, UnknownFact, bool> counts)
    {
        var table = new LeafTable(leaves.Select(leaf => leaf.Settled).ToList());
        var decides = new bool[table.Columns.Count];
        for (var i = 0; i < leaves.Count; i++)
        {
            for (var j = i + 1; j < leaves.Count; j++)
            {
                var column = table.OnlyDifference(i, j);
                if (column >= 0 && !decides[column] && !same(leaves[i].Result, leaves[j].Result))
                    decides[column] = counts(leaves[i].Settled, leaves[j].Settled, table.Columns[column]);
            }
        }

        return table.Columns.Where((_, column) => decides[column]).ToList();
    }

    /// <summary>True where one completion of all else goes with both: what only one of them settled fits the other too.</summary>
    private static bool MayShareTheRest(
        IReadOnlyDictionary<UnknownFact, Support> one, IReadOnlyDictionary<UnknownFact, Support> other, UnknownFact difference)
    {
        return Fits(one, other) && Fits(other, one);

        bool Fits(IReadOnlyDictionary<UnknownFact, Support> leaf, IReadOnlyDictionary<UnknownFact, Support> rest) => rest
            .Where(pair => pair.Key != difference && !leaf.ContainsKey(pair.Key))
            .All(pair => leaf.All(settled => !Implications.Exclude(pair.Key, pair.Value, settled.Key, settled.Value)));
    }
}
