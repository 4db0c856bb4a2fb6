using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What importing a collection's workbook would do, in words.</summary>
public static class WorkbookImportReport
{
    /// <summary>How many rows it takes, and what deserves a look before it is written.</summary>
    public static ExplanationLine Of(WorkbookImport import)
    {
        ArgumentNullException.ThrowIfNull(import);
        var lines = import.Notes.Select(note => new ExplanationLine(LineKind.Gap, note)).ToList();
        if (import.GoneCount > 0)
            lines.Add(new(LineKind.Gap, $"{Names.Count(import.GoneCount, "row")} that nobody changed: the collection no longer has what they say; passed over"));
        return new ExplanationLine(
            LineKind.Statement, $"{Names.Count(import.ChangedCount, "row")} changed, {import.NewCount} new, {import.OutCount} taken out.", lines);
    }
}
