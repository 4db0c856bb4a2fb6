using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>
/// What a score difference can be, kept apart by whether either side misses a must-have: four cases, each with its interval, or
/// none where no completion leads there. Both ends are reached by a completion where the groups behind it are exact.
/// </summary>
internal sealed class Tally
{
    private readonly ScoreInterval?[] _byMiss;

    private Tally(ScoreInterval?[] byMiss) => _byMiss = byMiss;

    /// <summary>Nothing counted yet.</summary>
    public static Tally Zero { get; } = new([new ScoreInterval(0, 0), null, null, null]);

    /// <summary>Something certain.</summary>
    public static Tally Of(decimal value, bool firstMisses, bool secondMisses)
    {
        var byMiss = new ScoreInterval?[4];
        byMiss[Index(firstMisses, secondMisses)] = new ScoreInterval(value, value);
        return new Tally(byMiss);
    }

    /// <summary>The interval over everything.</summary>
    public ScoreInterval Overall => _byMiss.OfType<ScoreInterval>().Aggregate((one, other) => one.Hull(other));

    /// <summary>The interval where the sides miss must-haves as stated; null where that cannot be.</summary>
    public ScoreInterval? Where(bool firstMisses, bool secondMisses) => _byMiss[Index(firstMisses, secondMisses)];

    /// <summary>True where whatever the other leaves open is open here too.</summary>
    public bool Contains(Tally other) => _byMiss.Zip(other._byMiss).All(pair => pair.Second is not { } inner || (pair.First is { } outer && outer.Contains(inner)));

    /// <summary>What a stake contributes in a branch.</summary>
    public static Tally Of(Stake stake, IReadOnlyList<Standing> standings, WorthScale scale, Policy policy)
    {
        var byMiss = new ScoreInterval?[4];
        foreach (var standing in standings)
        {
            var misses = !stake.IsCoveredAt(standing, policy);
            var worth = stake.Weight * scale.Of(standing) * (stake.Side == Side.First ? 1 : -1);
            var point = new ScoreInterval(worth, worth);
            var index = Index(misses && stake.Side == Side.First, misses && stake.Side == Side.Second);
            byMiss[index] = byMiss[index] is { } already ? already.Hull(point) : point;
        }

        return new Tally(byMiss);
    }

    /// <summary>What a group can come to.</summary>
    public static Tally Of(SharedGroup group, WorthScale scale, Policy policy) => group.Branches
        .Select(branch => group.Stakes.Select((stake, i) => Of(stake, branch.Standings[i], scale, policy)).Aggregate(Zero, (one, other) => one.And(other)))
        .Aggregate((one, other) => one.Or(other));

    /// <summary>The same with the sides exchanged.</summary>
    public Tally Mirrored() => new(
        new[] { 0, 2, 1, 3 }.Select(i => _byMiss[i] is { } interval ? new ScoreInterval(-interval.High, -interval.Low) : (ScoreInterval?)null).ToArray());

    /// <summary>Two independent parts together.</summary>
    public Tally And(Tally other)
    {
        var both = new ScoreInterval?[4];
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                if (_byMiss[i] is not { } one || other._byMiss[j] is not { } two)
                    continue;
                var sum = one + two;
                both[i | j] = both[i | j] is { } already ? already.Hull(sum) : sum;
            }
        }

        return new Tally(both);
    }

    /// <summary>Either of two.</summary>
    private Tally Or(Tally other)
    {
        var either = new ScoreInterval?[4];
        for (var i = 0; i < 4; i++)
            either[i] = (_byMiss[i], other._byMiss[i]) is ({ } one, { } two) ? one.Hull(two) : _byMiss[i] ?? other._byMiss[i];
        return new Tally(either);
    }

    private static int Index(bool firstMisses, bool secondMisses) => (firstMisses ? 1 : 0) | (secondMisses ? 2 : 0);
}
