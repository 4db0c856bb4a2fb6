using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>How a need is not met.</summary>
public enum LossKind
{
    /// <summary>The capability is missing.</summary>
    Missing,

    /// <summary>It is claimed, but the picture is wrong.</summary>
    WrongPicture,

    /// <summary>It is emulated where the need asks for hardware.</summary>
    NotInHardware,
}

/// <summary>A need known not to be met. Two losses are equal where need, strength and kind are.</summary>
/// <param name="Choices">What would have met the need, in order.</param>
/// <param name="Strength">Cosmetic, ungraded or severe.</param>
/// <param name="Kind">How it is not met.</param>
/// <param name="Need">The need, for its effect and source.</param>
public sealed record Loss(IReadOnlyList<Capability> Choices, Strength Strength, LossKind Kind, Need Need)
{
    /// <inheritdoc/>
    public bool Equals(Loss? other) =>
        other is not null && Strength == other.Strength && Kind == other.Kind && Choices.SequenceEqual(other.Choices);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Choices[0], Choices.Count, Strength, Kind);
}

/// <summary>
/// What happens on one route in one completion: it runs, with these losses, or it does not run. Ordered by rule R14.
/// </summary>
public sealed class Outcome : IEquatable<Outcome>
{
    private Outcome(bool runs, IReadOnlyList<Loss> losses)
    {
        Runs = runs;
        Losses = losses;
        foreach (var loss in losses)
        {
            switch (loss.Strength)
            {
                case Strength.Severe: Severe++; break;
                case Strength.Ungraded: Ungraded++; break;
                case Strength.Cosmetic: Cosmetic++; break;
                default: throw new ArgumentOutOfRangeException(nameof(losses));
            }
        }
    }

    /// <summary>It does not run.</summary>
    public static Outcome DoesNotRun { get; } = new(false, []);

    /// <summary>It runs with nothing lost.</summary>
    public static Outcome Works { get; } = new(true, []);

    /// <summary>True where it runs.</summary>
    public bool Runs { get; }

    /// <summary>What is lost, severest first.</summary>
    public IReadOnlyList<Loss> Losses { get; }

    /// <summary>The number of severe losses.</summary>
    public int Severe { get; }

    /// <summary>The number of ungraded losses.</summary>
    public int Ungraded { get; }

    /// <summary>The number of cosmetic losses.</summary>
    public int Cosmetic { get; }

    /// <summary>It runs with these losses.</summary>
    public static Outcome RunsWith(IEnumerable<Loss> losses)
    {
        var ordered = new List<Loss>();
        foreach (var loss in losses)
        {
            // Losses are few and come nearly in order; those that are equal stay in the order in which they came.
            var at = ordered.Count;
            while (at > 0 && CompareForReading(ordered[at - 1], loss) > 0)
                at--;
            ordered.Insert(at, loss);
        }

        return ordered.Count == 0 ? Works : new Outcome(true, ordered);
    }

    /// <summary>The severest first, then by feature and level, so that the order of needs does not matter.</summary>
    private static int CompareForReading(Loss one, Loss other)
    {
        var result = other.Strength.CompareTo(one.Strength);
        if (result == 0)
            result = string.CompareOrdinal(one.Choices[0].Feature.Id, other.Choices[0].Feature.Id);
        return result != 0 ? result : one.Choices[0].Step.CompareTo(other.Choices[0].Step);
    }

    /// <summary>
    /// Negative where the first is better: running before not running, then fewer severe losses, then fewer cosmetic ones,
    /// where an ungraded loss counts as severe; then the same with ungraded losses as cosmetic (rules R14 and R16).
    /// </summary>
    public static int CompareWorst(Outcome one, Outcome other)
    {
        var result = CompareAtWorst(one, other);
        return result != 0 ? result : one.Severe.CompareTo(other.Severe);
    }

    /// <summary>As <see cref="CompareWorst"/>, but an ungraded loss counts as cosmetic first.</summary>
    public static int CompareBest(Outcome one, Outcome other)
    {
        var result = CompareAtBest(one, other);
        return result != 0 ? result : one.Ungraded.CompareTo(other.Ungraded);
    }

    /// <summary>As <see cref="CompareWorst"/>, but equal where ungraded losses that turn out severe make them so.</summary>
    internal static int CompareAtWorst(Outcome one, Outcome other)
    {
        var result = other.Runs.CompareTo(one.Runs);
        if (result == 0)
            result = (one.Severe + one.Ungraded).CompareTo(other.Severe + other.Ungraded);
        return result != 0 ? result : one.Cosmetic.CompareTo(other.Cosmetic);
    }

    /// <summary>As <see cref="CompareBest"/>, but equal where ungraded losses that turn out cosmetic make them so.</summary>
    internal static int CompareAtBest(Outcome one, Outcome other)
    {
        var result = other.Runs.CompareTo(one.Runs);
        if (result == 0)
            result = one.Severe.CompareTo(other.Severe);
        return result != 0 ? result : (one.Cosmetic + one.Ungraded).CompareTo(other.Cosmetic + other.Ungraded);
    }

    /// <inheritdoc/>
    public bool Equals(Outcome? other)
    {
        if (ReferenceEquals(this, other))
            return true;
        return other is not null && Runs == other.Runs && Severe == other.Severe && Losses.Count == other.Losses.Count
            && Losses.SequenceEqual(other.Losses);
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Outcome);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Runs, Severe, Ungraded, Cosmetic, Losses.Count > 0 ? Losses[0].GetHashCode() : 0);

    /// <inheritdoc/>
    public override string ToString() =>
        Runs ? string.Join(", ", Losses.Select(loss => $"{loss.Strength} {loss.Choices[0]} {loss.Kind}").Prepend("runs")) : "does not run";
}
