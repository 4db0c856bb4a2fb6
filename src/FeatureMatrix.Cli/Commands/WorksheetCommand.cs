using System.CommandLine;
using System.Globalization;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Makes a worksheet to fill in at the bench.</summary>
internal static class WorksheetCommand
{
    public static Command Create(Terminal terminal)
    {
        var cards = new Argument<string[]>("cards") { Description = "The cards to test, by id or name; all where none is named.", Arity = ArgumentArity.ZeroOrMore }.Completing(Known.Cards);
        var open = new Option<bool>("--open") { Description = "Only tests whose result is not known; without it also what is inferred but was never watched." };
        var name = new Option<string?>("--name") { Description = "Name of the worksheet: small letters, digits, hyphens. Importing a worksheet of the same name again replaces what it brought. Default: bench, bench-2 and so on, one that the collection has not imported yet." };
        var output = new Option<string>("--out", "-o") { Description = "File to write. Default: worksheet.xlsx.", DefaultValueFactory = _ => "worksheet.xlsx", HelpName = "file" };
        var command = new Command("worksheet", "Make a spreadsheet to fill in at the bench; 'import worksheet' reads it back.")
        {
            cards, open, name, output, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var chosen = parsed.GetValue(cards) is { Length: > 0 } words
                ? words.Select(session.Card).ToList()
                : session.Catalog.Cards;
            var worksheet = BenchWorksheet.Of(parsed.GetValue(name) ?? FreeName(Session.Folder(parsed.GetValue(Session.CollectionOption))), session.Decisions, chosen, session.Decisions.Titles, parsed.GetValue(open));
            var path = parsed.GetValue(output)!;
            WriteNew(path, worksheet);
            terminal.Print($"{Names.Count(worksheet.Tasks.Count, "test")} in {path}. Fill it in and say: import worksheet {path}\n");
            return ExitCode.Fine;
        });
        return command;
    }

    /// <summary>A name under which nothing was imported, so that the answers of another day stay.</summary>
    private static string FreeName(string folder) =>
        Enumerable.Range(1, int.MaxValue).Select(number => number == 1 ? "bench" : string.Create(CultureInfo.InvariantCulture, $"bench-{number}"))
            .First(name => !WorksheetImport.PathsOf(name).Any(path => File.Exists(Path.Combine(folder, path))));

    /// <summary>Writes a worksheet where nothing stands yet: one that is there may have been filled in.</summary>
    public static void WriteNew(string path, BenchWorksheet worksheet)
    {
        if (File.Exists(path))
            throw new UsageException($"{path} exists already and may hold answers. Import it and move it away, or name another file.");
        AtomicFile.Write(path, BenchWorksheetWriter.Write(worksheet));
    }
}
