using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>What a rig does to a title that a fast machine breaks (rule R12). Never part of a card's cell or score.</summary>
public enum TimingState
{
    /// <summary>Seen to work at this clock or a higher one of the family.</summary>
    SeenToWork,

    /// <summary>Between a clock at which it works and one at which it fails, or outside what was seen.</summary>
    NotKnown,

    /// <summary>Seen to fail at this clock or a lower one of the family.</summary>
    Fails,

    /// <summary>A sighting of "works" lies above one of "fails": a conflict, not an interval.</summary>
    Conflict,

    /// <summary>The frame rate sets it off; the rig alone does not decide.</summary>
    FollowsFrameRate,
}

/// <summary>The interval in which a hazard begins, for one processor family.</summary>
/// <param name="WorksTo">The highest clock, in MHz, at which it was seen to work; null for none.</param>
/// <param name="FailsFrom">The lowest clock, in MHz, at which it was seen to fail; null for none.</param>
public readonly record struct TimingThreshold(double? WorksTo, double? FailsFrom)
{
    /// <summary>True where a "works" lies above a "fails".</summary>
    public bool IsConflict => WorksTo >= FailsFrom;
}

/// <summary>One hazard of one title on one rig.</summary>
public sealed record TimingFinding(Title Title, Rig Rig, TimingHazard Hazard, TimingState State, TimingThreshold Threshold);

/// <summary>Rule R12.</summary>
public static class TimingRule
{
    /// <summary>What a rig does to a title: one finding for each hazard.</summary>
    /// <example>Seen to work at 1000 MHz and to fail at 2400 MHz of a family: at 1400 MHz nobody knows.</example>
    public static IReadOnlyList<TimingFinding> On(Title title, Rig rig) =>
        title.Hazards.Select(hazard => Find(title, rig, hazard)).ToList();

    /// <summary>The interval of a hazard for one processor family.</summary>
    public static TimingThreshold Threshold(TimingHazard hazard, string family)
    {
        // Hearsay moves no threshold (rule R1).
        var sightings = hazard.Sightings.Where(seen => seen.ProcessorFamily == family && seen.Evidence.Grade > Grade.Hearsay).ToList();
        return new TimingThreshold(
            sightings.Where(seen => seen.Works).Select(seen => (double?)seen.Megahertz).Max(),
            sightings.Where(seen => !seen.Works).Select(seen => (double?)seen.Megahertz).Min());
    }

    private static TimingFinding Find(Title title, Rig rig, TimingHazard hazard)
    {
        var threshold = Threshold(hazard, rig.ProcessorFamily);
        return new TimingFinding(title, rig, hazard, StateOf(hazard, rig, threshold), threshold);
    }

    private static TimingState StateOf(TimingHazard hazard, Rig rig, TimingThreshold threshold)
    {
        if (hazard.Kind == TimingHazardKind.UnsynchronisedCores && rig.Cores == 1)
            return TimingState.SeenToWork;
        if (hazard.FollowsFrameRate)
            return TimingState.FollowsFrameRate;
        if (threshold.IsConflict)
            return TimingState.Conflict;
        if (rig.Megahertz is not { } clock)
            return TimingState.NotKnown;
        if (clock <= threshold.WorksTo)
            return TimingState.SeenToWork;
        return clock >= threshold.FailsFrom ? TimingState.Fails : TimingState.NotKnown;
    }
}
