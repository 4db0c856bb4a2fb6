using System.CommandLine;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Makes a sheet with which somebody else can repeat one result.</summary>
internal static class RepeatCommand
{
    public static Command Create(Terminal terminal)
    {
        var title = new Argument<string>("title") { Description = "The title, by id or name." };
        var card = new Argument<string>("card") { Description = "The card, by id or name." };
        var output = new Option<string>("--out", "-o") { Description = "File to write. Default: repeat.xlsx.", DefaultValueFactory = _ => "repeat.xlsx", HelpName = "file" };
        var command = new Command("repeat", "Make a printable sheet with which somebody else can repeat one result; 'import worksheet' reads it back.")
        {
            title, card, output, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var chosen = Find.One(parsed.GetValue(title)!, "title", session.Catalog.Titles, one => one.Id, one => one.Name);
            if (RepeatReport.Of(session.Decisions, chosen, session.Card(parsed.GetValue(card)!)) is not { } report)
                throw new UsageException("No route with a recorded driver leads to a result that could be repeated.");
            var path = parsed.GetValue(output)!;
            File.WriteAllBytes(path, BenchWorksheetWriter.Write(report));
            terminal.Print($"{report.Heading}: {report.Result}.\nHow to repeat it is in {path}. Filled in, it comes back with: import worksheet {path}\n");
            return ExitCode.Fine;
        });
        return command;
    }
}
