using System.CommandLine;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Scripts that let a shell complete command lines; they ask the program itself for the words.</summary>
internal static class CompletionCommand
{
    private static readonly Dictionary<string, string> Scripts = new(StringComparer.Ordinal)
    {
        ["bash"] = "featmatrix.bash",
        ["zsh"] = "featmatrix.zsh",
        ["fish"] = "featmatrix.fish",
        ["pwsh"] = "featmatrix.ps1",
    };

    public static Command Create(Terminal terminal)
    {
        var shell = new Argument<string>("shell") { Description = "The shell: bash, zsh, fish or pwsh. The script's first lines say where it belongs." };
        shell.AcceptOnlyFromAmong([.. Scripts.Keys]);
        var command = new Command("completion", "Print a script with which a shell completes commands, options, and the ids of cards, titles and libraries.") { shell };
        command.SetAction(parsed => terminal.Print(Script(Scripts[parsed.GetValue(shell)!])));
        return command;
    }

    private static string Script(string name)
    {
        using var stream = typeof(CompletionCommand).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
