using System.Text;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>A mapping to begin with: every column with what its heading suggests, and every short word that recurs.</summary>
public static class SheetDraft
{
    private const int LongestWord = 24;
    private const int MostWords = 40;

    /// <summary>The draft as YAML; null where the file holds no cells.</summary>
    public static string? Of(string name, byte[] bytes, Catalog catalog)
    {
        var sheet = name.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase)
            ? SheetCells.TryReadAll(bytes, out _)?.OrderByDescending(one => one.Cells.Count).FirstOrDefault()
            : new SheetCells("", DelimitedCells.Read(Encoding.UTF8.GetString(bytes)));
        if (sheet is null || sheet.Rows.Count == 0)
            return null;
        // The headings are the first row that is filled as far as any.
        var headingRow = sheet.Rows.MaxBy(row => sheet.Cells.Keys.Where(key => key.Row == row).Max(key => key.Column) + (sheet.Cells.Keys.Count(key => key.Row == row) / 1000.0));
        var columns = sheet.Cells.Where(cell => cell.Key.Row == headingRow).OrderBy(cell => cell.Key.Column)
            .Select(cell => (cell.Key.Column, Heading: cell.Value, Role: Guess(cell.Value, catalog))).ToList();
        var mapping = new List<(string, YamlValue)>
        {
            ("name", new YamlValue.Text(PlainWords.AsId(Path.GetFileNameWithoutExtension(name)) is { Length: > 0 } id ? id : "sheet")),
            ("states", new YamlValue.Text("observations")),
        };
        if (sheet.Name.Length > 0)
            mapping.Add(("tab", new YamlValue.Text(sheet.Name)));
        mapping.Add(("heading-row", new YamlValue.Text(headingRow.ToString(System.Globalization.CultureInfo.InvariantCulture))));
        mapping.Add(("source", new YamlValue.Map([("text", new YamlValue.Text(Path.GetFileName(name))), ("grade", new YamlValue.Text("hearsay"))])));
        mapping.Add(("columns", new YamlValue.Map([.. columns.DistinctBy(column => SheetMapping.Plain(column.Heading)).Select(column => (column.Heading, column.Role))], InLines: true)));
        var words = WordsIn(sheet, headingRow, [.. columns.Where(column => column.Role is YamlValue.Map).Select(column => column.Column)]);
        if (words.Count > 0)
            mapping.Add(("words", new YamlValue.Map([.. words.Select(word => (word, (YamlValue)new YamlValue.Text("unknown")))], InLines: true)));
        return "# A draft: say of each column what it holds, or 'nothing', and of each word what it means. data/README.md has the keys.\n"
            + string.Concat(YamlText.Lines("sheet", new YamlValue.Map(mapping, InLines: true), 0).Select(line => line + "\n"));
    }

    private static YamlValue Guess(string heading, Catalog catalog)
    {
        var plain = SheetMapping.Plain(heading);
        if (Named(plain, catalog.Cards, card => card.Id, card => card.Name) is { } card)
            return new YamlValue.Map([("card", new YamlValue.Text(card.Id))]);
        if (Named(plain, catalog.Features, feature => feature.Id, feature => feature.Name) is { } feature)
            return new YamlValue.Map([("feature", new YamlValue.Text(feature.Id))]);
        return new YamlValue.Text(plain switch
        {
            "title" or "game" or "program" => "title",
            "card" or "board" => "card",
            "driver" or "drivers" => "driver",
            "system" or "os" or "windows" => "os",
            "runs" or "works" => "runs",
            "date" => "date",
            "by" or "who" or "tester" => "by",
            "note" or "notes" or "remarks" or "comment" => "note",
            _ => "nothing",
        });
    }

    /// <summary>What a heading names: by its id or name, or as the only one whose name has all words of the heading.</summary>
    private static T? Named<T>(string plain, IReadOnlyList<T> all, Func<T, string> id, Func<T, string> name)
        where T : class
    {
        if (all.FirstOrDefault(one => id(one) == plain || SheetMapping.Plain(name(one)) == plain) is { } exact)
            return exact;
        var words = plain.Split(' ');
        var having = all.Where(one => words.All(SheetMapping.Plain(name(one)).Split(' ').Contains)).ToList();
        return having.Count == 1 ? having[0] : null;
    }

    private static List<string> WordsIn(SheetCells sheet, int headingRow, HashSet<int> columns) =>
    [
        .. sheet.Cells.Where(cell => cell.Key.Row > headingRow && columns.Contains(cell.Key.Column) && cell.Value.Length <= LongestWord)
            .GroupBy(cell => SheetMapping.Plain(cell.Value)).OrderByDescending(word => word.Count()).ThenBy(word => word.Key, StringComparer.Ordinal)
            .Take(MostWords).Select(word => word.OrderBy(cell => cell.Key.Row).ThenBy(cell => cell.Key.Column).First().Value),
    ];
}
