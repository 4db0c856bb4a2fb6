using System.CommandLine;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Everything that reads cards, drivers and titles instead of having them typed.</summary>
internal static class ImportCommand
{
    public static Command Create(Terminal terminal) => new(
        "import", "Read what cards, drivers and titles say of themselves into the collection. Shows what would change; --write writes it.")
    {
        OpenGlCommand.Create(terminal),
        DumpCommand.Create(terminal),
        InfCommand.Create(terminal),
        TitleCommand.Create(terminal),
        RunsCommand.Create(terminal),
        WorkbookImportCommand.Create(terminal),
        WorksheetImportCommand.Create(terminal),
        SheetCommand.Create(terminal),
    };
}
