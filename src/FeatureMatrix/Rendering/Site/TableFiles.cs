using System.Text.Json;

namespace FeatureMatrix.Rendering.Site;

/// <summary>
/// The tables of a page as one script that hands them to the copy buttons: a page opened from a folder may load a script, but not read a
/// file. A table is <c>[title, note, columns, rows]</c>; a column of numbers is <c>[heading]</c>, any other its heading; a cell is its text,
/// or <c>[text, number]</c>.
/// </summary>
internal static class TableFiles
{
    public static OutputFile Of(string path, IReadOnlyList<NamedTable> tables)
    {
        using var stream = new MemoryStream();
        stream.Write("featureMatrixTables("u8);
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            foreach (var table in tables)
                Write(json, table);
            json.WriteEndObject();
        }

        stream.Write(");\n"u8);
        return new OutputFile(path, stream.ToArray());
    }

    private static void Write(Utf8JsonWriter json, NamedTable named)
    {
        json.WriteStartArray(named.Name);
        json.WriteStringValue(named.Table.Title);
        json.WriteStringValue(named.Table.Note);
        json.WriteStartArray();
        foreach (var column in named.Table.Columns)
            Write(json, column.Heading, column.IsNumber ? [] : null);
        json.WriteEndArray();
        json.WriteStartArray();
        foreach (var row in named.Table.Rows)
        {
            json.WriteStartArray();
            foreach (var cell in row)
                Write(json, cell.Text, cell.Number is { } number ? [number] : null);
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, string text, double[]? after)
    {
        if (after is null)
        {
            json.WriteStringValue(text);
            return;
        }

        json.WriteStartArray();
        json.WriteStringValue(text);
        foreach (var number in after)
            json.WriteNumberValue(number);
        json.WriteEndArray();
    }
}
