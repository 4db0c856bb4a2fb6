using System.CommandLine;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Imports;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads a filled bench worksheet back into the collection.</summary>
internal static class WorksheetImportCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("file") { Description = "The filled worksheet, saved as .xlsx." };
        var command = new Command("worksheet", "Read a filled bench worksheet. Shows what would change; --write writes it.")
        {
            file, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var folder = Session.Folder(parsed.GetValue(Session.CollectionOption));
            var texts = Session.Texts(folder, terminal);
            if (Session.Load(folder, terminal).Catalog is not { } before)
                return ExitCode.Faults;
            var import = WorksheetImport.Of(texts.Files, ImportSession.Read(path));
            foreach (var fault in import.Faults)
                terminal.Tell($"{fault.Place}: {fault.Message}");
            if (import.Faults.Count > 0)
            {
                terminal.Tell($"{Names.Count(import.Faults.Count, "fault")} in {path}; nothing was written.");
                return ExitCode.Faults;
            }

            terminal.Print($"Read {Names.Count(import.ObservationCount, "observation")} and {Names.Count(import.RunCount, "run")}; {Names.Count(import.EmptyCount, "row")} without an answer passed over.\n");
            return Finish(import, before, folder, texts, parsed.GetValue(ImportSession.WriteOption), terminal);
        });
        return command;
    }

    private static int Finish(WorksheetImport import, Catalog before, string folder, CollectionTexts texts, bool writes, Terminal terminal)
    {
        foreach (var line in import.Lines)
            terminal.Print(line + "\n");
        if (import.Result?.Catalog is { } after)
            terminal.Print(SightingsReport.Of(before, after));
        if (import.GoneCount > 0)
            terminal.Print($"{Names.Count(import.GoneCount, "line")} of an earlier import of this worksheet {(writes ? "went" : "would go")}: a worksheet replaces what it brought before. To keep both, make the next one with another --name.\n");
        if (import.Files.Count == 0)
            terminal.Print("The collection holds all of it already.\n");
        else if (!writes)
            terminal.Print("Nothing was written. Say --write to write it.\n");
        if (!writes || import.Files.Count == 0)
            return ExitCode.Fine;
        CollectionWriter.Write(folder, [.. import.Files.Select(file => new FileChange(file.Path, texts.Files.FirstOrDefault(one => one.Path == file.Path)?.Text, file.Text))]);
        foreach (var file in import.Files)
            terminal.Print($"Wrote {Path.Combine(folder, file.Path)}\n");
        return ExitCode.Fine;
    }
}
