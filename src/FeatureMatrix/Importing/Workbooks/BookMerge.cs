using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>
/// Brings a workbook's rows into a collection's files. Only cells that somebody changed since the workbook was written count, so that
/// changes that the files saw meanwhile stay.
/// </summary>
internal sealed class BookMerge
{
    private readonly Dictionary<string, BookFile> _files;
    private readonly List<WorksheetFault> _faults;
    private readonly List<string> _notes = [];
    private readonly List<BookRow> _out = [];
    private readonly List<(BookLine Line, Tree? Record)> _new = [];
    private readonly List<(BookLine Line, Func<Tree> Record)> _records = [];

    private BookMerge(IEnumerable<BookFile> files, List<WorksheetFault> faults)
    {
        _files = files.ToDictionary(file => file.Path, StringComparer.Ordinal);
        _faults = faults;
    }

    /// <summary>The files after the merge, new ones included.</summary>
    public IReadOnlyList<BookFile> Files => [.. _files.Values.OrderBy(file => file.Path, StringComparer.Ordinal)];

    /// <summary>What deserves a look before it is written.</summary>
    public IReadOnlyList<string> Notes => _notes;

    /// <summary>Every row with its record in the trees.</summary>
    public IReadOnlyList<(BookLine Line, Tree Record)> Records => [.. _records.Select(one => (one.Line, one.Record()))];

    /// <summary>Rows whose cells changed.</summary>
    public int ChangedCount { get; private set; }

    /// <summary>Rows that are new.</summary>
    public int NewCount { get; private set; }

    /// <summary>Rows that are taken out.</summary>
    public int OutCount { get; private set; }

    /// <summary>Rows that nobody changed and that the collection no longer has.</summary>
    public int GoneCount { get; private set; }

    /// <summary>Merges the rows into the trees of the files.</summary>
    public static BookMerge Of(IReadOnlyList<BookFile> files, IReadOnlyList<BookLine> lines, List<WorksheetFault> faults)
    {
        var merge = new BookMerge(files, faults);
        var known = BookLayout.Sheets.ToDictionary(sheet => sheet.Name, sheet => new KnownRows(sheet, files), StringComparer.Ordinal);
        var knowsTheCollection = lines.Any(line => line.Sheet != BookLayout.Sheets[0] && known[line.Sheet.Name].At(line.Address) is not null);
        foreach (var group in lines.GroupBy(line => (line.Sheet.Name, line.Address)))
            merge.Group([.. group], known[group.Key.Name], knowsTheCollection);
        merge.Finish();
        return merge;
    }

    /// <summary>The rows that name one record, or none. A copied row names the record of the one it was copied from.</summary>
    private void Group(IReadOnlyList<BookLine> lines, KnownRows known, bool knowsTheCollection)
    {
        var row = known.At(lines[0].Address);
        var owner = row is null ? null : lines.FirstOrDefault(line => line.Edited.Count == 0) ?? lines[0];
        if (owner is not null)
            Existing(owner, row!, owner.Edited);
        foreach (var line in lines.Where(line => line != owner && !line.IsTakenOut))
        {
            if (line.Address.Length > 0 && row is null && knowsTheCollection && line.Edited.Count == 0)
                GoneCount++;
            else if (known.Says(line))
                continue;
            else if (known.Named(line) is { } named)
                Existing(line, named, [.. line.Sheet.Columns.Where(column => line[column.Heading].Length > 0)]);
            else
                _new.Add((line, null));
        }
    }

    /// <summary>A row whose record is there.</summary>
    private void Existing(BookLine line, BookRow row, IReadOnlyList<BookColumn> edited)
    {
        _records.Add((line, () => row.Record));
        if (line.IsTakenOut)
        {
            if (line[BookLayout.TakeOut] != "yes")
                Fault(line, BookLayout.TakeOut, WorkbookFaultTexts.OnlyYes);
            OutCount++;
            _out.Add(row);
            return;
        }

        if (line[BookLayout.File] is { Length: > 0 } file && file != row.File.Path)
            Fault(line, BookLayout.File, WorkbookFaultTexts.FileOfThere);
        var now = RowContent.Cells(line.Sheet, row.Record, row.Places);
        var changed = edited.Where(column => line[column.Heading] != CollectionBook.Shown(now.GetValueOrDefault(column.Heading, ""))).ToList();
        if (changed.Count == 0)
            return;
        ChangedCount++;
        foreach (var column in changed)
            Remark(line, column, now.GetValueOrDefault(column.Heading, ""));
        Change(line, row, changed);
    }

    private void Remark(BookLine line, BookColumn column, string stands)
    {
        if (stands.Length > BookLayout.LongestCell)
            Fault(line, column.Heading, WorkbookFaultTexts.CutText);
        var sign = CollectionBook.SignOf(line[BookLayout.Written], line.Sheet.Columns.ToList().IndexOf(column));
        if (sign is not null && sign != CollectionBook.Sign(CollectionBook.Shown(stands)))
            _notes.Add($"{line.Place(column.Heading)}: {WorkbookFaultTexts.ChangedMeanwhile(stands)}");
    }

    private void Change(BookLine line, BookRow row, List<BookColumn> changed)
    {
        var isKey = row.Places.ContainsKey("need");
        var places = changed.Where(column => column.IsPlace || (isKey && column.Heading is "need" or "any-of")).ToList();
        if (places is [var only] && line[only.Heading] is { Length: > 0 } key && only.Heading == LastKey(row) && row.Slot.Rename(key))
            places.Clear();
        if (places.Count > 0)
        {
            // It belongs to something else now.
            _out.Add(row);
            _records.RemoveAt(_records.Count - 1);
            _new.Add((line, line.Sheet.Kind == RowKind.Plain ? Changed(line, Tree.Of(row.Record.ToValue()), changed, line.Cells) : null));
            return;
        }

        if (!isKey)
        {
            row.Replace(Changed(line, row.Record, changed, line.Cells));
            return;
        }

        var cells = line.Cells.Where(cell => cell.Key != "need").ToDictionary(cell => cell.Key, cell => cell.Value, StringComparer.Ordinal);
        var left = changed.Where(column => column.Heading != "need").ToList();
        if (left.Count > 0)
            row.Replace(row.Record is TreeMap ? Changed(line, row.Record, left, cells) : RowContent.UnderItsNeed(Changed(line, row.Record, left, cells)));
    }

    private static string LastKey(BookRow row) => row.Places.ContainsKey("need") ? "need" : row.Places.Keys.Last();

    private Tree Changed(BookLine line, Tree record, IReadOnlyCollection<BookColumn> changed, IReadOnlyDictionary<string, string> cells) =>
        RowContent.Changed(line.Sheet, record, changed, cells, column => Fault(line, column.Heading, WorkbookFaultTexts.Unreadable(column.Form)));

    private void Finish()
    {
        foreach (var row in _out)
            row.Slot.Remove();
        var additions = new BookAdditions(_files, _faults);
        foreach (var (line, record) in _new.OrderBy(one => BookLayout.Sheets.ToList().IndexOf(one.Line.Sheet)))
        {
            var whole = record ?? RowContent.Build(line.Sheet, line.Cells, column => Fault(line, column.Heading, WorkbookFaultTexts.Unreadable(column.Form)));
            if (additions.Add(line, whole) is not { } added)
                continue;
            NewCount += record is null ? 1 : 0;
            _records.Add((line, () => added));
        }
    }

    private void Fault(BookLine line, string heading, string message) => _faults.Add(new WorksheetFault(line.Place(heading), message));
}
