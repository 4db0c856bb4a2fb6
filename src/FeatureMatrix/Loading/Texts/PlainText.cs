namespace FeatureMatrix.Loading.Texts;

/// <summary>What a text may hold.</summary>
internal static class PlainText
{
    /// <summary>
    /// The first character that neither a web page nor a workbook can hold: control characters other than tab and line end,
    /// half surrogate pairs, U+FFFE and U+FFFF. Null where there is none.
    /// </summary>
    public static char? FirstForbidden(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (IsForbidden(text, i))
                return text[i];
        }

        return null;
    }

    private static bool IsForbidden(string text, int i)
    {
        var c = text[i];
        if (char.IsHighSurrogate(c))
            return i + 1 == text.Length || !char.IsLowSurrogate(text[i + 1]);
        if (char.IsLowSurrogate(c))
            return i == 0 || !char.IsHighSurrogate(text[i - 1]);
        return (char.IsControl(c) && c is not ('\t' or '\n' or '\r')) || c is '\uFFFE' or '\uFFFF';
    }
}
