using System.CommandLine;
using FeatureMatrix.Loading;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Looks for faults in the data.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var command = new Command("check", "Check the collection and list every fault with file, line and column.") { Session.CollectionOption };
        command.SetAction(parsed =>
        {
            var folder = Session.Folder(parsed.GetValue(Session.CollectionOption));
            var result = Session.Load(folder, terminal);
            foreach (var warning in result.Faults.Where(fault => fault.Severity == Severity.Warning))
                terminal.Tell(warning.ToString());
            if (result.Catalog is not { } catalog)
                return ExitCode.Faults;
            terminal.Print(
                $"{folder}: {catalog.Cards.Count} cards, {catalog.Drivers.Count()} drivers, {catalog.WrapperVersions.Count()} wrapper versions, "
                + $"{catalog.Titles.Count} titles, {catalog.Observations.Count} observations; {result.Faults.Count} warnings.\n");
            return ExitCode.Fine;
        });
        return command;
    }
}
