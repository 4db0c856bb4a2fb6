using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>How a title fares where these unknowns have these states; whatever else is open does not matter there.</summary>
public sealed record ProspectCase(IReadOnlyList<KeyValuePair<UnknownFact, Support>> Settled, Standing Standing);

/// <summary>
/// What may come of one title on one card: its standing as a function of the unknowns that matter to it. Worked out once and
/// then joined with others, so that a ranking of many cards resolves nothing twice.
/// </summary>
public sealed class Prospect
{
    private IReadOnlyList<UnknownFact>? _unknowns;

    private Prospect(IReadOnlyList<ProspectCase> cases, bool isExact)
    {
        Cases = cases;
        IsExact = isExact;
        Standings = cases.Select(one => one.Standing).Distinct().Order().ToList();
    }

    /// <summary>
    /// Cases that together cover every completion; where two overlap they have the same standing. Past the limit on completions
    /// two bounds without conditions.
    /// </summary>
    public IReadOnlyList<ProspectCase> Cases { get; }

    /// <summary>False past the limit, where only sound bounds are known.</summary>
    public bool IsExact { get; }

    /// <summary>Every standing that may come of it, worst first.</summary>
    public IReadOnlyList<Standing> Standings { get; }

    /// <summary>The standing of the worst completion.</summary>
    public Standing Worst => Standings[0];

    /// <summary>The standing of the best completion.</summary>
    public Standing Best => Standings[^1];

    /// <summary>True where every completion gives the same standing.</summary>
    public bool IsCertain => Standings.Count == 1;

    /// <summary>The unknowns that matter, in the order in which a person would check them.</summary>
    public IReadOnlyList<UnknownFact> Unknowns => _unknowns ??= Cases.SelectMany(one => one.Settled).Select(pair => pair.Key).Distinct().ToList();

    /// <summary>A prospect of which nothing is open.</summary>
    public static Prospect Certain(Standing standing) => new([new ProspectCase([], standing)], true);

    /// <summary>Where there are too many completions to walk: nothing but a floor and a ceiling.</summary>
    public static Prospect Between(Standing worst, Standing best) =>
        new(worst == best ? [new ProspectCase([], worst)] : [new ProspectCase([], worst), new ProspectCase([], best)], worst == best);

    /// <summary>From the leaves of a walk: unknowns that change nothing are left out.</summary>
    internal static Prospect From(IReadOnlyList<Leaf<StandingResult>> leaves)
    {
        var deciding = Completions.Parting(leaves, (one, other) => one.Standing == other.Standing).ToHashSet();
        var cases = new List<ProspectCase>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var numbers = new Dictionary<UnknownFact, int>();
        foreach (var leaf in leaves)
        {
            var settled = leaf.Settled.Where(pair => deciding.Contains(pair.Key)).ToList();
            if (seen.Add(Signature(settled, leaf.Result.Standing, numbers)))
                cases.Add(new ProspectCase(settled, leaf.Result.Standing));
        }

        return new Prospect(cases, true);
    }

    /// <summary>What is left of it once an unknown is known.</summary>
    public Prospect Settle(UnknownFact unknown, Support state)
    {
        if (!Unknowns.Any(other => Implications.AreLinked(unknown, other)))
            return this;
        return new Prospect(Cases.Where(one => one.Settled.All(pair => pair.Key == unknown
            ? pair.Value == state
            : !Implications.Exclude(unknown, state, pair.Key, pair.Value))).ToList(), IsExact);
    }

    private static string Signature(
        List<KeyValuePair<UnknownFact, Support>> settled, Standing standing, Dictionary<UnknownFact, int> numbers)
    {
        var parts = settled.Select(pair =>
        {
            if (!numbers.TryGetValue(pair.Key, out var number))
                numbers[pair.Key] = number = numbers.Count;
            return $"{number}={(int)pair.Value}";
        }).Order(StringComparer.Ordinal);
        return $"{standing}:{string.Join(',', parts)}";
    }
}

/// <summary>A standing as the result of a walk.</summary>
internal sealed record StandingResult(Standing Standing);

/// <summary>Whether states of unknowns go together.</summary>
internal static class Settlement
{
    /// <summary>True where the case is possible beside what is settled: no other state, and nothing that an implication rules out.</summary>
    public static bool Allows(IReadOnlyDictionary<UnknownFact, Support> settled, ProspectCase one)
    {
        foreach (var (unknown, state) in one.Settled)
        {
            if (settled.TryGetValue(unknown, out var already))
            {
                if (already != state)
                    return false;
            }
            else if (!IsConsistent(unknown, state, settled))
                return false;
        }

        return true;
    }

    /// <summary>True where the implications of the vocabulary leave the state open.</summary>
    public static bool IsConsistent(UnknownFact unknown, Support state, IReadOnlyDictionary<UnknownFact, Support> settled) =>
        Implications.Consistent(unknown, [Support.No, state == Support.No ? Support.Yes : state], settled).Contains(state);
}
