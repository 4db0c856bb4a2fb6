using System.Text.RegularExpressions;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>Puts new rows into the files that they belong to, and begins a file where none fits.</summary>
internal sealed partial class BookAdditions(Dictionary<string, BookFile> files, List<WorksheetFault> faults)
{
    /// <summary>Adds a record. Null and a fault where it belongs to something that is not there.</summary>
    public Tree? Add(BookLine line, Tree record)
    {
        if (PlaceOf(line) is not { } place || FileOf(line, place) is not { } file)
            return null;
        var adding = new Adding(line, place.Steps, record, this);
        return adding.Into(file.Root, _ => throw new InvalidOperationException("a file stays what it is"), 0) ? adding.Record : null;
    }

    private void Fault(BookLine line, string heading, string message) => faults.Add(new WorksheetFault(line.Place(heading), message));

    private BookPlace? PlaceOf(BookLine line)
    {
        var sheet = line.Sheet;
        foreach (var column in sheet.Columns.Where(column => column.IsPlace))
        {
            var text = line[column.Heading];
            if (text.Length == 0 && column.IsRequired)
                Fault(line, column.Heading, WorkbookFaultTexts.Missing(column.Heading));
            else if (text.Length > 0 && column.Legal.Count > 0 && !column.Legal.Contains(text, StringComparer.Ordinal))
                Fault(line, column.Heading, WorkbookFaultTexts.NotOneOf(text, column.Legal));
            else
                continue;
            return null;
        }

        if (sheet.Places is [var only])
            return only;
        var hasVersion = line[BookLayout.Version].Length > 0 && sheet.Column(BookLayout.Version) is { IsPlace: true };
        if (sheet.Places.FirstOrDefault(one => one.Kind == line[BookLayout.Kind] && one.HasVersion == hasVersion) is { } place)
            return place;
        Fault(line, BookLayout.Version, WorkbookFaultTexts.NoPlace(line[BookLayout.Kind]));
        return null;
    }

    private BookFile? FileOf(BookLine line, BookPlace place)
    {
        if (place.Steps is [_, BookStep.Entry parent, _, ..])
        {
            var id = line[parent.Column];
            if (InOrder.FirstOrDefault(file => (file.Root[place.Section] as TreeMap)?.Entry(id) is not null) is { } holder)
                return holder;
            var known = files.Values.SelectMany(file => (file.Root[place.Section] as TreeMap)?.Entries ?? []).Select(entry => entry.Key);
            Fault(line, parent.Column, WorkbookFaultTexts.Unknown(NameOf(line, parent.Column), id, Nearest.To(id, known)));
            return null;
        }

        var path = line[BookLayout.File];
        if (path.Length == 0)
            path = UsualFile(place.Section);
        if (files.TryGetValue(path, out var there))
            return there;
        if (!FileName().IsMatch(path) || path.StartsWith(CollectionFolder.VocabularyName + "/", StringComparison.Ordinal) || path.Split('/').Contains("runs"))
        {
            Fault(line, BookLayout.File, WorkbookFaultTexts.BadFile(path));
            return null;
        }

        return files[path] = BookFile.Of(path, "");
    }

    private IEnumerable<BookFile> InOrder => files.Values.OrderBy(file => file.Path, StringComparer.Ordinal);

    // Where all records of a kind stand in one file, new ones join them.
    private string UsualFile(string section) =>
        InOrder.Where(file => file.Root.Entry(section) is not null).Select(file => file.Path).ToList() is [var only] ? only : section + ".yaml";

    private static string NameOf(BookLine line, string column) => column == "id" && line[BookLayout.Kind] is { Length: > 0 } kind ? kind : column;

