using System.Text;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>
/// Comma-separated values as in RFC 4180, with line feeds. A cell that a spreadsheet would take for a formula gets a leading
/// apostrophe, so that names and notes stay text.
/// </summary>
public static class CsvTable
{
    private static readonly System.Buffers.SearchValues<char> NeedQuotes = System.Buffers.SearchValues.Create(",\"\r\n");

    /// <summary>The table as comma-separated values: a heading line, then the rows.</summary>
    public static string Write(Table table)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', table.Columns.Select(column => Quote(column.Heading))).Append('\n');
        foreach (var row in table.Rows)
            text.AppendJoin(',', row.Select(cell => cell.Number is { } number ? Number(number) : Quote(cell.Text))).Append('\n');
        return text.ToString();
    }

    private static string Number(double number) => number.ToString("R", System.Globalization.CultureInfo.InvariantCulture);

    private static string Quote(string text)
    {
        if (text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r')
            text = "'" + text;
        return text.AsSpan().ContainsAny(NeedQuotes) ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
    }
}
