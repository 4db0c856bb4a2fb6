using System.Globalization;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>The cells behind faults that the loader found in the files that the workbook would give.</summary>
internal sealed class BookFaultPlaces
{
    /// <summary>The code of faults about a key that is missing.</summary>
    private const string MissingKey = "FM102";

    private readonly IReadOnlyDictionary<string, string> _texts;
    private readonly Dictionary<string, BookLine> _lines = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PlacedNode?> _roots = new(StringComparer.Ordinal);

    /// <summary>Knows all rows of a merge.</summary>
    /// <param name="merge">The merge.</param>
    /// <param name="texts">The texts that it gave, by path.</param>
    public BookFaultPlaces(BookMerge merge, IReadOnlyDictionary<string, string> texts)
    {
        _texts = texts;
        var paths = new Dictionary<Tree, string>(ReferenceEqualityComparer.Instance);
        foreach (var file in merge.Files)
            Walk(file.Root, file.Path + "#", paths);
        foreach (var (line, record) in merge.Records)
        {
            if (paths.TryGetValue(record, out var path))
                _lines.TryAdd(path, line);
        }
    }

    /// <summary>The fault at its cell; at its place in the file where no row has it.</summary>
    public WorksheetFault Of(Fault fault)
    {
        if (PathOf(fault) is { } path)
        {
            for (var length = path.Length; length > 0; length = path.LastIndexOf('/', length - 1))
            {
                if (_lines.TryGetValue(path[..length], out var line))
                    return new WorksheetFault(line.Place(Heading(line, path[length..], fault)), fault.Message);
            }
        }

        return new WorksheetFault(fault.Origin.Line == 0 ? fault.Origin.File : string.Create(CultureInfo.InvariantCulture, $"{fault.Origin.File}({fault.Origin.Line},{fault.Origin.Column})"), fault.Message);
    }

    /// <summary>The column of a value below a record; else the key that is missing, the cell that the message quotes, or the first that tells something.</summary>
    private static string Heading(BookLine line, string below, Fault fault)
    {
        var keys = below.Split('/', StringSplitOptions.RemoveEmptyEntries);
        if (line.Sheet.Columns.FirstOrDefault(column => column.Path.Count > 0 && column.Path.SequenceEqual(keys.Take(column.Path.Count))) is { } exact)
            return exact.Heading;
        var quoted = fault.Message.Split(';')[0].Split('\'').Where((_, i) => i % 2 == 1).Reverse().ToList();
        var told = line.Cells.Where(cell => line.Sheet.Column(cell.Key) is { IsPlace: false }).ToList();
        return (fault.Code == MissingKey ? quoted.Find(word => line.Sheet.Column(word) is not null) : null)
            ?? Quoting(told) ?? Quoting(line.Cells)
            ?? line.Sheet.Columns.FirstOrDefault(column => column.IsRest)?.Heading
            ?? told.Select(cell => cell.Key).FirstOrDefault() ?? line.Sheet.Columns[0].Heading;

        string? Quoting(IEnumerable<KeyValuePair<string, string>> cells) => quoted
            .Select(word => cells.FirstOrDefault(cell => cell.Value == word || cell.Value.StartsWith(word + " ", StringComparison.Ordinal)).Key).FirstOrDefault(heading => heading is not null);
    }

    private string? PathOf(Fault fault)
    {
        if (fault.Origin.Line == 0 || !_texts.TryGetValue(fault.Origin.File, out var text))
            return null;
        if (!_roots.TryGetValue(fault.Origin.File, out var root))
            _roots[fault.Origin.File] = root = PlacedNode.Parse(text);
        var start = 0;
        for (var line = 1; line < fault.Origin.Line; line++)
            start = text.IndexOf('\n', start) + 1;
        var offset = start + fault.Origin.Column - 1 + (fault.Origin.Line == 1 && text.StartsWith('\uFEFF') ? 1 : 0);
        return root is null ? null : Path(root, offset, fault.Origin.File + "#");
    }

    private static string Path(PlacedNode node, int offset, string before)
    {
        switch (node)
        {
            case PlacedMapping map when map.Entries.LastOrDefault(entry => entry.Key.Start <= offset) is { } entry && (offset < Math.Max(entry.Value.End, entry.Key.End) || !map.IsFlow):
                return Path(entry.Value, offset, $"{before}/{entry.Key.Text}");
            case PlacedSequence list when list.Items.LastOrDefault(item => item.Start <= offset) is { } item:
                return Path(item, offset, $"{before}/{list.Items.ToList().IndexOf(item).ToString(CultureInfo.InvariantCulture)}");
            default:
                return before;
        }
    }

    private static void Walk(Tree node, string path, Dictionary<Tree, string> paths)
    {
        paths[node] = path;
        switch (node)
        {
            case TreeMap map:
                foreach (var entry in map.Entries)
                    Walk(entry.Value, $"{path}/{entry.Key}", paths);
                break;
            case TreeList list:
                for (var i = 0; i < list.Items.Count; i++)
                    Walk(list.Items[i], $"{path}/{i.ToString(CultureInfo.InvariantCulture)}", paths);
                break;
            default:
                break;
        }
    }
}
