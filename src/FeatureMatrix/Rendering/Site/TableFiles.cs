using System.Text.Json;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Site;

/// <summary>A table as files in every format, and as a script that hands the same texts to the copy buttons: a page opened from a folder may load a script, but not read a file.</summary>
internal static class TableFiles
{
    private static readonly (string Ending, TableFormat Format)[] Formats =
        [("md", TableFormat.Markdown), ("bbcode", TableFormat.Forum), ("csv", TableFormat.Csv), ("json", TableFormat.Json), ("txt", TableFormat.Text)];

    public static IEnumerable<OutputFile> Of(string name, Table table)
    {
        var texts = Formats.Select(format => (format.Ending, Text: TableWriter.Write(table, format.Format))).ToList();
        foreach (var (ending, text) in texts)
            yield return OutputFile.Text(SiteAddress.OfTable(name, ending), text);
        var entries = JsonSerializer.Serialize(texts.ToDictionary(pair => pair.Ending, pair => pair.Text));
        yield return OutputFile.Text(SiteAddress.OfTable(name, "js"), $"featureMatrixTable({JsonSerializer.Serialize(name)}, {entries});\n");
    }
}
