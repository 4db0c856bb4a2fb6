using FeatureMatrix.Cli;

namespace FeatureMatrix.Tests.Cli;

/// <summary>One command line, run in process.</summary>
internal sealed record CommandRun(int Exit, string Results, string Messages)
{
    public static CommandRun Of(params string[] args) => Answering(null, args);

    /// <summary>With a person at the terminal who gives these answers, one a line.</summary>
    public static CommandRun Answering(string? answers, params string[] args)
    {
        using var results = new StringWriter { NewLine = "\n" };
        using var messages = new StringWriter { NewLine = "\n" };
        using var reader = answers is null ? null : new StringReader(answers);
        var exit = Application.Run(args, new Terminal(results, messages, useColour: false, reader));
        return new CommandRun(exit, results.ToString(), messages.ToString());
    }
}

/// <summary>A folder of its own for one test, removed afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("featurematrix-test-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
