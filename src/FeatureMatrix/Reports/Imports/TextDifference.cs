namespace FeatureMatrix.Reports.Imports;

/// <summary>What a line of a difference is.</summary>
public enum DifferenceKind
{
    /// <summary>In both texts; shown around a change so that its place is seen.</summary>
    Same,

    /// <summary>In the second text only.</summary>
    Added,

    /// <summary>In the first text only.</summary>
    Gone,

    /// <summary>Lines in both texts that are not shown.</summary>
    Skipped,
}

/// <summary>One line of a difference.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Number">Its number, counted from 1: in the first text if gone, else in the second; the first of those skipped.</param>
/// <param name="Text">The line without its end.</param>
public sealed record DifferenceLine(DifferenceKind Kind, int Number, string Text);

/// <summary>Two texts, line by line, by the longest common subsequence of what differs.</summary>
public static class TextDifference
{
    private const int Around = 2;

    /// <summary>Past this many pairs of lines what differs is shown as one block gone and one added.</summary>
    private const long MostPairs = 4_000_000;

    /// <summary>The lines that differ, each with two lines around it; empty where the texts are equal.</summary>
    public static IReadOnlyList<DifferenceLine> Of(string before, string after)
    {
        var (old, now) = (Lines(before), Lines(after));
        var first = 0;
        while (first < old.Length && first < now.Length && old[first] == now[first])
            first++;
        var (oldEnd, newEnd) = (old.Length, now.Length);
        while (oldEnd > first && newEnd > first && old[oldEnd - 1] == now[newEnd - 1])
            (oldEnd, newEnd) = (oldEnd - 1, newEnd - 1);

        var all = new List<DifferenceLine>();
        for (var i = 0; i < first; i++)
            all.Add(new(DifferenceKind.Same, i + 1, now[i]));
        all.AddRange(Middle(old, now, first, oldEnd, newEnd));
        for (var i = newEnd; i < now.Length; i++)
            all.Add(new(DifferenceKind.Same, i + 1, now[i]));
        return Shortened(all);
    }

    private static string[] Lines(string text) =>
        text.Length == 0 ? [] : text.TrimStart('\uFEFF').Replace("\r\n", "\n", StringComparison.Ordinal).TrimEnd('\n').Split('\n');

    private static IEnumerable<DifferenceLine> Middle(string[] old, string[] now, int first, int oldEnd, int newEnd)
    {
        var (rows, columns) = (oldEnd - first, newEnd - first);
        var common = (long)rows * columns <= MostPairs ? Common(old, now, first, rows, columns) : null;
        var (i, j) = (0, 0);
        while (i < rows || j < columns)
        {
            if (common is not null && i < rows && j < columns && old[first + i] == now[first + j])
            {
                yield return new(DifferenceKind.Same, first + j + 1, now[first + j]);
                (i, j) = (i + 1, j + 1);
            }
            else if (i < rows && (j == columns || common is null || common[i + 1, j] >= common[i, j + 1]))
            {
                yield return new(DifferenceKind.Gone, first + i + 1, old[first + i]);
                i++;
            }
            else
            {
                yield return new(DifferenceKind.Added, first + j + 1, now[first + j]);
                j++;
            }
        }
    }

    /// <summary>Length of the longest common subsequence of what is left from each pair of places on.</summary>
    private static int[,] Common(string[] old, string[] now, int first, int rows, int columns)
    {
        var length = new int[rows + 1, columns + 1];
        for (var i = rows - 1; i >= 0; i--)
        {
            for (var j = columns - 1; j >= 0; j--)
            {
                length[i, j] = old[first + i] == now[first + j]
                    ? length[i + 1, j + 1] + 1
                    : Math.Max(length[i + 1, j], length[i, j + 1]);
            }
        }

        return length;
    }

    private static List<DifferenceLine> Shortened(List<DifferenceLine> all)
    {
        var result = new List<DifferenceLine>();
        var shown = new bool[all.Count];
        for (var i = 0; i < all.Count; i++)
        {
            if (all[i].Kind == DifferenceKind.Same)
                continue;
            for (var k = Math.Max(0, i - Around); k <= Math.Min(all.Count - 1, i + Around); k++)
                shown[k] = true;
        }

        for (var i = 0; i < all.Count && shown.Contains(true); i++)
        {
            if (shown[i])
                result.Add(all[i]);
            else if (i == 0 || shown[i - 1])
                result.Add(new(DifferenceKind.Skipped, all[i].Number, ""));
        }

        return result;
    }
}
