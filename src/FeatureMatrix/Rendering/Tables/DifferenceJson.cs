using System.Text;
using System.Text.Json;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>
/// A comparison as JSON for the page that weighs it anew. <c>standings</c>: <c>[severe, cosmetic]</c>, or null where the title does not
/// run. <c>groups</c>: each a list whose first entry names its stakes as 2 × title + side, in the order of the library, side 1 being the
/// second card; every other entry is a branch, one span for each stake: a standing's index, <c>[low, high]</c>, or <c>[covered low, covered
/// high, missed low, missed high]</c> with −1 for none. <c>titles</c>: the same for the stakes of one title alone.
/// </summary>
public static class DifferenceJson
{
    /// <summary>The export of a comparison as JSON, on one line.</summary>
    public static string Write(CardComparison comparison, DifferenceExport export)
    {
        var numbers = comparison.Titles.Select((title, i) => (title.Entry.Title, i)).ToDictionary(pair => pair.Title, pair => pair.i);
        var standings = new List<Standing>();
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteBoolean("neverBelow", comparison.Titles.All(title => title.FirstIsNeverWorse));
            json.WriteBoolean("neverAbove", comparison.Titles.All(title => title.SecondIsNeverWorse));
            json.WriteString("winner", comparison.Dominance switch { Dominance.First => "first", Dominance.Second => "second", Dominance.Equal => "equal", _ => "" });
            json.WriteStartArray("groups");
            foreach (var group in export.Groups)
                Write(json, group, numbers, standings);
            json.WriteEndArray();
            json.WriteStartObject("titles");
            foreach (var title in comparison.Titles.Where(title => export.ByTitle.ContainsKey(title.Entry.Title)))
            {
                json.WriteStartArray(title.Entry.Title.Id);
                foreach (var group in export.ByTitle[title.Entry.Title])
                    Write(json, group, numbers, standings);
                json.WriteEndArray();
            }

            json.WriteEndObject();
            json.WriteStartArray("standings");
            foreach (var standing in standings)
                Write(json, standing);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Write(Utf8JsonWriter json, ExportedGroup group, Dictionary<Title, int> numbers, List<Standing> standings)
    {
        json.WriteStartArray();
        json.WriteStartArray();
        foreach (var stake in group.Stakes)
            json.WriteNumberValue((2 * numbers[stake.Entry.Title]) + (stake.Side == Side.First ? 0 : 1));
        json.WriteEndArray();
        foreach (var branch in group.Branches)
        {
            json.WriteStartArray();
            foreach (var span in branch)
                Write(json, span, standings);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, ExportedSpan span, List<Standing> standings)
    {
        if (span is { Missed: null, Covered: { } covered } && covered.Low == covered.High)
        {
            json.WriteNumberValue(Index(covered.Low));
            return;
        }

        json.WriteStartArray();
        foreach (var pair in span.Missed is null ? [span.Covered] : (ReadOnlySpan<(Standing Low, Standing High)?>)[span.Covered, span.Missed])
        {
            json.WriteNumberValue(pair is { } low ? Index(low.Low) : -1);
            json.WriteNumberValue(pair is { } high ? Index(high.High) : -1);
        }

        json.WriteEndArray();

        int Index(Standing standing)
        {
            if (!standings.Contains(standing))
                standings.Add(standing);
            return standings.IndexOf(standing);
        }
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
