using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.Records;

/// <summary>Rows of a bench log that join a collection in a file of their own; files that are there are never touched.</summary>
public static class NewRuns
{
    private const string Folder = "runs/";

    /// <summary>The file to add, normalised; null where the collection has every row as often as the log has.</summary>
    /// <param name="files">The collection's files.</param>
    /// <param name="name">Name for the file, an id.</param>
    /// <param name="rows">The log's rows.</param>
    public static SourceText? Of(IReadOnlyList<SourceText> files, string name, IEnumerable<RunLogRow> rows)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(rows);
        var there = files.Where(file => file.Path.EndsWith(".csv", StringComparison.Ordinal) && file.Path.Split('/') is [.., "runs", _])
            .SelectMany(file => RunLogReader.Read(file.Text).Rows).GroupBy(Unplaced).ToDictionary(group => group.Key, group => group.Count());
        var missing = new List<RunLogRow>();
        foreach (var row in rows)
        {
            var left = there.GetValueOrDefault(Unplaced(row));
            if (left > 0)
                there[Unplaced(row)] = left - 1;
            else
                missing.Add(row);
        }

        return missing.Count == 0 ? null : new SourceText(FreePath(files, name), RunLogWriter.Write(missing));
    }

    private static RunLogRow Unplaced(RunLogRow row) => row with { Line = 0 };

    private static string FreePath(IReadOnlyList<SourceText> files, string name)
    {
        for (var number = 1; ; number++)
        {
            var path = number == 1 ? $"{Folder}{name}.csv" : $"{Folder}{name}-{number}.csv";
            if (files.All(file => file.Path != path))
                return path;
        }
    }
}