    [GeneratedRegex(@"\A[a-z0-9][a-z0-9-]*(?:/[a-z0-9][a-z0-9-]*)*\.yaml\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1_000)]
    private static partial Regex FileName();

    /// <summary>One row on its way into a file.</summary>
    private sealed class Adding(BookLine line, IReadOnlyList<BookStep> steps, Tree record, BookAdditions additions)
    {
        /// <summary>The record as it stands in the tree.</summary>
        public Tree Record { get; private set; } = record;

        /// <summary>Goes on from a node. False and a fault where the way ends.</summary>
        public bool Into(Tree? node, Action<Tree> replace, int step)
        {
            var isLast = step == steps.Count - 1;
            switch (steps[step])
            {
                case BookStep.Key key:
                    return Entry(node, replace, key.Text, step);
                case BookStep.Entry column when isLast && Has(node, column):
                    return Fault(column.Column, WorkbookFaultTexts.ThereAlready(column.Column, line[column.Column]));
                case BookStep.Entry column when isLast || column.MayBegin || Has(node, column):
                    return Entry(node, replace, line[column.Column], step);
                case BookStep.Entry column:
                    return Unknown(column.Column, (node as TreeMap)?.Entries.Select(entry => entry.Key));
                case BookStep.Name column:
                    return Name(node, replace, line[column.Column], column.Column);
                case BookStep.Item { Column: { Length: > 0 } column } when BookRows.Item(node, column, line[column]) is { } item:
                    return Into(WithKeys(node!, item, column, replace), _ => throw new InvalidOperationException("a version has keys"), step + 1);
                case BookStep.Item { Column: { Length: > 0 } column }:
                    return Unknown(column, (node as TreeList)?.Items.Select(item => ((item is TreeMap map ? map[column] : item) as TreeText)?.Text ?? ""));
                case BookStep.Item:
                    return Append(node, replace, alone: line.Sheet.Kind == RowKind.Supply);
                case BookStep.Need:
                    return Need(node, replace);
                default:
                    throw new System.Diagnostics.UnreachableException();
            }
        }

        private bool Has(Tree? node, BookStep.Entry column) => (node as TreeMap)?.Entry(line[column.Column]) is not null;

        private bool Entry(Tree? node, Action<Tree> replace, string key, int step)
        {
            if (node is not TreeMap map)
                replace(map = new TreeMap(null, []));
            if (step == steps.Count - 1)
            {
                map.Set(key, Record);
                return true;
            }

            return Into(map[key], value => map.Set(key, value), step + 1);
        }

        private bool Name(Tree? node, Action<Tree> replace, string name, string column)
        {
            var isBare = Record is TreeMap { Entries.Count: 0 };
            if (node is TreeList list && isBare)
            {
                list.Items.Add(Record = new TreeText(name));
                return true;
            }

            var map = node switch
            {
                TreeMap there => there,
                TreeList names => NameList.MapOf(names),
                _ => new TreeMap(null, []),
            };
            if (map != node)
                replace(map);
            if (map.Entry(name) is not null)
                return Fault(column, WorkbookFaultTexts.ThereAlready(column, name));
            map.Set(name, Record = isBare ? new TreeText("", isNothing: true) : Record);
            return true;
        }

        private bool Append(Tree? node, Action<Tree> replace, bool alone)
        {
            if (node is TreeList list)
                list.Items.Add(Record);
            else if (node is null && alone)
                replace(Record);
            else
                replace(new TreeList(null, node is null ? [Record] : [Tree.Of(node.ToValue()), Record]));
            return true;
        }

        private bool Need(Tree? node, Action<Tree> replace)
        {
            if (node is not TreeMap map)
                return Append(node, replace, alone: false);
            if (line["any-of"].Length > 0)
                return Fault("any-of", WorkbookFaultTexts.NotInAMap);
            if (map.Entry(line["need"]) is not null)
                return Fault("need", WorkbookFaultTexts.ThereAlready("need", line["need"]));
            map.Set(line["need"], Record = RowContent.UnderItsNeed(Record));
            return true;
        }

        /// <summary>An item that may hold more than the text that tells it.</summary>
        private static TreeMap WithKeys(Tree list, Tree item, string column, Action<Tree> replace)
        {
            if (item is TreeMap map)
                return map;
            map = new TreeMap(null, [new TreeEntry(column, Tree.Of(item.ToValue()))]);
            if (list is TreeList items)
                items.Replace(item, map);
            else
                replace(map);
            return map;
        }

        private bool Unknown(string column, IEnumerable<string>? known) =>
            Fault(column, WorkbookFaultTexts.Unknown(NameOf(line, column), line[column], Nearest.To(line[column], known ?? [])));

        private bool Fault(string column, string message)
        {
            additions.Fault(line, column, message);
            return false;
        }
    }
}
