namespace FeatureMatrix.Deciding;

/// <summary>What two cards are to each other without any weights (DESIGN section 5).</summary>
public enum Dominance
{
    /// <summary>Each is better somewhere, or may be.</summary>
    None,

    /// <summary>Alike on every title in every completion.</summary>
    Equal,

    /// <summary>The first is never worse, and better somewhere in every completion.</summary>
    First,

    /// <summary>The first is never worse, and better somewhere in some completions.</summary>
    FirstPerhaps,

    /// <summary>The second is never worse, and better somewhere in every completion.</summary>
    Second,

    /// <summary>The second is never worse, and better somewhere in some completions.</summary>
    SecondPerhaps,
}
