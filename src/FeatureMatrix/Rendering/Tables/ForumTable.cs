using System.Text;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>
/// Forum text: bold headings and a block of fixed-width text, which every board that knows BBCode shows alike; few know tables.
/// </summary>
public static class ForumTable
{
    /// <summary>The table as forum text.</summary>
    public static string Write(Table table)
    {
        if (table.Rows.Count == 0)
            return $"[b]{Escape(table.Title)}[/b]\n{Escape(table.Lead)}\n";
        var body = TextTable.Write(table with { Note = "" });
        var rows = body[(body.IndexOf("\n\n", StringComparison.Ordinal) + 2)..];
        var text = new StringBuilder();
        text.Append("[b]").Append(Escape(table.Title)).Append("[/b]\n");
        if (table.Note.Length > 0)
            text.Append(Escape(table.Note)).Append('\n');
        return text.Append("[code]\n").Append(Escape(rows)).Append("[/code]\n").ToString();
    }

    // A name must not open or close a tag: brackets become parentheses.
    internal static string Escape(string text) => text.Replace('[', '(').Replace(']', ')');
}
