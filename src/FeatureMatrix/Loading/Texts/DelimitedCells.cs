using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace FeatureMatrix.Loading.Texts;

/// <summary>The filled cells of any table of separated values (RFC 4180), by row and column, both from 1.</summary>
public static class DelimitedCells
{
    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>Reads a table; the separator is that of comma, semicolon and tab which its first filled line has most of.</summary>
    public static IReadOnlyDictionary<(int Row, int Column), string> Read(string text)
    {
        text = text.TrimStart('\uFEFF');
        var first = text.Split('\n').FirstOrDefault(line => !string.IsNullOrWhiteSpace(line)) ?? "";
        var cells = new Dictionary<(int Row, int Column), string>();
        using var reader = new StringReader(text);
        using var csv = new CsvParser(reader, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = Separators.MaxBy(separator => first.Count(c => c == separator)).ToString(),
            BadDataFound = null,
            IgnoreBlankLines = false,
        });
        for (var row = 1; csv.Read(); row++)
        {
            for (var column = 0; column < csv.Count; column++)
            {
                if (csv[column].Trim() is { Length: > 0 } cell)
                    cells[(row, column + 1)] = cell;
            }
        }

        return cells;
    }
}
