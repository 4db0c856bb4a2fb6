using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli.Help;

/// <summary>Lines as far as they are typed, completed by the shells themselves with the scripts that the program prints.</summary>
public sealed class Completing_a_command_line : IDisposable
{
    private static readonly (string Typed, string[] Words)[] Expected =
    [
        ("featmatrix expl", ["explain"]),
        ("featmatrix im", ["import"]),
        ("featmatrix import ", ["dump", "inf", "opengl", "runs", "sheet", "title", "workbook", "worksheet"]),
        ("featmatrix explain long", ["long-dusk-patrol"]),
        ("featmatrix explain ferrymen kit", ["kite-2", "kite-2-pellworth", "kite-9"]),
        ("featmatrix compare kite-2 bea", ["beacon-32"]),
        ("featmatrix explain ferrymen ", ["beacon-32", "bulrush-agp", "bulrush-pci", "kite-2", "kite-2-pellworth", "kite-9", "lantern-3d", "placard-64", "sedge-4", "sedge-6", "tiller-32", "tiller-64"]),
        ("featmatrix plan --library ", ["long-shelf", "sluice-evening"]),
        ("featmatrix plan --lib", ["--library"]),
        ("featmatrix fit kite-2 ke", ["kettle-450"]),
        ("featmatrix whatif kite-2 --driver kestrin-kite-9x@5.12", ["kestrin-kite-9x@5.12"]),
        ("featmatrix coverage --format m", ["markdown"]),
        ("featmatrix explain zzz", []),
        ("featmatrix explain --collection no-such-folder fer", []),
    ];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Works_in_bash()
    {
        const string Ask =
            """
            source <(featmatrix completion bash)
            while IFS= read -r line; do
              COMP_LINE=$line COMP_POINT=${#line}
              # Bash itself breaks words at @ and replaces the last piece only.
              read -ra COMP_WORDS <<<"${line//@/ @ }"
              [[ $line == *' ' ]] && COMP_WORDS+=('')
              COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
              kept=${line##* } kept=${kept%"${COMP_WORDS[COMP_CWORD]}"}
              _featmatrix
              echo "${COMPREPLY[*]/#/$kept}"
            done
            """;

        Assert.Equal(Lines(), Answers("bash", Ask));
    }

    [Fact]
    public void Works_in_fish()
    {
        const string Ask =
            """
            featmatrix completion fish | source
            while read --local line
              echo (complete --do-complete "$line" | string split --fields 1 \t)
            end
            """;

        Assert.Equal(Lines(), Answers("fish", Ask));
    }

    [Fact]
    public void Has_a_script_that_zsh_can_read() => Assert.Equal("", Shell.Run("featmatrix completion zsh > script && zsh -n script 2>&1", _folder.Path, "zsh"));

    [Fact]
    public void Knows_four_shells()
    {
        var run = CommandRun.Of("completion", "csh");

        Assert.Equal(2, run.Exit);
        Assert.StartsWith("Argument 'csh' not recognized. Must be one of:", run.Messages, StringComparison.Ordinal);
        Assert.All(["'bash'", "'zsh'", "'fish'", "'pwsh'"], shell => Assert.Contains(shell, run.Messages, StringComparison.Ordinal));
    }

    private static List<string> Lines() => [.. Expected.Select(one => string.Join(' ', one.Words))];

    private static List<string> Answers(string shell, string script)
    {
        var typed = string.Concat(Expected.Select(one => one.Typed + "\n"));
        var answers = Shell.Run(script, Repository.Root, shell, typed);
        return [.. answers.Split('\n')[..^1]];
    }
}
