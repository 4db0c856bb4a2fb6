using System.CommandLine;
using System.Text.RegularExpressions;

namespace FeatureMatrix.Cli;

/// <summary>The command line as a whole. Tests call it in process.</summary>
internal static partial class Application
{
    /// <summary>Runs one command line and returns its exit code.</summary>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        var root = CommandTree.Create(terminal);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0 && !root.Directives.Any(directive => parsed.GetResult(directive) is not null))
        {
            foreach (var error in parsed.Errors)
                terminal.Tell(InPlainWords(error.Message));
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

    /// <summary>The parser's message without the names of types.</summary>
    private static string InPlainWords(string message)
    {
        var match = NotOfItsType().Match(message);
        if (!match.Success)
            return message;
        var words = match.Groups["words"].Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return $"{match.Groups["option"].Value} {match.Groups["word"].Value}: {(words.Length > 0 ? $"say one of {string.Join(", ", words)}" : "that is not what it takes")}.";
    }

    [GeneratedRegex(@"^Cannot parse argument '(?<word>.*)' for \w+ '(?<option>[^']*)' as expected type '[^']*'\.(?: Did you mean one of the following\?(?<words>[\s\S]*))?$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex NotOfItsType();
}
