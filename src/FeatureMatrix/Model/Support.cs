namespace FeatureMatrix.Model;

/// <summary>
/// What a card, driver or wrapper supplies of one capability (rule R2). Ordered so that <em>and</em> is the minimum and
/// <em>or</em> the maximum; the default is <see cref="Unknown"/>, because no record is never a "no".
/// </summary>
public enum Support
{
    /// <summary>Known not to be there.</summary>
    No = -2,

    /// <summary>Claimed by the card or driver, but the picture is wrong.</summary>
    Broken = -1,

    /// <summary>Nobody recorded it, the interface cannot report it, or the records disagree.</summary>
    Unknown = 0,

    /// <summary>There, but computed by driver or wrapper; meets a need unless the need asks for hardware.</summary>
    Emulated = 1,

    /// <summary>There, in hardware.</summary>
    Yes = 2,
}
