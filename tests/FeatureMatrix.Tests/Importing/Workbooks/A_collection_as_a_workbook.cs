using FeatureMatrix.Benchmarks.Collections;
using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>Every file of a collection becomes rows, and rows become the files again.</summary>
public sealed class A_collection_as_a_workbook
{
    public static TheoryData<string> Collections => [.. Worlds.Select(world => world.Key)];

    private static readonly Dictionary<string, Lazy<IReadOnlyList<SourceText>>> Worlds = new(StringComparer.Ordinal)
    {
        ["demo"] = new(() => CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files),
        ["one of everything"] = new(OneOfEverything),
        ["generated 1"] = new(() => Generated(1)),
        ["generated 2"] = new(() => Generated(2)),
    };

    [Theory]
    [MemberData(nameof(Collections))]
    public void Changes_no_file_where_nobody_changed_a_cell(string name)
    {
        var files = Worlds[name].Value;
        var import = WorkbookImport.Of(files, CollectionBookWriter.Write(BookOf(files)));

        Assert.Equal("", string.Join('\n', import.Faults));
        Assert.Empty(import.Change!.Files);
        Assert.Equal((0, 0, 0, 0), (import.ChangedCount, import.NewCount, import.OutCount, import.GoneCount));
    }

    [Theory]
    [MemberData(nameof(Collections))]
    public void Changes_no_file_also_where_every_cell_is_looked_at(string name)
    {
        var files = Worlds[name].Value;
        var import = WorkbookImport.Of(files, Sheets(BookOf(files), keepsSigns: false));

        Assert.Equal("", string.Join('\n', import.Faults));
        Assert.Empty(import.Change!.Files);
        Assert.Equal(0, import.ChangedCount);
    }

    [Theory]
    [MemberData(nameof(Collections))]
    public void Makes_the_whole_collection_anew_where_there_is_none(string name)
    {
        var files = Worlds[name].Value;
        var others = files.Where(file => !IsRecords(file)).ToList();
        var import = WorkbookImport.Of(others, Sheets(BookOf(files), keepsSigns: true));

        Assert.Equal("", string.Join('\n', import.Faults));
        Assert.Equal(CatalogText.Of(CollectionLoader.Load(files).Catalog!), CatalogText.Of(import.Change!.Result.Catalog!));
        Assert.Equal(files.Where(IsRecords).Select(file => file.Path).Order(), import.Change.Files.Select(file => file.Path).Order());
    }

    [Theory]
    [MemberData(nameof(Collections))]
    public void Has_a_cell_for_every_text_of_every_file(string name)
    {
        var files = Worlds[name].Value;
        var shown = string.Join('\n', BookOf(files).Sheets.SelectMany(sheet => sheet.Rows).SelectMany(row => row));
        var missing = files.Where(IsRecords).Select(file => NodeParser.Parse(file, new FaultList())).SelectMany(Texts).Distinct().Where(text => !shown.Contains(text, StringComparison.Ordinal));

        Assert.Equal([], missing);

        static IEnumerable<string> Texts(Node? node) => node switch
        {
            Scalar scalar when scalar.Text.Trim() is { Length: > 0 } text && !text.Contains('\\') && text is not "like-engine" && !scalar.IsNothing => [text.EndsWith('+') ? text[..^1] : text],
            Sequence list => list.Items.SelectMany(Texts),
            Mapping map => map.Entries.SelectMany(entry => Texts(entry.Value)),
            _ => [],
        };
    }

    internal static CollectionBook BookOf(IReadOnlyList<SourceText> files) => CollectionBook.Of(files, CollectionLoader.Load(files).Catalog
        ?? throw new InvalidOperationException(string.Join('\n', CollectionLoader.Load(files).Faults)));

    /// <summary>A workbook's cells as they are read from a file.</summary>
    internal static IReadOnlyList<SheetCells> Sheets(CollectionBook book, bool keepsSigns) => [.. book.Sheets.Select(sheet => new SheetCells(
        sheet.Name,
        sheet.Rows.Prepend([.. sheet.Columns.Select(column => column.Heading)])
            .SelectMany((row, i) => row.Select((text, column) => (Key: (i + 1, column + 1), Text: text)))
            .Where(cell => cell.Text.Length > 0 && (keepsSigns || cell.Key.Item1 == 1 || cell.Key.Item2 != sheet.Columns.Count))
            .ToDictionary(cell => cell.Key, cell => cell.Text)))];

    private static bool IsRecords(SourceText file) => file.Path.EndsWith(".yaml", StringComparison.Ordinal) && !file.Path.StartsWith("vocabulary/", StringComparison.Ordinal);

    /// <summary>The examples of data/README.md, which use every key of the format.</summary>
    private static IReadOnlyList<SourceText> OneOfEverything()
    {
        var document = File.ReadAllText(Repository.PathTo("data", "README.md")).ReplaceLineEndings("\n");
        var examples = document.Split("```yaml\n").Skip(1).Select((part, i) => new SourceText($"example{i + 1:00}.yaml", part[..part.IndexOf("\n```", StringComparison.Ordinal)] + "\n"));
        return [.. CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null).Files.Select(file => file with { Path = "vocabulary/" + file.Path }), .. examples];
    }

    private static IReadOnlyList<SourceText> Generated(int seed)
    {
        var vocabulary = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null).Files.Select(file => file with { Path = "vocabulary/" + file.Path }).ToList();
        // Features without conditions, so that random statements do not exclude each other.
        var features = CollectionLoader.Load(vocabulary).Catalog!.Features.Where(feature => !feature.IsApi && feature.Implies.Count == 0 && !feature.Id.StartsWith('v')).ToList();
        return [.. vocabulary, .. CollectionGenerator.Generate(CollectionSize.S, features, seed).Select(file => new SourceText(file.Key, file.Value))];
    }
}
