using System.CommandLine;

namespace FeatureMatrix.Cli;

/// <summary>The command line as a whole. Tests call it in process.</summary>
internal static class Application
{
    /// <summary>Runs one command line and returns its exit code.</summary>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        var root = CommandTree.Create(terminal);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0 && !root.Directives.Any(directive => parsed.GetResult(directive) is not null))
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
}
