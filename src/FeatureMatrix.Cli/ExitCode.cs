namespace FeatureMatrix.Cli;

/// <summary>What the process returns.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Fine = 0;

    /// <summary>The data has faults, or something could not be read or written.</summary>
    public const int Faults = 1;

    /// <summary>The command line is wrong.</summary>
    public const int Usage = 2;
}
