namespace FeatureMatrix.Importing.OpenGl;

/// <summary>
/// Knows software renderers by what they call themselves. The list is data; a renderer that is not in it is taken for
/// hardware, so a report that says otherwise by another sign must be believed first.
/// </summary>
internal static class SoftwareRenderers
{
    private static readonly List<(string Where, string Words)> Signs =
        [.. ImportTables.Rows("software-renderers").Select(row => (row[0], string.Join(' ', row[1..])))];

    /// <summary>The first sign that the strings show; null where they show none.</summary>
    public static SoftwareSign? SignOf(string? renderer, string? vendor)
    {
        foreach (var (where, words) in Signs)
        {
            var text = where == "vendor" ? vendor : renderer;
            if (text?.Contains(words, StringComparison.OrdinalIgnoreCase) == true)
                return new SoftwareSign(where, words);
        }

        return null;
    }
}
