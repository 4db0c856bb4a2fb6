using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>What importing a collection's workbook would do to the collection.</summary>
/// <param name="Faults">Everything wrong, by sheet and cell; then nothing may be written.</param>
/// <param name="Notes">What deserves a look before it is written, by sheet and cell.</param>
/// <param name="ChangedCount">Rows whose cells changed.</param>
/// <param name="NewCount">New rows.</param>
/// <param name="OutCount">Rows to be taken out.</param>
/// <param name="GoneCount">Rows that nobody changed and that the collection no longer has; they are passed over.</param>
/// <param name="Change">The change of the collection; null where faults prevent it.</param>
public sealed record WorkbookImport(
    IReadOnlyList<WorksheetFault> Faults, IReadOnlyList<string> Notes, int ChangedCount, int NewCount, int OutCount, int GoneCount, CollectionChange? Change)
{
    /// <summary>Reads a workbook against the texts of a collection that loads.</summary>
    /// <param name="collection">Its texts, those of the vocabulary included.</param>
    /// <param name="workbook">The file.</param>
    public static WorkbookImport Of(IReadOnlyList<SourceText> collection, byte[] workbook) =>
        SheetCells.TryReadAll(workbook, out var fault) is { } sheets
            ? Of(collection, sheets)
            : new WorkbookImport([new WorksheetFault("the file", fault)], [], 0, 0, 0, 0, null);

    internal static WorkbookImport Of(IReadOnlyList<SourceText> collection, IReadOnlyList<SheetCells> sheets)
    {
        var faults = new List<WorksheetFault>();
        var lines = BookLine.Read(sheets, faults);
        var merge = BookMerge.Of(CollectionBook.Open(collection), faults.Count == 0 ? lines : [], faults);
        var result = new WorkbookImport([.. faults.Distinct()], merge.Notes, merge.ChangedCount, merge.NewCount, merge.OutCount, merge.GoneCount, null);
        if (faults.Count > 0)
            return result;
        var texts = merge.Files.ToDictionary(file => file.Path, file => TextRevision.Of(file.Text, file.Root), StringComparer.Ordinal);
        var before = collection.ToDictionary(file => file.Path, file => file.Text, StringComparer.Ordinal);
        var change = CollectionEditor.Put(
            collection, [.. texts.Where(text => before.GetValueOrDefault(text.Key) != text.Value).OrderBy(text => text.Key, StringComparer.Ordinal)
                .Select(text => new FileChange(text.Key, before.GetValueOrDefault(text.Key), text.Value))]);
        var places = new BookFaultPlaces(merge, texts);
        faults.AddRange(change.Result.Faults.Where(one => one.Severity == Severity.Error).Select(places.Of));
        return result with { Faults = [.. faults.Distinct()], Change = faults.Count == 0 ? change : null };
    }
}
