using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>The record of a row as cells, and cells as a record.</summary>
internal static class RowContent
{
    /// <summary>What stands under <c>is</c> for a feature with levels that has none of them.</summary>
    public const string None = "none";

    private const string AtLeast = "at-least";
    private const string SameRenderer = "like-engine";

    /// <summary>What the cells show, by heading; empty ones are absent.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="record">The record.</param>
    /// <param name="places">What the row belongs to, by heading; of a need that stands as a key also the need.</param>
    public static Dictionary<string, string> Cells(BookSheet sheet, Tree record, IReadOnlyDictionary<string, string> places)
    {
        var cells = places.Where(pair => pair.Value.Length > 0).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        if (record is TreeText text)
        {
            if (!text.IsNothing)
                Bare(sheet, text.Text, places, cells);
            return cells;
        }

        foreach (var column in sheet.Columns.Where(column => !column.IsPlace))
        {
            var shown = column.IsRest ? CellText.Of(Rest(sheet, (TreeMap)record), CellForm.Pairs) : CellText.Of(At(record, column.Path), column.Form);
            if (shown.Length > 0)
                cells[column.Heading] = shown;
        }

        return cells;
    }

    /// <summary>A new record from cells. Cells that cannot be read are told and left out.</summary>
    public static Tree Build(BookSheet sheet, IReadOnlyDictionary<string, string> cells, Action<BookColumn> fault)
    {
        var map = new TreeMap(null, []);
        foreach (var column in sheet.Columns.Where(column => !column.IsPlace && cells.ContainsKey(column.Heading)))
            Put(sheet, map, column, cells[column.Heading], fault);
        return Shortened(sheet, map);
    }

    /// <summary>A record with some cells changed: the same one where it has keys, a new one where a text alone no longer says it.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="record">The record.</param>
    /// <param name="changed">The columns that changed.</param>
    /// <param name="cells">All cells of the row, by heading; empty ones absent.</param>
    /// <param name="fault">Takes the columns whose cells cannot be read.</param>
    public static Tree Changed(BookSheet sheet, Tree record, IReadOnlyCollection<BookColumn> changed, IReadOnlyDictionary<string, string> cells, Action<BookColumn> fault)
    {
        if (record is not TreeMap map)
            return Build(sheet, cells, fault);
        foreach (var column in changed.Where(column => !column.IsPlace))
            Put(sheet, map, column, cells.GetValueOrDefault(column.Heading, ""), fault);
        return map;
    }

    /// <summary>What stands under a need that is a key: nothing, its effect in words, or the keys that are left.</summary>
    public static Tree UnderItsNeed(Tree need)
    {
        if (need is not TreeMap map)
            return new TreeText("", isNothing: true);
        map.Entries.RemoveAll(entry => entry.Key == "need");
        return map.Entries switch
        {
            [] => new TreeText("", isNothing: true),
            [{ Key: "effect", Value: TreeText effect }] => effect,
            _ => map,
        };
    }

    private static void Bare(BookSheet sheet, string text, IReadOnlyDictionary<string, string> places, Dictionary<string, string> cells)
    {
        if (sheet.Kind == RowKind.Supply)
        {
            if (text == None || Words.Supports.Any(word => word.Item1 == text))
                cells["is"] = text;
            else
                (cells["level"], cells["reach"]) = text.EndsWith('+') ? (text[..^1].TrimEnd(), AtLeast) : (text, "");
            if (cells.GetValueOrDefault("reach") is "")
                cells.Remove("reach");
        }
        else if (sheet.Kind == RowKind.Need && places.ContainsKey("need"))
        {
            cells["effect"] = text;
        }
        else if (sheet.Bare.Length > 0)
        {
            cells[sheet.Bare] = sheet.Bare == SameRenderer && text == SameRenderer ? places["renderer"] : text;
        }
    }

    /// <summary>A record whose only key may stand alone, as that text.</summary>
    private static Tree Shortened(BookSheet sheet, TreeMap map)
    {
        if (sheet.Kind == RowKind.Supply)
        {
            var (state, level, reach) = (TextOf(map["is"]), TextOf(map["level"]), TextOf(map["reach"]));
            if (map.Entries.Count == 1 && (state ?? level) is { } word)
                return new TreeText(word);
            if (map.Entries.Count == 2 && level is not null && reach == AtLeast)
                return new TreeText(level + "+");
            if (state == None)
                map.Set("is", new TreeText("no"));
            return map;
        }

        return sheet.Bare.Length > 0 && sheet.Bare != SameRenderer && map.Entries is [{ Value: TreeText only } entry] && entry.Key == sheet.Bare ? only : map;
    }

    private static void Put(BookSheet sheet, TreeMap map, BookColumn column, string cell, Action<BookColumn> fault)
    {
        var value = cell.Length == 0 ? null : CellText.Read(cell, column.Form, column.IsRest ? null : At(map, column.Path));
        if (value is null && cell.Length > 0)
            fault(column);
        else if (column.IsRest)
            PutRest(sheet, map, value as TreeMap ?? new TreeMap(null, []));
        else
            PutAt(map, column.Path, value);
    }

    private static void PutAt(TreeMap map, IReadOnlyList<string> path, Tree? value)
    {
        if (path.Count == 1)
        {
            if (value is not null)
                map.Set(path[0], value);
            else
                map.Entries.RemoveAll(entry => entry.Key == path[0]);
            return;
        }

        if (map[path[0]] is not TreeMap inner)
        {
            if (value is null)
                return;
            map.Set(path[0], inner = new TreeMap(null, []));
        }

        PutAt(inner, [.. path.Skip(1)], value);
        if (inner.Entries.Count == 0)
            map.Entries.RemoveAll(entry => entry.Key == path[0]);
    }

    private static TreeMap Rest(BookSheet sheet, TreeMap map) =>
        new(null, map.Entries.Where(entry => !sheet.Columns.Any(column => column.Path is [var key, ..] && key == entry.Key)));

    private static void PutRest(BookSheet sheet, TreeMap map, TreeMap wanted)
    {
        foreach (var entry in Rest(sheet, map).Entries.Where(entry => wanted.Entry(entry.Key) is null))
            map.Entries.Remove(entry);
        foreach (var entry in wanted.Entries.Where(entry => map.Entry(entry.Key) is not { } there || !there.Value.ToValue().Equals(entry.Value.ToValue())))
            map.Set(entry.Key, entry.Value);
    }

    private static Tree? At(Tree? record, IEnumerable<string> path) => path.Aggregate(record, (node, key) => (node as TreeMap)?[key]);

    private static string? TextOf(Tree? value) => (value as TreeText)?.Text;
}
