namespace FeatureMatrix.Rendering.Workbook;

/// <summary>How many lines a text takes in a column.</summary>
internal static class TextLines
{
    /// <summary>Lines of a text that wraps between words, or within a word that is longer than a line.</summary>
    /// <param name="text">The text.</param>
    /// <param name="width">Characters a line; at least 1 is assumed.</param>
    public static int Count(string text, double width)
    {
        var perLine = Math.Max(1, (int)width);
        return text.Split('\n').Sum(line => LinesOf(line, perLine));
    }

    private static int LinesOf(string line, int perLine)
    {
        var (lines, used) = (1, 0);
        foreach (var length in line.Split(' ').Select(word => word.Length))
        {
            if (used > 0 && used + 1 + length > perLine)
                (lines, used) = (lines + 1, 0);
            used += length + (used > 0 ? 1 : 0);
            if (used > perLine)
                (lines, used) = (lines + ((used - 1) / perLine), ((used - 1) % perLine) + 1);
        }

        return lines;
    }
}
