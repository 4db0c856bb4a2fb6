using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli;

/// <summary>
/// Where commands print: results to one writer, messages to another, colours only where a person looks at a terminal that
/// wants them (NO_COLOR is honoured, redirected output is plain).
/// </summary>
internal sealed class Terminal(TextWriter results, TextWriter messages, bool useColour, TextReader? answers = null)
{
    private const string Reset = "\u001b[0m";

    public TextWriter Results { get; } = results;

    public TextWriter Messages { get; } = messages;

    public static Terminal OfConsole() => new(
        Console.Out, Console.Error,
        !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            && Environment.GetEnvironmentVariable("TERM") != "dumb",
        Console.IsInputRedirected || Console.IsErrorRedirected ? null : Console.In);

    /// <summary>
    /// What a person answers; null where nobody sits there to ask, and where the input ended. An empty answer takes the
    /// <paramref name="usual"/> one.
    /// </summary>
    public string? Ask(string question, string usual = "")
    {
        if (answers is null)
            return null;
        Messages.Write(usual.Length > 0 ? $"{TextTable.Clean(question)} [{TextTable.Clean(usual)}] " : $"{TextTable.Clean(question)} ");
        return answers.ReadLine() is { } answer ? answer.Trim() is { Length: > 0 } given ? given : usual : null;
    }

    /// <summary>Text that ends in a line end already. Whatever data it quotes, nothing in it steers the terminal.</summary>
    public void Print(string text) => Results.Write(TextTable.CleanLines(text));

    /// <summary>A message that is no result: progress, faults, where to look.</summary>
    public void Tell(string text) => Messages.WriteLine(TextTable.Clean(text));

    /// <summary>An explanation, indented, each kind of line with its own mark and colour.</summary>
    public void Print(ExplanationLine explanation)
    {
        foreach (var (depth, line) in explanation.Flatten())
        {
            var text = $"{new string(' ', depth * 2)}{Mark(line.Kind)}{TextTable.Clean(line.Text)}";
            Results.Write(useColour && Colour(line.Kind) is { } colour ? $"{colour}{text}{Reset}\n" : text + "\n");
        }
    }

    private static string Mark(LineKind kind) => kind switch
    {
        LineKind.Met => "+ ",
        LineKind.Loss => "- ",
        LineKind.Gap => "? ",
        LineKind.Stop => "x ",
        LineKind.Caution => "! ",
        LineKind.Statement or LineKind.Answer or LineKind.Heading or LineKind.Fact => "",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string? Colour(LineKind kind) => kind switch
    {
        LineKind.Statement => null,
        LineKind.Answer or LineKind.Heading => "\u001b[1m",
        LineKind.Met => "\u001b[34m",
        LineKind.Loss => "\u001b[33m",
        LineKind.Gap => "\u001b[35m",
        LineKind.Stop => "\u001b[31m",
        LineKind.Caution => "\u001b[1;31m",
        LineKind.Fact => "\u001b[2m",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
