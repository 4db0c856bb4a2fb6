using System.Text;
using System.Text.Json;
using FeatureMatrix.Deciding;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>
/// A difference as JSON: <c>groups[branch] = { low, high }</c>, each a list of <c>[title, first, second]</c> where a standing is
/// <c>[severe, cosmetic]</c>, or null where the title does not run.
/// </summary>
public static class DifferenceJson
{
    /// <summary>The export as JSON.</summary>
    public static string Write(DifferenceExport export)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteBoolean("locked", export.IsLocked);
            json.WriteStartArray("groups");
            foreach (var group in export.Groups)
            {
                json.WriteStartArray();
                foreach (var branch in group)
                {
                    json.WriteStartObject();
                    Write(json, "low", branch.Low);
                    Write(json, "high", branch.High);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, string end, IReadOnlyList<ExportedTitle> titles)
    {
        json.WriteStartArray(end);
        foreach (var title in titles)
        {
            json.WriteStartArray();
            json.WriteStringValue(title.Title.Id);
            Write(json, title.First);
            Write(json, title.Second);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Standing standing)
    {
        if (!standing.Runs)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartArray();
        json.WriteNumberValue(standing.Severe);
        json.WriteNumberValue(standing.Cosmetic);
        json.WriteEndArray();
    }
}
