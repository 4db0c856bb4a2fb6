using System.CommandLine;
using System.Globalization;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Rendering.Workbook;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Writes the collection itself as a spreadsheet to edit.</summary>
internal static class WorkbookCommand
{
    public static Command Create(Terminal terminal)
    {
        var output = new Option<string>("--out", "-o") { Description = "File to write. Default: collection.xlsx.", DefaultValueFactory = _ => "collection.xlsx", HelpName = "file" };
        var command = new Command("workbook", "Write the collection itself as a spreadsheet to edit, a row for each record; 'import workbook' reads it back.")
        {
            output, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var folder = Session.Folder(parsed.GetValue(Session.CollectionOption));
            if (Session.Load(folder, terminal).Catalog is not { } catalog)
                return ExitCode.Faults;
            var files = Session.Texts(folder, terminal).Files;
            var book = CollectionBook.Of(files, catalog);
            var path = parsed.GetValue(output)!;
            if (File.Exists(path))
                throw new UsageException($"{path} exists already and may hold changes. Import it and move it away, or name another file.");
            var bytes = CollectionBookWriter.Write(book);
            // Nobody should edit a workbook that cannot come back.
            if (WorkbookImport.Of(files, bytes) is { Faults: [var fault, ..] })
                throw new UsageException($"The workbook of this collection could not be read back: {fault.Place} {fault.Message}. Nothing was written.");
            AtomicFile.Write(path, bytes);
            var rows = book.Sheets.Sum(sheet => sheet.Rows.Count).ToString(CultureInfo.InvariantCulture);
            terminal.Print($"{rows} rows in {path}. Change it and say: import workbook {path}\n");
            return ExitCode.Fine;
        });
        return command;
    }
}
