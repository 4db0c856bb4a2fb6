using System.Text.RegularExpressions;
using FeatureMatrix.Loading.Faults;

namespace FeatureMatrix.Loading.Texts;

/// <summary>
/// The form of ids: they become file names and links, so they are small, plain and stable. Small letters only, so that no two
/// differ in case alone; no name that a system or the site itself has taken.
/// </summary>
internal static partial class Ids
{
    /// <summary>Longest id in characters; with an ending it stays well below the 255 bytes that file systems allow.</summary>
    public const int Longest = 80;

    /// <summary>True where the key is an id; a fault where it is none.</summary>
    public static bool Check(Scalar key, FaultList faults)
    {
        if (!Form().IsMatch(key.Text))
            faults.Add(FaultTexts.BadId(key.Origin, key.Text));
        else if (key.Text.Length > Longest)
            faults.Add(FaultTexts.LongId(key.Origin, key.Text));
        else if (Taken().IsMatch(key.Text))
            faults.Add(FaultTexts.TakenId(key.Origin, key.Text));
        else
            return true;
        return false;
    }

    [GeneratedRegex("^[a-z0-9]+([.-][a-z0-9]+)*\\z", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Form();

    /// <summary>
    /// Names of devices, which Windows takes for the device with any ending too (Microsoft, "Naming Files, Paths, and
    /// Namespaces"), and the name of the list page of each kind.
    /// </summary>
    [GeneratedRegex("^(con|prn|aux|nul|com[0-9]|lpt[0-9]|index)(\\..*)?$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Taken();
}
