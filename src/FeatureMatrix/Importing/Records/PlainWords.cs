namespace FeatureMatrix.Importing.Records;

/// <summary>Foreign text made fit for a collection's file.</summary>
public static class PlainWords
{
    /// <summary>
    /// The text with everything but printable characters replaced by a question mark, in one line of at most 200 characters:
    /// reports hold whatever a driver wrote.
    /// </summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var cut = text.Length > 200 ? text[..200] : text;
        return string.Concat(cut.Select(c => c is >= ' ' and <= '~' or >= '\u00a1' and < '\ud800' ? c : '?')).Trim();
    }

    /// <summary>A text as an id: small letters and digits, all else as single hyphens; empty where nothing is left.</summary>
    public static string AsId(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = string.Concat(text.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return string.Join('-', parts);
    }
}
