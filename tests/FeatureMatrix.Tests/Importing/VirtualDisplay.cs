using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing;

/// <summary>Runs a graphical program on a display of its own in memory (Debian package xvfb).</summary>
internal static class VirtualDisplay
{
    private static int _started;

    /// <summary>
    /// Standard output of the program. Each start begins its search for a free display elsewhere: two that begin at the same
    /// number at the same time can both take it, and the one that ends first takes the display from the other.
    /// </summary>
    public static string Run(IEnumerable<string> command, params (string Name, string Value)[] environment)
    {
        var first = 1000 + (Environment.ProcessId % 3000 * 10) + Interlocked.Increment(ref _started);
        return Tool.Run(
            External.Command("xvfb-run", "xvfb"),
            ["-n", first.ToString(System.Globalization.CultureInfo.InvariantCulture), "-a", .. command],
            environment);
    }
}
