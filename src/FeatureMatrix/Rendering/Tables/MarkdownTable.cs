using System.Text;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>A Markdown table with pipes, as most forges and note programs read it.</summary>
public static class MarkdownTable
{
    /// <summary>The table as Markdown.</summary>
    public static string Write(Table table)
    {
        var text = new StringBuilder();
        text.Append("**").Append(Escape(table.Title)).Append("**\n\n");
        if (table.Rows.Count == 0)
            return text.Append(Escape(table.Lead)).Append('\n').ToString();
        if (table.Note.Length > 0)
            text.Append(Escape(table.Note)).Append("\n\n");
        Row(text, table.Columns.Select(column => column.Heading));
        text.Append('|').AppendJoin('|', table.Columns.Select(column => column.IsNumber ? " ---: " : " --- ")).Append("|\n");
        foreach (var row in table.Rows)
            Row(text, row.Select(cell => cell.Text));
        return text.ToString();
    }

    private static void Row(StringBuilder text, IEnumerable<string> cells) =>
        text.Append("| ").AppendJoin(" | ", cells.Select(Escape)).Append(" |\n");

    // Every character that could start a construct of Markdown or HTML is escaped; line ends become spaces.
    internal static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in TextTable.Clean(text))
        {
            if (c is '\\' or '|' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '&' or '#' or '!' or '~')
                escaped.Append('\\');
            escaped.Append(c);
        }

        return escaped.ToString();
    }
}
