using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// What having one capability says about others: higher levels contain lower ones, and the vocabulary declares the rest
/// (rule R2). Closed under "and so on".
/// </summary>
public sealed class Implications
{
    private static readonly IReadOnlyList<Capability> Nothing = [];
    private readonly Dictionary<Capability, IReadOnlyList<Capability>> _weaker = [];
    private readonly Dictionary<Capability, IReadOnlyList<Capability>> _stronger = [];
    private readonly Dictionary<Capability, IReadOnlyCollection<Capability>> _tied = [];

    /// <summary>Works out the closure over a vocabulary.</summary>
    public Implications(IReadOnlyList<Feature> features)
    {
        var all = features.SelectMany(feature => Enumerable.Range(1, feature.Steps).Select(feature.At)).ToList();
        // Only ladders and features that take part in a declared implication have anything to say.
        var linked = features.Where(feature => feature.Implies.Count > 0)
            .SelectMany(feature => (IEnumerable<Feature>)[feature, .. feature.Implies.Select(implied => implied.Feature)]).ToHashSet();
        foreach (var one in all.Where(capability => capability.Feature.HasLevels || linked.Contains(capability.Feature)))
        {
            _weaker[one] = all.Where(other => other != one && one.Implies(other)).ToList();
            _stronger[one] = all.Where(other => other != one && other.Implies(one)).ToList();
        }
    }

    /// <summary>What having this one implies.</summary>
    public IReadOnlyList<Capability> WeakerThan(Capability capability) => _weaker.GetValueOrDefault(capability, Nothing);

    /// <summary>What would imply this one.</summary>
    public IReadOnlyList<Capability> StrongerThan(Capability capability) => _stronger.GetValueOrDefault(capability, Nothing);

    /// <summary>The capability and all that implications tie to it, directly or through others, in either direction.</summary>
    public IReadOnlyCollection<Capability> TiedTo(Capability capability)
    {
        if (_tied.TryGetValue(capability, out var tied))
            return tied;
        var found = new HashSet<Capability> { capability };
        var open = new Queue<Capability>(found);
        while (open.TryDequeue(out var next))
        {
            foreach (var neighbour in WeakerThan(next).Concat(StrongerThan(next)).Where(found.Add))
                open.Enqueue(neighbour);
        }

        foreach (var one in found)
            _tied[one] = found;
        return found;
    }

    /// <summary>
    /// Narrows an open answer by what is known of stronger and weaker capabilities. Facts that contradict each other across
    /// an implication leave it as it was; the loader reports those.
    /// </summary>
    /// <example>Alpha palettes are documented, plain palettes are silent: plain palettes are there too.</example>
    public Answer Apply(Capability capability, Answer stated, Func<Capability, Answer> ask)
    {
        if (stated.IsSettled)
            return stated;
        var weaker = WeakerThan(capability);
        var stronger = StrongerThan(capability);
        if (weaker.Count == 0 && stronger.Count == 0)
            return stated;

        var present = stronger.Select(ask).FirstOrDefault(answer => answer.IsCertainlyPresent);
        var missing = weaker.Select(ask).FirstOrDefault(answer => answer.IsCertainlyMissing);
        if ((present is null) == (missing is null))
            return stated;

        var left = stated.Possible.Where(state => (state == Support.No) == (missing is not null)).ToList();
        var cause = missing is null ? present! : missing;
        return left.Count switch
        {
            0 => stated,
            1 => stated with
            {
                Support = left[0],
                Open = null,
                Possible = [],
                Reason = AnswerReason.Implied,
                Grade = cause.Grade ?? Grade.Inferred,
                Facts = [.. stated.Facts, .. cause.Facts],
            },
            _ => stated with { Possible = left },
        };
    }

    /// <summary>
    /// The states an unknown supply may still take, given what a completion has settled so far (rule R13: implications are
    /// respected).
    /// </summary>
    public static IReadOnlyList<Support> Consistent(
        UnknownFact unknown, IReadOnlyList<Support> possible, IReadOnlyDictionary<UnknownFact, Support> settled)
    {
        var mustBePresent = false;
        var mustBeMissing = false;
        foreach (var (other, state) in settled)
        {
            mustBePresent |= state != Support.No && Implies(other, unknown);
            mustBeMissing |= state == Support.No && Implies(unknown, other);
        }

        if (mustBePresent == mustBeMissing)
            return possible;
        var left = possible.Where(state => (state == Support.No) == mustBeMissing).ToList();
        return left.Count == 0 ? possible : left;
    }

    /// <summary>True where settling one of the two may say something about the other.</summary>
    public static bool AreLinked(UnknownFact one, UnknownFact other) => one == other || Implies(one, other) || Implies(other, one);

    /// <summary>True where the two states cannot be together: something present, and something that it implies missing.</summary>
    public static bool Exclude(UnknownFact one, Support state, UnknownFact other, Support otherState) =>
        (state != Support.No && otherState == Support.No && Implies(one, other))
        || (state == Support.No && otherState != Support.No && Implies(other, one));

    /// <summary>True where the other holds wherever the one does.</summary>
    private static bool Implies(UnknownFact one, UnknownFact other) => (one, other) switch
    {
        (UnknownFact.Supply a, UnknownFact.Supply b) =>
            a.Chip == b.Chip && a.Card == b.Card && a.Driver == b.Driver && a.Os == b.Os && a.Api == b.Api
            && a.Capability.Implies(b.Capability),
        (UnknownFact.WrapperSupply a, UnknownFact.WrapperSupply b) => a.Wrapper == b.Wrapper && a.Capability.Implies(b.Capability),
        (UnknownFact.Runtime a, UnknownFact.Runtime b) => a.Os == b.Os && a.Level.Implies(b.Level),
        _ => false,
    };
}
