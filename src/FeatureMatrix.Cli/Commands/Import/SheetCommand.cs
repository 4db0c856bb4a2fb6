using System.CommandLine;
using System.Text;
using FeatureMatrix.Importing.Sheets;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Reports.Imports;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads somebody's own spreadsheet by a mapping.</summary>
internal static class SheetCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("file") { Description = "A spreadsheet as .xlsx, or separated values in UTF-8." };
        var mapping = new Argument<string?>("mapping")
        {
            Description = "The mapping that explains its columns and words; data/README.md describes it. Without one a draft is printed to begin with.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("sheet", "Read a spreadsheet of your own by a mapping. Shows what was understood and what would change; --write writes it.")
        {
            file, mapping, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var sheet = ImportSession.Read(path);
            var mappingText = parsed.GetValue(mapping) is { } name ? new SourceText(name, Encoding.UTF8.GetString(ImportSession.Read(name))) : null;
            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            return mappingText is null ? Draft(path, sheet, session, terminal) : Import(path, sheet, mappingText, session, terminal);
        });
        return command;
    }

    private static int Import(string path, byte[] sheet, SourceText mapping, ImportSession session, Terminal terminal)
    {
        var import = SheetImport.Of(session.Files, session.Catalog, path, sheet, mapping);
        terminal.Print(SheetImportReport.Understood(import));
        foreach (var fault in import.Faults)
            terminal.Tell($"{fault.Place}: {fault.Message}");
        if (import.Change is { } change)
            return session.Finish(change);
        terminal.Tell($"{Names.Count(import.Faults.Count, "fault")} in {path} and its mapping; nothing was written.");
        return ExitCode.Faults;
    }

    private static int Draft(string path, byte[] sheet, ImportSession session, Terminal terminal)
    {
        if (SheetDraft.Of(path, sheet, session.Catalog) is not { } draft)
            throw new UsageException($"{path} holds no table: it is empty, damaged or protected by a password.");
        terminal.Print(draft);
        return ExitCode.Fine;
    }
}
