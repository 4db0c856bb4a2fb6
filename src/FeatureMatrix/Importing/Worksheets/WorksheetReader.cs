using System.Text.RegularExpressions;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>Something wrong with a filled worksheet.</summary>
/// <param name="Place">The sheet and the cell, such as <c>Runs!U4</c>.</param>
/// <param name="Message">What stands there and what may stand there.</param>
public sealed record WorksheetFault(string Place, string Message);

/// <summary>What a filled worksheet holds, as files of a collection; nothing is looked up yet.</summary>
/// <param name="Files">The files; none for a sheet on which nothing was filled in.</param>
/// <param name="Faults">What is wrong already. Then the files are not to be used.</param>
/// <param name="Places">Where each place of the files comes from.</param>
/// <param name="ObservationCount">Rows that say something was seen.</param>
/// <param name="RunCount">Runs.</param>
/// <param name="EmptyCount">Rows without an answer.</param>
internal sealed record WorksheetReading(
    IReadOnlyList<SourceText> Files, IReadOnlyList<WorksheetFault> Faults, PlaceMap Places, int ObservationCount, int RunCount, int EmptyCount);

/// <summary>Reads a bench worksheet after somebody filled it in, with whatever program.</summary>
internal static partial class WorksheetReader
{
    private const int LongestName = 80;

    /// <summary>The files below a collection that a worksheet of some name writes.</summary>
    public static IReadOnlyList<string> PathsOf(string name) => [ObservationsOf(name), RunsOf(name)];

    private static string ObservationsOf(string name) => $"observations/from-worksheet-{name}.yaml";

    private static string RunsOf(string name) => $"runs/from-worksheet-{name}.csv";

    /// <summary>Reads the workbook and collects all faults.</summary>
    public static WorksheetReading Read(byte[] workbook)
    {
        var faults = new List<WorksheetFault>();
        var places = new PlaceMap();
        if (SheetCells.TryReadAll(workbook, out var fault) is not { } sheets)
            return new WorksheetReading([], [new WorksheetFault("the file", fault)], places, 0, 0, 0);
        var name = NameOf(sheets, faults);
        var files = new List<SourceText>();
        var observations = new ObservationRows(Sheet(WorksheetLayout.Observations), ObservationsOf(name), places, faults);
        var runs = new RunRows(Sheet(WorksheetLayout.Runs), RunsOf(name), places, faults);
        files.AddRange(new[] { observations.ToFile(), runs.ToFile() }.OfType<SourceText>());
        return new WorksheetReading(files, faults, places, observations.Count, runs.Count, observations.EmptyCount);

        SheetCells Sheet(string wanted)
        {
            if (sheets.FirstOrDefault(sheet => sheet.Name == wanted) is { } found)
                return found;
            faults.Add(new WorksheetFault(wanted, WorksheetFaultTexts.MissingSheet));
            return new SheetCells(wanted, new Dictionary<(int Row, int Column), string>());
        }
    }

    // The name becomes part of file names, so that it must not lead anywhere else.
    private static string NameOf(IReadOnlyList<SheetCells> sheets, List<WorksheetFault> faults)
    {
        foreach (var sheet in sheets)
        {
            foreach (var ((row, column), text) in sheet.Cells)
            {
                if (text != WorksheetLayout.NameLabel)
                    continue;
                var name = sheet[row, column + 1];
                if (name.Length > LongestName || !FileName().IsMatch(name))
                    faults.Add(new WorksheetFault(sheet.Place(row, column + 1), WorksheetFaultTexts.BadName(name)));
                return name;
            }
        }

        faults.Add(new WorksheetFault("Read me!B2", WorksheetFaultTexts.BadName("")));
        return "";
    }

    [GeneratedRegex("^[a-z0-9]([a-z0-9-]*[a-z0-9])?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1_000)]
    private static partial Regex FileName();
}

/// <summary>Which cell of the worksheet each place of the files came from.</summary>
internal sealed class PlaceMap
{
    private readonly Dictionary<(string File, int Line), List<(int Column, string Text, string Place)>> _entries = [];

    /// <summary>Notes that from this column on, up to the next entry, the line holds what stands in the cell.</summary>
    public void Add(string file, int line, int column, string text, string place)
    {
        if (!_entries.TryGetValue((file, line), out var entries))
            _entries[(file, line)] = entries = [];
        entries.Add((column, text, place));
    }

    /// <summary>The cell behind a fault; null where the place is in no file of the worksheet.</summary>
    public string? Of(Fault fault)
    {
        if (!_entries.TryGetValue((fault.Origin.File, fault.Origin.Line), out var entries))
            return null;
        // A line of a run log is one place to the loader; what it quotes tells the cell.
        return entries.Exists(entry => entry.Column > 1)
            ? entries.LastOrDefault(entry => entry.Column <= fault.Origin.Column, entries[0]).Place
            : entries.FirstOrDefault(entry => IsAbout(fault.Message, entry.Text), entries[0]).Place;
    }

    /// <summary>True where the word that a fault is about, the last it quotes before what would be legal, begins the cell.</summary>
    private static bool IsAbout(string message, string cell)
    {
        var quoted = message.Split(';')[0].Split('\'');
        return quoted.Length > 2 && cell.Length > 0
            && (cell == quoted[^2] || cell.StartsWith(quoted[^2] + " ", StringComparison.Ordinal));
    }
}
