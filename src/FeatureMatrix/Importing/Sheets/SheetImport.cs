using System.Text;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>What importing somebody's own sheet would do to a collection.</summary>
public sealed record SheetImport
{
    private SheetImport()
    {
    }

    /// <summary>Everything wrong with mapping and sheet, by place; then nothing may be written.</summary>
    public IReadOnlyList<WorksheetFault> Faults { get; private init; } = [];

    /// <summary>The change of the collection; null where faults prevent it.</summary>
    public CollectionChange? Change { get; private init; }

    /// <summary>Statements that stay although the sheet says something of the same.</summary>
    public IReadOnlyList<string> Kept { get; private init; } = [];

    /// <summary>Names of titles that would be added.</summary>
    public IReadOnlyList<string> NewTitles { get; private init; } = [];

    /// <summary>How many answers the sheet gives.</summary>
    public int AnswerCount { get; private init; }

    /// <summary>What of the sheet was understood; null where the mapping could not be read.</summary>
    internal SheetUnderstanding? Understood { get; private init; }

    /// <summary>What the mapping states; null where it could not be read.</summary>
    internal SheetMapping? Mapping { get; private init; }

    /// <summary>Reads a sheet against a collection that loads.</summary>
    /// <param name="collection">Its texts.</param>
    /// <param name="catalog">The same, loaded.</param>
    /// <param name="sheetName">Name of the file.</param>
    /// <param name="sheet">An .xlsx file, or separated values in UTF-8.</param>
    /// <param name="mappingFile">How to read it.</param>
    public static SheetImport Of(IReadOnlyList<SourceText> collection, Catalog catalog, string sheetName, byte[] sheet, SourceText mappingFile)
    {
        var mappingFaults = new FaultList();
        if (SheetMappingReader.Read(mappingFile, mappingFaults) is not { } mapping)
            return new SheetImport { Faults = [.. mappingFaults.Sorted().Select(fault => new WorksheetFault(SheetReading.Place(fault.Origin), fault.Message))] };
        var faults = new List<WorksheetFault>();
        if (CellsOf(sheetName, sheet, mapping, faults) is not { } cells)
            return new SheetImport { Faults = faults };
        var path = SheetFile.PathOf(mapping);
        var earlier = collection.FirstOrDefault(file => file.Path == path);
        var known = Without(catalog.Titles, earlier);
        var names = new SheetNames(catalog, known, mapping);
        var (answers, understood) = SheetReading.Read(cells, mapping, names, faults);
        var places = new PlaceMap();
        var file = new SheetFile(mapping, places);
        var kept = new List<string>();
        var records = mapping.States == SheetStates.Needs
            ? SheetNeeds.Of([.. answers.Where(answer => !names.NewTitles.ContainsKey(answer.About.GetValueOrDefault("title")?.Value ?? ""))], collection, known, file, faults, kept)
            : [];
        var read = new SheetImport
        {
            Understood = understood,
            Mapping = mapping,
            AnswerCount = answers.Count,
            NewTitles = [.. names.NewTitles.Values.Select(title => title.Value)],
            Kept = kept,
        };
        if (faults.Count > 0)
            return read with { Faults = Ordered(faults) };
        var change = ChangeOf(collection, earlier, file.Write(answers, names.NewTitles), records);
        faults.AddRange(change.Result.Faults.Where(fault => fault.Severity == Severity.Error)
            .Select(fault => new WorksheetFault(places.Of(fault) ?? SheetReading.Place(fault.Origin), fault.Message)));
        return read with { Faults = Ordered(faults), Change = faults.Count == 0 ? change : null };
    }

    private static CollectionChange ChangeOf(IReadOnlyList<SourceText> collection, SourceText? earlier, SourceText written, IReadOnlyList<RecordChange> records)
    {
        IReadOnlyList<SourceText> whole = [.. collection.Where(one => one.Path != written.Path), written];
        var change = CollectionEditor.Change(whole, records);
        var own = change.Files.FirstOrDefault(one => one.Path == written.Path)?.After ?? written.Text;
        return change with
        {
            Files = own == earlier?.Text
                ? [.. change.Files.Where(one => one.Path != written.Path)]
                : [new FileChange(written.Path, earlier?.Text, own), .. change.Files.Where(one => one.Path != written.Path)],
        };
    }

    private static IReadOnlyList<Title> Without(IReadOnlyList<Title> titles, SourceText? file)
    {
        if (file is null || NodeParser.Parse(file, new FaultList()) is not Mapping root)
            return titles;
        var ids = root.Entries.Where(entry => entry.Key.Text == "titles").SelectMany(entry => (entry.Value as Mapping)?.Entries ?? [])
            .Select(entry => entry.Key.Text).ToHashSet(StringComparer.Ordinal);
        return [.. titles.Where(title => !ids.Contains(title.Id))];
    }

    private static SheetCells? CellsOf(string name, byte[] bytes, SheetMapping mapping, List<WorksheetFault> faults)
    {
        if (!name.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase))
            return new SheetCells(Path.GetFileName(name), DelimitedCells.Read(Encoding.UTF8.GetString(bytes)));
        if (SheetCells.TryReadAll(bytes, out var fault) is not { Count: > 0 } sheets)
        {
            faults.Add(new WorksheetFault(name, fault));
            return null;
        }

        if (mapping.Tab.Length == 0)
            return sheets[0];
        if (sheets.FirstOrDefault(sheet => sheet.Name == mapping.Tab) is { } found)
            return found;
        faults.Add(new WorksheetFault(SheetReading.Place(mapping.TabOrigin), SheetFaultTexts.NoSheet(mapping.Tab, sheets.Select(sheet => sheet.Name))));
        return null;
    }

    private static IReadOnlyList<WorksheetFault> Ordered(IEnumerable<WorksheetFault> faults) => [.. faults.Distinct()];
}
