using System.CommandLine;
using FeatureMatrix.Cli.Commands.Import;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>What differs between two dumps.</summary>
internal static class DifferenceCommand
{
    public static Command Create(Terminal terminal)
    {
        var old = new Argument<string>("old") { Description = "A capability dump." };
        var now = new Argument<string>("new") { Description = "Another one, for example with another driver of the same card." };
        var command = new Command("difference", "Compare two capability dumps: what is gained, what is lost, which limits changed, and which titles that touches.")
        {
            old, now, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed =>
        {
            if (DumpCommand.Read(parsed.GetValue(old)!, terminal) is not { } first
                || DumpCommand.Read(parsed.GetValue(now)!, terminal) is not { } second
                || Session.Open(parsed, terminal) is not { } session)
            {
                return ExitCode.Faults;
            }

            TableOptions.Print(terminal, parsed, CapabilityReport.Difference(first, second, session.Catalog.Features, session.Decisions.Titles));
            return ExitCode.Fine;
        });
        return command;
    }
}
