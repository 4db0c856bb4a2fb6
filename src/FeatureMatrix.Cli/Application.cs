using System.CommandLine;
using FeatureMatrix.Cli.Commands;
using FeatureMatrix.Cli.Commands.Import;

namespace FeatureMatrix.Cli;

/// <summary>The command line as a whole. Tests call it in process.</summary>
internal static class Application
{
    /// <summary>Runs one command line and returns its exit code.</summary>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        var root = new RootCommand("Which titles run on which old graphics card, by which route, and what is lost.");
        foreach (var command in All(terminal))
            root.Subcommands.Add(command);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
                terminal.Tell(error.Message);
            terminal.Tell("Say --help after a command for its options and examples.");
            return ExitCode.Usage;
        }

        try
        {
            return parsed.Invoke(new InvocationConfiguration { Output = terminal.Results, Error = terminal.Messages, EnableDefaultExceptionHandler = false });
        }
        catch (UsageException problem)
        {
            terminal.Tell(problem.Message);
            return ExitCode.Usage;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            terminal.Tell($"{problem.Message.TrimEnd('.')}. Nothing was changed.");
            return ExitCode.Faults;
        }
    }

    private static IEnumerable<Command> All(Terminal terminal) =>
    [
        PublishCommand.Create(terminal),
        CoverageCommand.Create(terminal),
        ExplainCommand.Create(terminal),
        .. DecisionCommands.All(terminal),
        BenchCommands.Bench(terminal),
        BenchCommands.Against(terminal),
        BenchCommands.Headroom(terminal),
        NewCommand.Create(terminal),
        CheckCommand.Create(terminal),
        WorksheetCommand.Create(terminal),
        SchemaCommand.Create(terminal),
        ImportCommand.Create(terminal),
        IdentifyCommand.Create(terminal),
        ChipsCommand.Create(terminal),
        DifferenceCommand.Create(terminal),
        FitCommand.Create(terminal),
    ];
}
