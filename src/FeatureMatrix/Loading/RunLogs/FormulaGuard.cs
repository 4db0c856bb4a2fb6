namespace FeatureMatrix.Loading.RunLogs;

/// <summary>
/// Keeps free text from being taken for a formula by a spreadsheet that opens the file: a cell that begins with
/// <c>=</c>, <c>+</c>, <c>-</c>, <c>@</c>, tab or carriage return gets a leading apostrophe. So that every text comes back as it was, one that begins with
/// apostrophes and then one of these gets one more, and reading takes just one away.
/// </summary>
internal static class FormulaGuard
{
    public static string Neutralise(string text) => LooksLikeFormula(text.TrimStart('\'')) ? "'" + text : text;

    public static string Restore(string text) =>
        text.StartsWith('\'') && LooksLikeFormula(text.TrimStart('\'')) ? text[1..] : text;

    private static bool LooksLikeFormula(string text) =>
        text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r';
}
