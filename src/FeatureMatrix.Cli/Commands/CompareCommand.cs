using System.CommandLine;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Which of two cards for a library.</summary>
internal static class CompareCommand
{
    public static Command Create(Terminal terminal)
    {
        var first = new Argument<string>("first") { Description = "A card, by id or name." };
        var second = new Argument<string>("second") { Description = "The other card." };
        var command = new Command("compare", "Weigh two cards for a library: who wins, why, and what would change it.")
        {
            first, second, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var report = CompareReport.Of(
                new Weighing(session.Decisions), session.Card(parsed.GetValue(first)!), session.Card(parsed.GetValue(second)!));
            TableOptions.Print(terminal, parsed, report.ToReport());
            return ExitCode.Fine;
        });
        return command;
    }
}
