using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>Which of two cards.</summary>
public enum Side
{
    /// <summary>The first.</summary>
    First,

    /// <summary>The second.</summary>
    Second,
}

/// <summary>What one title of the library contributes on one side of a comparison.</summary>
/// <param name="Entry">The title, with its weight and tolerance.</param>
/// <param name="Side">Whose it is.</param>
/// <param name="Prospect">What may come of it.</param>
/// <param name="SoftwareRuns">True where a software renderer exists on a permitted operating system.</param>
public sealed record Stake(LibraryEntry Entry, Side Side, Prospect Prospect, bool SoftwareRuns)
{
    /// <summary>The weight in the library.</summary>
    public decimal Weight => (decimal)Entry.Weight;

    /// <summary>
    /// True where a must-have is covered at this standing: it runs with no loss above its tolerance (rule R17). Titles that are
    /// no must-haves are always covered; software rendering covers where the policy admits it.
    /// </summary>
    public bool IsCoveredAt(Standing standing, Policy policy) => Covers(Entry, standing, policy, SoftwareRuns);

    /// <summary>The same for a title whose prospect nobody asks for.</summary>
    internal static bool Covers(LibraryEntry entry, Standing standing, Policy policy, bool softwareRuns) => entry.MustHaveTolerance switch
    {
        null => true,
        _ when policy.AllowSoftware && softwareRuns => true,
        Strength.Bonus => standing == Standing.Works,
        Strength.Cosmetic => standing is { Runs: true, Severe: 0 },
        _ => standing.Runs,
    };

    /// <summary>Whether the must-have is covered over all completions.</summary>
    public Coverage CoverageUnder(Policy policy)
    {
        var covered = Prospect.Standings.Count(standing => IsCoveredAt(standing, policy));
        if (covered == Prospect.Standings.Count)
            return Coverage.Covered;
        return covered == 0 ? Coverage.Missed : Coverage.Pending;
    }
}

/// <summary>What is known of a must-have on a card.</summary>
public enum Coverage
{
    /// <summary>Covered in every completion.</summary>
    Covered,

    /// <summary>Not known.</summary>
    Pending,

    /// <summary>Missed in every completion; this eliminates a card.</summary>
    Missed,
}
