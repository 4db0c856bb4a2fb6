using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using FeatureMatrix.Reports.Editions;

namespace FeatureMatrix.Rendering.Editions;

/// <summary>
/// An edition in a file of its own, kept with the collection as <c>editions/NAME.json</c>: JSON, a line for each statement and each cell, so
/// that two of them can be compared line by line. Cells name their statements by number, from 0.
/// </summary>
public static class EditionFile
{
    /// <summary>The folder of the collection that holds them.</summary>
    public const string Folder = "editions";

    /// <summary>What their names end in.</summary>
    public const string Extension = ".json";

    private const string DateFormat = "yyyy-MM-dd";

    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of the file.</summary>
    public static string Write(EditionState state)
    {
        var statements = state.Cells.SelectMany(cell => cell.RestsOn).Distinct()
            .OrderBy(one => one.About, StringComparer.Ordinal).ThenBy(one => one.Says, StringComparer.Ordinal).ToList();
        var number = statements.Select((one, i) => (one, i)).ToDictionary(pair => pair.one, pair => pair.i);
        var text = new StringBuilder("{\n");
        Line("edition", state.Name);
        Line("date", state.Date?.ToString(DateFormat, CultureInfo.InvariantCulture) ?? "");
        Line("note", state.Note);
        Line("program", state.Program);
        Line("policy", state.Policy);
        Names("titles", state.Titles);
        Names("cards", state.Cards);
        List("statements", statements.Select(one => Json(new[] { one.About, one.Says })), ",");
        List("cells", state.Cells.Select(cell => Json(new object[] { cell.Title, cell.Card, cell.Label, cell.RestsOn.Select(one => number[one]) })), "");
        return text.Append("}\n").ToString();

        void Line(string key, string value) => text.Append(CultureInfo.InvariantCulture, $"  {Json(key)}: {Json(value)},\n");
        void Names(string key, IReadOnlyDictionary<string, string> names) =>
            text.Append(CultureInfo.InvariantCulture, $"  {Json(key)}: {{\n    {string.Join(",\n    ", names.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => $"{Json(one.Key)}: {Json(one.Value)}"))}\n  }},\n");
        void List(string key, IEnumerable<string> items, string after) =>
            text.Append(CultureInfo.InvariantCulture, $"  {Json(key)}: [\n    {string.Join(",\n    ", items)}\n  ]{after}\n");
    }

    /// <summary>Reads such a file.</summary>
    /// <exception cref="FormatException">It is none; the message says where and why.</exception>
    public static EditionState Read(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            var root = document.RootElement;
            var statements = root.GetProperty("statements").EnumerateArray().Select(one => new Statement(Text(one[0]), Text(one[1]))).ToList();
            return new EditionState
            {
                Name = Text(root.GetProperty("edition")),
                Date = DateOnly.ParseExact(Text(root.GetProperty("date")), DateFormat, CultureInfo.InvariantCulture),
                Note = Text(root.GetProperty("note")),
                Program = Text(root.GetProperty("program")),
                Policy = Text(root.GetProperty("policy")),
                Titles = Names(root.GetProperty("titles")),
                Cards = Names(root.GetProperty("cards")),
                Cells = [.. root.GetProperty("cells").EnumerateArray().Select(cell => Cell(cell, statements))],
            };
        }
        catch (JsonException fault)
        {
            throw new FormatException($"line {fault.LineNumber + 1}: it is no JSON", fault);
        }
        catch (Exception fault) when (fault is KeyNotFoundException or InvalidOperationException or IndexOutOfRangeException or ArgumentOutOfRangeException or FormatException)
        {
            throw new FormatException("it is no edition that publish wrote", fault);
        }
    }

    private static EditionCell Cell(JsonElement cell, List<Statement> statements) => new(
        Text(cell[0]), Text(cell[1]), Text(cell[2]), [.. cell[3].EnumerateArray().Select(one => statements[one.GetInt32()])]);

    private static Dictionary<string, string> Names(JsonElement map) => map.EnumerateObject().ToDictionary(one => one.Name, one => Text(one.Value));

    private static string Text(JsonElement element) => element.GetString() ?? throw new FormatException("a text is missing");

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, Readable);
}
