using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>Writes a run log that <see cref="RunLogReader"/> reads back as it was.</summary>
public static class RunLogWriter
{
    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture)
    {
        Delimiter = ",",
        NewLine = "\n",
        ShouldQuote = cell => cell.Field is { Length: > 0 } field
            && (field.IndexOfAny([',', ';', '"', '\t', '\r', '\n']) >= 0 || char.IsWhiteSpace(field[0]) || char.IsWhiteSpace(field[^1])),
    };

    /// <summary>
    /// All columns, a line for each row, separated by commas, decimal points, line feeds. No rows give the heading line alone: an empty log to
    /// be filled. Text a spreadsheet would take for a formula gets a leading apostrophe.
    /// </summary>
    public static string Write(IEnumerable<RunLogRow> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(text, Format))
        {
            foreach (var column in RunLogColumns.All)
                csv.WriteField(column.Name);
            csv.NextRecord();
            foreach (var row in rows)
            {
                foreach (var column in RunLogColumns.All)
                {
                    var cell = column.Write(row);
                    csv.WriteField(cell.IsFree ? FormulaGuard.Neutralise(cell.Text) : cell.Text);
                }

                csv.NextRecord();
            }
        }

        return text.ToString();
    }
}
