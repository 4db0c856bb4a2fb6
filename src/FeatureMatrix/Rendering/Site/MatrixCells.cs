using System.Text.Json;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Rendering.Site;

/// <summary>
/// The cells of a large matrix as a script: each distinct drawing once, and for every row the numbers of its drawings. A drawing is
/// <c>[word, line below, whole label, tone, evidence, marks, features, systems, speed, speed in words]</c>.
/// </summary>
internal static class MatrixCells
{
    /// <summary>How many cells a page holds itself; past that they lie in a script, so that no page grows past its budget.</summary>
    public const int MostOnPage = 2_000;

    /// <summary>True where the cells do not fit on the page.</summary>
    public static bool IsLarge(MatrixReport matrix) => matrix.Rows.Count * matrix.Columns.Count > MostOnPage;

    /// <summary>The script.</summary>
    public static OutputFile Of(string path, MatrixReport matrix)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        var drawings = new List<Tile>();
        var rows = matrix.Rows.Select(row => row.Tiles.Select(NumberOf).ToList()).ToList();
        using var stream = new MemoryStream();
        stream.Write("featureMatrixCells("u8);
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteStartArray("tiles");
            foreach (var tile in drawings)
                Write(json, tile);
            json.WriteEndArray();
            json.WriteStartArray("rows");
            foreach (var row in rows)
            {
                json.WriteStartArray();
                foreach (var number in row)
                    json.WriteNumberValue(number);
                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.Write(");\n"u8);
        return new OutputFile(path, stream.ToArray());

        int NumberOf(Tile tile)
        {
            var key = string.Join('\n', [
                tile.Word, Below(tile), tile.More, tile.Tone, tile.Evidence, string.Join(' ', tile.Marks), string.Join(' ', tile.Features), string.Join(' ', tile.Systems), tile.SpeedText,
            ]);
            if (!numbers.TryGetValue(key, out var number))
            {
                numbers[key] = number = drawings.Count;
                drawings.Add(tile);
            }

            return number;
        }
    }

    private static string Below(Tile tile) => $"{tile.Way}{(tile.HasMilder ? " +" : "")}{(tile.IsContradicted ? " !" : "")}";

    private static void Write(Utf8JsonWriter json, Tile tile)
    {
        json.WriteStartArray();
        foreach (var text in (string[])[tile.Word, Below(tile), tile.More, tile.Tone, tile.Evidence])
            json.WriteStringValue(text);
        foreach (var list in (IReadOnlyList<string>[])[tile.Marks, tile.Features, tile.Systems])
        {
            json.WriteStartArray();
            foreach (var text in list)
                json.WriteStringValue(text);
            json.WriteEndArray();
        }

        json.WriteStringValue(tile.Speed);
        json.WriteStringValue(tile.SpeedText);
        json.WriteEndArray();
    }
}
