using System.Text;
using System.Text.Json;
using FeatureMatrix.Reports.Advice;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>Writes a whole decision: headline, policy and cautions, then its tables in one format.</summary>
public static class ReportWriter
{
    private static readonly JsonWriterOptions Indented = new() { Indented = true, NewLine = "\n" };

    /// <summary>
    /// The report. In CSV only the tables are written, an empty line between two; every other format carries the sentence and the
    /// policy too.
    /// </summary>
    public static string Write(DecisionReport report, TableFormat format) => format switch
    {
        TableFormat.Json => Json(report),
        TableFormat.Csv => string.Join("\n", report.Tables.Select(table => TableWriter.Write(table, format))),
        TableFormat.Text => Lines(report, format, text => TextTable.Clean(text)),
        TableFormat.Markdown => Lines(report, format, MarkdownTable.Escape),
        TableFormat.Forum => Lines(report, format, ForumTable.Escape),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Lines(DecisionReport report, TableFormat format, Func<string, string> escape)
    {
        var text = new StringBuilder();
        foreach (var line in (string[])[report.Title, report.Headline, report.PolicyText, .. report.Cautions])
            text.Append(escape(line)).Append("\n\n");
        return text.AppendJoin("\n", report.Tables.Select(table => TableWriter.Write(table, format))).ToString();
    }

    private static string Json(DecisionReport report)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Indented))
        {
            json.WriteStartObject();
            json.WriteString("title", report.Title);
            json.WriteString("headline", report.Headline);
            json.WriteString("policy", report.PolicyText);
            json.WriteStartArray("cautions");
            foreach (var caution in report.Cautions)
                json.WriteStringValue(caution);
            json.WriteEndArray();
            json.WriteStartArray("tables");
            foreach (var table in report.Tables)
                JsonTable.Write(json, table);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
