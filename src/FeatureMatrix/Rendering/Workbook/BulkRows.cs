using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>A cell of many: its text or number, and the row and column of the sample that it looks like.</summary>
/// <param name="Sample">Row and column of a styled cell among the samples.</param>
/// <param name="Text">Its text; null for a number.</param>
/// <param name="Number">Its number.</param>
internal readonly record struct BulkCell((int Row, int Column) Sample, string? Text, double Number = 0);

/// <summary>A row of many cells, from column A.</summary>
/// <param name="Height">Its height in points.</param>
/// <param name="Cells">Its cells.</param>
internal sealed record BulkRow(double Height, IEnumerable<BulkCell> Cells);

/// <summary>
/// Rows that are written into a finished package one after the other, because ClosedXML holds a kilobyte for each cell. On the sheet stand
/// samples in their place: cells with every look that occurs, styled by the same code as everything else.
/// </summary>
/// <param name="Sheet">The sheet's name.</param>
/// <param name="FirstRow">The row of the first sample, and then of the first row.</param>
/// <param name="LastRow">The last row that will be written.</param>
/// <param name="LastColumn">The last column that will be written.</param>
/// <param name="Rows">The rows.</param>
internal sealed partial record BulkRows(string Sheet, int FirstRow, int LastRow, int LastColumn, IEnumerable<BulkRow> Rows)
{
    /// <summary>Writes a sheet with the rows in the place of the samples.</summary>
    public void Write(string sheet, TextWriter writer, SharedTexts texts)
    {
        var samples = sheet.IndexOf($"<x:row r=\"{FirstRow.ToString(CultureInfo.InvariantCulture)}\"", StringComparison.Ordinal);
        var end = sheet.IndexOf("</x:sheetData>", StringComparison.Ordinal);
        if (samples < 0)
            samples = end;
        var styles = StyledCell().Matches(sheet[samples..end]).ToDictionary(
            match => match.Groups["cell"].Value, match => match.Groups["style"].Value, StringComparer.Ordinal);
        writer.Write(Dimension().Replace(sheet[..samples], $"<x:dimension ref=\"A1:{Letters(LastColumn)}{LastRow.ToString(CultureInfo.InvariantCulture)}\" />", 1));
        var looks = new Dictionary<(int Row, int Column), string>();
        var letters = Enumerable.Range(1, LastColumn).Select(Letters).ToArray();
        var row = FirstRow;
        foreach (var line in Rows)
            Write(writer, line, (row++).ToString(CultureInfo.InvariantCulture), letters, Look, texts);
        writer.Write(sheet.AsSpan(end));

        string Look((int Row, int Column) sample)
        {
            if (!looks.TryGetValue(sample, out var style))
                looks[sample] = style = styles[Letters(sample.Column) + sample.Row.ToString(CultureInfo.InvariantCulture)];
            return style;
        }
    }

    private static void Write(TextWriter writer, BulkRow line, string row, string[] letters, Func<(int Row, int Column), string> look, SharedTexts texts)
    {
        writer.Write("<x:row r=\"");
        writer.Write(row);
        writer.Write("\" ht=\"");
        writer.Write(line.Height.ToString("R", CultureInfo.InvariantCulture));
        writer.Write("\" customHeight=\"1\">");
        var column = 0;
        foreach (var cell in line.Cells)
        {
            writer.Write("<x:c r=\"");
            writer.Write(letters[column++]);
            writer.Write(row);
            writer.Write("\" s=\"");
            writer.Write(look(cell.Sample));
            writer.Write(cell.Text is null ? "\"><x:v>" : "\" t=\"s\"><x:v>");
            writer.Write(cell.Text is null ? cell.Number.ToString("R", CultureInfo.InvariantCulture) : texts.NumberOf(cell.Text));
            writer.Write("</x:v></x:c>");
        }

        writer.Write("</x:row>");
    }

    private static string Letters(int column) => column <= 26 ? ((char)('A' + column - 1)).ToString() : Letters((column - 1) / 26) + Letters(((column - 1) % 26) + 1);

    [GeneratedRegex("<x:c r=\"(?<cell>[A-Z]+[0-9]+)\" s=\"(?<style>[0-9]+)\"", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex StyledCell();

    [GeneratedRegex("<x:dimension ref=\"[^\"]*\" />", RegexOptions.CultureInvariant, 10_000)]
    private static partial Regex Dimension();
}

/// <summary>The texts that cells of a package share, to which rows add theirs.</summary>
internal sealed partial class SharedTexts
{
    private readonly string _part;
    private readonly int _count;
    private readonly Dictionary<string, string> _numbers = new(StringComparer.Ordinal);
    private readonly StringBuilder _added = new();

    /// <summary>The texts of a part as it was written.</summary>
    public SharedTexts(string part)
    {
        _part = part;
        _count = int.Parse(Counts().Match(part).Groups["count"].ValueSpan, CultureInfo.InvariantCulture);
    }

    /// <summary>The number of a text, as cells write it.</summary>
    public string NumberOf(string text)
    {
        if (_numbers.TryGetValue(text, out var number))
            return number;
        number = _numbers[text] = (_count + _numbers.Count).ToString(CultureInfo.InvariantCulture);
        _added.Append("<x:si><x:t xml:space=\"preserve\">").Append(System.Security.SecurityElement.Escape(text)).Append("</x:t></x:si>");
        return number;
    }

    /// <summary>The part with the texts that were added.</summary>
    public override string ToString()
    {
        if (_numbers.Count == 0)
            return _part;
        var count = (_count + _numbers.Count).ToString(CultureInfo.InvariantCulture);
        return Counts().Replace(_part, $"count=\"{count}\" uniqueCount=\"{count}\"", 1).Replace("</x:sst>", _added + "</x:sst>", StringComparison.Ordinal);
    }

    [GeneratedRegex("count=\"[0-9]+\" uniqueCount=\"(?<count>[0-9]+)\"", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Counts();
}
