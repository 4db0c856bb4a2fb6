using System.Globalization;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>A file of a collection, open for change.</summary>
/// <param name="Path">Below the collection's folder.</param>
/// <param name="Text">Its text; empty for a new file.</param>
/// <param name="Root">Its tree.</param>
internal sealed record BookFile(string Path, string Text, TreeMap Root)
{
    /// <summary>The file with that text.</summary>
    public static BookFile Of(string path, string text) => new(path, text, Tree.Of(PlacedNode.Parse(text)) as TreeMap ?? new TreeMap(null, []));
}

/// <summary>A record of a collection that is a row of a sheet.</summary>
internal sealed class BookRow(BookFile file, string address, IReadOnlyDictionary<string, string> places, Tree record, Slot slot)
{
    public BookFile File { get; } = file;

    /// <summary>Where it stands: the file and the keys and numbers on the way to it.</summary>
    public string Address { get; } = address;

    /// <summary>What it belongs to, by heading.</summary>
    public IReadOnlyDictionary<string, string> Places { get; } = places;

    public Tree Record { get; private set; } = record;

    public Slot Slot { get; } = slot;

    /// <summary>Puts another record in its place.</summary>
    public void Replace(Tree record)
    {
        if (record != Record)
            Slot.Set(record);
        Record = record;
    }
}

/// <summary>The rows that a collection has on a sheet before anything changes.</summary>
internal sealed class KnownRows
{
    private readonly BookSheet _sheet;
    private readonly Dictionary<string, BookRow> _byAddress;
    private readonly Dictionary<string, BookRow> _byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> _said = new(StringComparer.Ordinal);

    public KnownRows(BookSheet sheet, IReadOnlyList<BookFile> files)
    {
        _sheet = sheet;
        _byAddress = files.SelectMany(file => BookRows.Of(sheet, file)).ToDictionary(row => row.Address, StringComparer.Ordinal);
        var hasNames = sheet.Places.All(place => place.Steps[^1] is BookStep.Entry or BookStep.Name);
        foreach (var row in _byAddress.Values)
        {
            _said.Add(Whole(sheet.Columns, RowContent.Cells(sheet, row.Record, row.Places)));
            if (hasNames)
                _byName.TryAdd(Whole(sheet.Columns.Where(column => column.IsPlace), row.Places), row);
        }
    }

    /// <summary>The row whose record stands at a place; null for none.</summary>
    public BookRow? At(string address) => _byAddress.GetValueOrDefault(address);

    /// <summary>The row of a record that has the same names; null for none, and where records have none.</summary>
    public BookRow? Named(BookLine line) => _byName.GetValueOrDefault(Whole(_sheet.Columns.Where(column => column.IsPlace), line.Cells));

    /// <summary>True where a record says the same in every cell.</summary>
    public bool Says(BookLine line) => _said.Contains(Whole(_sheet.Columns, line.Cells));

    private static string Whole(IEnumerable<BookColumn> columns, IReadOnlyDictionary<string, string> cells) =>
        string.Join('\u001f', columns.Select(column => CollectionBook.Shown(cells.GetValueOrDefault(column.Heading, ""))));
}

/// <summary>All rows that a file has on a sheet, in the order of the file.</summary>
internal static class BookRows
{
    public static IEnumerable<BookRow> Of(BookSheet sheet, BookFile file) => sheet.Places.SelectMany(place => Walk(
        new Way(file, place.Steps), 0, file.Root, new Slot.Fixed(), file.Path + "#",
        place.Kind.Length == 0 ? [] : new Dictionary<string, string>(StringComparer.Ordinal) { [BookLayout.Kind] = place.Kind }));

    /// <summary>The item of a list, or what stands in its place, that a text tells; null for none.</summary>
    public static Tree? Item(Tree? list, string key, string text) => (list is TreeList { Items: var items } ? items : list is null ? [] : [list]).FirstOrDefault(item => Tells(item, key) == text);

    private static string Tells(Tree item, string key) => ((item is TreeMap map ? map[key] : item) as TreeText)?.Text ?? "";

    private static IEnumerable<BookRow> Walk(Way way, int step, Tree node, Slot slot, string address, Dictionary<string, string> places)
    {
        if (step == way.Steps.Count)
            return [new BookRow(way.File, address, places, node, slot)];
        return (way.Steps[step], node) switch
        {
            (BookStep.Key key, TreeMap map) => map.Entry(key.Text) is { Value: not TreeText { IsNothing: true } } entry ? Into(entry, places) : [],
            (BookStep.Entry column, TreeMap map) => map.Entries.SelectMany(entry => Into(entry, With(column.Column, entry.Key))),
            (BookStep.Name column, TreeMap map) => map.Entries.SelectMany(entry => Into(entry, With(column.Column, entry.Key))),
            (BookStep.Name column, TreeList list) => Names(new NameList(list, slot), column.Column),
            (BookStep.Item item, TreeList list) => Items(list, one => item.Column.Length == 0 ? places : With(item.Column, Tells(one, item.Column))),
            (BookStep.Item item, TreeMap or TreeText) =>
                Walk(way, step + 1, node, slot, address, item.Column.Length == 0 ? places : With(item.Column, Tells(node, item.Column))),
            (BookStep.Need, TreeMap map) => map.Entries.SelectMany(entry => Into(entry, With("need", entry.Key))),
            (BookStep.Need, TreeList list) => Items(list, _ => places),
            (BookStep.Need, TreeText) => Walk(way, step + 1, node, slot, address, places),
            _ => [],
        };

        IEnumerable<BookRow> Into(TreeEntry entry, Dictionary<string, string> deeper) =>
            Walk(way, step + 1, entry.Value, new Slot.Entry((TreeMap)node, entry), $"{address}/{entry.Key.Replace("/", "~1", StringComparison.Ordinal)}", deeper);

        IEnumerable<BookRow> Items(TreeList list, Func<Tree, Dictionary<string, string>> deeper) => list.Items.ToList().SelectMany((item, i) =>
            Walk(way, step + 1, item, new Slot.Item(list, item), $"{address}/{i.ToString(CultureInfo.InvariantCulture)}", deeper(item)));

        IEnumerable<BookRow> Names(NameList names, string column) => names.Names.Select(name => new BookRow(
            way.File, $"{address}/{name}", With(column, name), new TreeText("", isNothing: true), new Slot.Listed(names, name)));

        Dictionary<string, string> With(string column, string text) => new(places, StringComparer.Ordinal) { [column] = text };
    }

    private sealed record Way(BookFile File, IReadOnlyList<BookStep> Steps);
}
