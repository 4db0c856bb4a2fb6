using System.CommandLine;
using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Reports.Imports;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads an edited workbook of the collection back into its files.</summary>
internal static class WorkbookImportCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("file") { Description = "The workbook, saved as .xlsx." };
        var command = new Command("workbook", "Read an edited workbook of the collection back into its files. Shows what would change; --write writes it.")
        {
            file, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var workbook = ImportSession.Read(path);
            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var import = WorkbookImport.Of(session.Files, workbook);
            foreach (var fault in import.Faults)
                terminal.Tell($"{fault.Place}: {fault.Message}");
            if (import.Change is not { } change)
            {
                terminal.Tell($"{Names.Count(import.Faults.Count, "fault")} in {path}; nothing was written.");
                return ExitCode.Faults;
            }

            terminal.Print(WorkbookImportReport.Of(import));
            return session.Finish(change);
        });
        return command;
    }
}
