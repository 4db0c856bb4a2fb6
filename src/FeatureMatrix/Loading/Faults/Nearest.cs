namespace FeatureMatrix.Loading.Faults;

/// <summary>Finds the word somebody probably meant.</summary>
public static class Nearest
{
    /// <summary>Longer words than this are not compared: they are no typing errors of an id, and the comparison is quadratic.</summary>
    private const int LongestCompared = 64;

    /// <summary>
    /// The candidate that differs least, counting inserted, dropped, replaced and swapped letters; the order of the
    /// words between hyphens counts as one change. Null where every candidate differs in more than a third.
    /// </summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        if (word.Length > LongestCompared)
            return null;
        string? best = null;
        var least = (word.Length / 3) + 1;
        foreach (var candidate in candidates.Where(c => c.Length <= LongestCompared).Order(StringComparer.Ordinal))
        {
            var distance = Distance(word, candidate);
            if (distance < least)
            {
                least = distance;
                best = candidate;
            }
        }

        return best;
    }

    private static int Distance(string left, string right) =>
        Math.Min(Edits(left, right), 1 + Edits(InWordOrder(left), InWordOrder(right)));

    private static string InWordOrder(string id) => string.Join('-', id.Split('-').Order(StringComparer.Ordinal));

    /// <summary>Optimal string alignment distance, upper and lower case being alike.</summary>
    private static int Edits(string left, string right)
    {
        var rows = new int[left.Length + 1, right.Length + 1];
        for (var i = 0; i <= left.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= right.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= left.Length; i++)
        {
            for (var j = 1; j <= right.Length; j++)
            {
                var replaced = rows[i - 1, j - 1] + (Same(left[i - 1], right[j - 1]) ? 0 : 1);
                rows[i, j] = Math.Min(replaced, 1 + Math.Min(rows[i - 1, j], rows[i, j - 1]));
                if (i > 1 && j > 1 && Same(left[i - 1], right[j - 2]) && Same(left[i - 2], right[j - 1]))
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }

        return rows[left.Length, right.Length];

        static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
    }
}
