using System.Text;
using System.Text.Json;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>JSON: title, note, columns, and rows as arrays of texts, or of numbers where a cell has one.</summary>
public static class JsonTable
{
    private static readonly JsonWriterOptions Indented = new() { Indented = true, NewLine = "\n" };

    /// <summary>The table as JSON.</summary>
    public static string Write(Table table)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Indented))
            Write(json, table);
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>The table as one object of a larger document.</summary>
    internal static void Write(Utf8JsonWriter json, Table table)
    {
        json.WriteStartObject();
        json.WriteString("title", table.Title);
        json.WriteString("note", table.Note);
        json.WriteStartArray("columns");
        foreach (var column in table.Columns)
            json.WriteStringValue(column.Heading);
        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (var row in table.Rows)
        {
            json.WriteStartArray();
            foreach (var cell in row)
            {
                if (cell.Number is { } number)
                    json.WriteNumberValue(number);
                else
                    json.WriteStringValue(cell.Text);
            }

            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>An explanation as JSON: kind, text and the lines below it.</summary>
    public static string Write(ExplanationLine explanation)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Indented))
            Write(json, explanation);
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, ExplanationLine line)
    {
        json.WriteStartObject();
        json.WriteString("kind", JsonNamingPolicy.KebabCaseLower.ConvertName(line.Kind.ToString()));
        json.WriteString("text", line.Text);
        if (line.Because.Count > 0)
        {
            json.WriteStartArray("because");
            foreach (var below in line.Because)
                Write(json, below);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }
}
