using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>
/// Reads a run log: comma-separated values as in RFC 4180, or separated by semicolons or tabs; columns in any order, capitals,
/// spaces, hyphens and underscores of headings not minded; decimal point or comma, the same throughout; a byte order mark and
/// empty lines passed over.
/// </summary>
public static class RunLogReader
{
    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>Reads the whole text and collects all faults, up to a thousand.</summary>
    public static RunLog Read(string text)
    {
        text = text.TrimStart('\uFEFF');
        var state = new RunLogState();
        List<RunLogRow> rows = [];
        var records = Records(text, state).Where(record => record.Cells.Any(cell => cell.Length > 0));
        Heading[]? headings = null;
        foreach (var (line, cells, faultsBefore) in records)
        {
            if (state.IsHopeless)
                break;
            if (headings is null)
            {
                headings = Headings(line, cells, state);
                if (headings.All(heading => heading.Column is null))
                    break;
                continue;
            }

            var row = Row(line, cells, headings, state);
            if (state.Faults.Count == faultsBefore)
                CheckWhole(row, state);
            if (state.Faults.Count == faultsBefore)
                rows.Add(row);
        }

        if (headings is null || headings.All(heading => heading.Column is null))
            return NotARunLog(text);
        var whole = RunLogColumns.All.All(column => !column.Required || headings.Any(heading => heading.Column == column));
        return new RunLog(
            new EquatableList<RunLogRow>(whole ? rows : []),
            new EquatableList<RunLogFault>(state.Faults.OrderBy(fault => fault.Line)));
    }

    private static RunLog NotARunLog(string text)
    {
        var state = new RunLogState();
        state.Add(RunLogFaultKind.NotARunLog, 1, "", FirstLine(text), RunLogColumns.Names);
        return new RunLog(new EquatableList<RunLogRow>([]), new EquatableList<RunLogFault>(state.Faults));
    }

    private static Heading[] Headings(int line, string[] cells, RunLogState state)
    {
        var headings = new Heading[cells.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var column = RunLogColumns.Named(cells[i]);
            var repeated = column is not null && headings.Take(i).Any(heading => heading.Column == column);
            headings[i] = new Heading(cells[i], repeated ? null : column);
            if (repeated)
                state.Add(RunLogFaultKind.RepeatedColumn, line, column!.Name, cells[i]);
            else if (column is null && cells[i].Length > 0)
                state.Add(RunLogFaultKind.UnknownColumn, line, cells[i], cells[i], RunLogColumns.Names);
        }

        foreach (var missing in RunLogColumns.All.Where(column => column.Required && headings.All(heading => heading.Column != column)))
            state.Add(RunLogFaultKind.MissingColumn, line, missing.Name, "");
        return headings;
    }

    private static RunLogRow Row(int line, string[] cells, Heading[] headings, RunLogState state)
    {
        var row = new RunLogRow { Line = line };
        for (var i = 0; i < cells.Length; i++)
        {
            if (i < headings.Length && headings[i].Column is { } column)
                row = column.Read(row, new RunLogCell(cells[i], line, column.Name, state));
            else if (cells[i].Length > 0 && (i >= headings.Length || headings[i].Text.Length == 0))
                state.Add(RunLogFaultKind.SurplusCell, line, "", cells[i]);
        }

        foreach (var (_, column) in headings)
        {
            if (column is { Required: true } && column.Write(row).Text.Length == 0)
                state.Add(RunLogFaultKind.MissingValue, line, column.Name, "");
        }

        return row;
    }

    // What the cells must hold between them; a row with a faulty cell is not blamed twice.
    private static void CheckWhole(RunLogRow row, RunLogState state)
    {
        if (row.Score is not null && row.HigherIsBetter is null)
            state.Add(RunLogFaultKind.MissingValue, row.Line, "better", "", ["higher", "lower"]);
        if (row is { Fps: null, Score: null, FrameTimes: "", Discarded: "" })
            state.Add(RunLogFaultKind.MissingValue, row.Line, "fps", "", ["fps", "score", "frame-times", "discarded"]);
    }

    private static IEnumerable<(int Line, string[] Cells, int FaultsBefore)> Records(string text, RunLogState state)
    {
        string? badCell = null;
        using var reader = new StringReader(text);
        using var csv = new CsvParser(reader, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = SeparatorOf(FirstLine(text)).ToString(),
            BadDataFound = bad => badCell = bad.Field,
            IgnoreBlankLines = true,
        });
        while (csv.Read())
        {
            string[] cells = [.. csv.Record!.Select(cell => FormulaGuard.Restore(cell.Trim()))];
            // A quote that nothing closes takes in the rest of the file, its last line break included.
            var open = badCell is not null && badCell.StartsWith('"') && badCell.Count(c => c == '"') % 2 == 1;
            var line = csv.RawRow - Breaks(open ? csv.RawRecord : csv.RawRecord.TrimEnd('\r', '\n'));
            var faultsBefore = state.Faults.Count;
            if (badCell is not null)
                state.Add(open ? RunLogFaultKind.OpenQuote : RunLogFaultKind.StrayQuote, line, "", FirstLine(badCell));
            badCell = null;
            yield return (line, cells, faultsBefore);
        }
    }

    // The separator that cuts the headings into the most known columns; the comma among equals.
    private static char SeparatorOf(string headings) =>
        Separators.MaxBy(separator => headings.Split(separator).Count(heading => RunLogColumns.Named(heading.Trim(' ', '"')) is not null));

    private static string FirstLine(string text) =>
        text.Split('\n').Select(line => line.Trim('\r', ' ')).FirstOrDefault(line => line.Length > 0) ?? "";

    private static int Breaks(string record) =>
        record.Count(c => c == '\n') + record.Where((c, i) => c == '\r' && (i + 1 == record.Length || record[i + 1] != '\n')).Count();

    /// <summary>A heading as it stands, and the column whose cells are read under it; null where they are not.</summary>
    private sealed record Heading(string Text, RunLogColumn? Column);
}
