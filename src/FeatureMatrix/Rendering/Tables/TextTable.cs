using System.Text;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>Plain text: columns two spaces apart, numbers to the right, long cells wrapped.</summary>
public static class TextTable
{
    private const int WidestColumn = 60;

    /// <summary>The table as plain text.</summary>
    public static string Write(Table table)
    {
        if (table.Rows.Count == 0)
            return $"{Clean(table.Title)}\n{Clean(table.Lead)}\n";
        var widths = table.Columns.Select((column, i) => Math.Min(WidestColumn, table.Rows
            .Select(row => Clean(row[i].Text).Length).Append(Clean(column.Heading).Length).Max())).ToArray();
        var text = new StringBuilder();
        text.Append(Clean(table.Title)).Append('\n');
        if (table.Note.Length > 0)
            text.Append(Clean(table.Note)).Append('\n');
        text.Append('\n');
        WriteRow(text, table, widths, table.Columns.Select(column => column.Heading).ToList());
        text.Append(string.Join("  ", widths.Select(width => new string('-', width)))).Append('\n');
        foreach (var row in table.Rows)
            WriteRow(text, table, widths, row.Select(cell => cell.Text).ToList());
        return text.ToString();
    }

    /// <summary>The text without control characters: data must not steer a terminal.</summary>
    public static string Clean(string text) =>
        text.AsSpan().IndexOfAnyInRange('\u0000', '\u001f') < 0 && text.AsSpan().IndexOfAnyInRange('\u007f', '\u009f') < 0
            ? text
            : string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));

    /// <summary>The same for a text of several lines, which keeps its line ends and tabs.</summary>
    public static string CleanLines(string text) =>
        text.Any(IsSteering) ? string.Concat(text.Select(c => IsSteering(c) ? ' ' : c)) : text;

    private static bool IsSteering(char c) => char.IsControl(c) && c is not ('\n' or '\t');

    private static void WriteRow(StringBuilder text, Table table, int[] widths, List<string> cells)
    {
        var wrapped = cells.Select((cell, i) => Wrap(Clean(cell), widths[i])).ToList();
        for (var line = 0; line < wrapped.Max(lines => lines.Count); line++)
        {
            var parts = wrapped.Select((lines, i) =>
            {
                var part = line < lines.Count ? lines[line] : "";
                return table.Columns[i].IsNumber ? part.PadLeft(widths[i]) : part.PadRight(widths[i]);
            });
            text.Append(string.Join("  ", parts).TrimEnd()).Append('\n');
        }
    }

    private static List<string> Wrap(string text, int width)
    {
        var lines = new List<string>();
        while (text.Length > width)
        {
            var at = text.LastIndexOf(' ', width);
            if (at <= 0)
                at = width;
            lines.Add(text[..at]);
            text = text[at..].TrimStart();
        }

        lines.Add(text);
        return lines;
    }
}
