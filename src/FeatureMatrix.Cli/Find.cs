using FeatureMatrix.Loading.Faults;

namespace FeatureMatrix.Cli;

/// <summary>Finds what a word on the command line means: an id, a name, or the beginning of either.</summary>
internal static class Find
{
    /// <summary>The one thing meant. Says what there is where nothing or several fit.</summary>
    public static T One<T>(string word, string kind, IReadOnlyList<T> all, Func<T, string> id, Func<T, string> name)
    {
        var exact = all.Where(one => id(one) == word || string.Equals(name(one), word, StringComparison.OrdinalIgnoreCase)).ToList();
        if (exact.Count == 1)
            return exact[0];
        var near = all.Where(one => id(one).Contains(word, StringComparison.OrdinalIgnoreCase)
            || name(one).Contains(word, StringComparison.OrdinalIgnoreCase)).ToList();
        if (near.Count == 1)
            return near[0];
        if (all.Count == 0)
            throw new UsageException($"No {kind} '{word}'. The collection has none.");
        var meant = Nearest.To(word, all.Select(id).Concat(all.Select(name))) is { } likely ? $" Did you mean {likely}?" : "";
        var listed = near.Count > 0 ? near : all;
        var words = string.Join(", ", listed.Take(20).Select(id));
        var more = listed.Count > 20 ? $" and {listed.Count - 20} more" : "";
        throw new UsageException(near.Count > 1 ? $"'{word}' fits more than one {kind}: {words}{more}" : $"No {kind} '{word}'.{meant} There are: {words}{more}");
    }
}
