using System.Text.RegularExpressions;

namespace FeatureMatrix.Loading;

/// <summary>The form of ids: they become file names and links, so they are small, plain and stable.</summary>
internal static partial class Ids
{
    /// <summary>True where the key is an id; a fault where it is none.</summary>
    public static bool Check(Scalar key, FaultList faults)
    {
        if (Form().IsMatch(key.Text))
            return true;
        faults.Add(FaultTexts.BadId(key.Origin, key.Text));
        return false;
    }

    [GeneratedRegex("^[a-z0-9]+([.-][a-z0-9]+)*$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Form();
}
