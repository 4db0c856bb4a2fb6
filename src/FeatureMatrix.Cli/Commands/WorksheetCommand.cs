using System.CommandLine;
using System.Globalization;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Makes a worksheet to fill in at the bench.</summary>
internal static class WorksheetCommand
{
    public static Command Create(Terminal terminal)
    {
        var cards = new Argument<string[]>("cards") { Description = "The cards to test, by id or name; all where none is named.", Arity = ArgumentArity.ZeroOrMore }.Completing(Known.Cards);
        var open = new Option<bool>("--open") { Description = "Only tests whose result is not known; without it also what is inferred but was never watched." };
        var name = new Option<string>("--name") { Description = "Name of the worksheet: small letters, digits, hyphens. Importing a worksheet of the same name again replaces what it brought.", DefaultValueFactory = _ => "bench" };
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
            var worksheet = BenchWorksheet.Of(parsed.GetValue(name)!, session.Decisions, chosen, session.Decisions.Titles, parsed.GetValue(open));
            var path = parsed.GetValue(output)!;
            WriteNew(path, worksheet);
            terminal.Print($"{worksheet.Tasks.Count.ToString(CultureInfo.InvariantCulture)} tests in {path}. Fill it in and say: import worksheet {path}\n");
            return ExitCode.Fine;
        });
        return command;
    }

    /// <summary>Writes a worksheet where nothing stands yet: one that is there may have been filled in.</summary>
    public static void WriteNew(string path, BenchWorksheet worksheet)
    {
        if (File.Exists(path))
            throw new UsageException($"{path} exists already and may hold answers. Import it and move it away, or name another file.");
        AtomicFile.Write(path, BenchWorksheetWriter.Write(worksheet));
    }
}
