using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>What importing a filled worksheet would do to a collection.</summary>
/// <param name="Faults">Everything wrong, by sheet and cell; then nothing may be written.</param>
/// <param name="Files">The files that would be new or different. Empty where the collection says it all already.</param>
/// <param name="Lines">What would change, line by line: added lines begin with +, lines that go with -.</param>
/// <param name="ObservationCount">Filled rows of what was seen.</param>
/// <param name="RunCount">Runs.</param>
/// <param name="EmptyCount">Rows without an answer, passed over.</param>
/// <param name="Result">The collection with the worksheet in it.</param>
public sealed record WorksheetImport(
    IReadOnlyList<WorksheetFault> Faults, IReadOnlyList<SourceText> Files, IReadOnlyList<string> Lines,
    int ObservationCount, int RunCount, int EmptyCount, LoadResult? Result)
{
    /// <summary>The files below a collection that a worksheet of some name writes.</summary>
    public static IReadOnlyList<string> PathsOf(string name) => WorksheetReader.PathsOf(name);

    /// <summary>Results of an earlier import under the same name that this worksheet does not hold any more.</summary>
    public int GoneCount => Math.Max(0, Lines.Count(line => line.StartsWith("- ", StringComparison.Ordinal)) - Lines.Count(line => line.StartsWith("+ ", StringComparison.Ordinal)));

    /// <summary>Reads a worksheet against the texts of a collection that loads. A worksheet imported before replaces what it brought then.</summary>
    public static WorksheetImport Of(IReadOnlyList<SourceText> collection, byte[] workbook)
    {
        var reading = WorksheetReader.Read(workbook);
        var paths = reading.Files.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        var result = CollectionLoader.Load([.. collection.Where(file => !paths.Contains(file.Path)), .. reading.Files]);
        var faults = reading.Faults.Concat(result.Faults.Where(fault => fault.Severity == Severity.Error)
                .Select(fault => new WorksheetFault(reading.Places.Of(fault) ?? fault.Origin.File, fault.Message)))
            .Distinct().ToList();
        var changed = reading.Files.Where(file => TextOf(file.Path) != file.Text).ToList();
        return new WorksheetImport(
            faults, faults.Count == 0 ? changed : [], changed.SelectMany(file => Difference(TextOf(file.Path) ?? "", file.Text)).ToList(),
            reading.ObservationCount, reading.RunCount, reading.EmptyCount, faults.Count == 0 ? result : null);

        string? TextOf(string path) => collection.FirstOrDefault(file => file.Path == path)?.Text;
    }

    private static IEnumerable<string> Difference(string before, string after)
    {
        var (old, young) = (before.Split('\n'), after.Split('\n'));
        return old.Except(young, StringComparer.Ordinal).Select(line => "- " + line.Trim())
            .Concat(young.Except(old, StringComparer.Ordinal).Select(line => "+ " + line.Trim())).Where(line => line.Length > 2);
    }
}
