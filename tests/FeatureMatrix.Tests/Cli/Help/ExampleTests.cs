using System.CommandLine;
using System.Text;
using System.Text.RegularExpressions;
using FeatureMatrix.Cli;
using FeatureMatrix.Cli.Help;
using FeatureMatrix.Tests.Cli.Import;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli.Help;

/// <summary>What the help shows to be typed.</summary>
public sealed partial class The_examples_of_the_commands : IDisposable
{
    /// <summary>What examples write; everything else that they name has to be there.</summary>
    private static readonly string[] Written = ["my-bench", "reed-bench", "evening", "bench.xlsx", "repeat.xlsx", "collection.xlsx", "faults.sarif"];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Stand_at_every_command()
    {
        var commands = CommandTree.Leaves(Tree()).Select(CommandTree.PathOf).Prepend("").ToList();

        Assert.Equal(commands.Order(StringComparer.Ordinal), CommandExamples.Commands.Order(StringComparer.Ordinal));
        Assert.All(commands, command => Assert.InRange(CommandExamples.Of(command).Count, 1, 3));
        Assert.All(commands, command => Assert.All(CommandExamples.Of(command), example => Assert.StartsWith(command, example.Words, StringComparison.Ordinal)));
    }

    [Fact]
    public void Run_on_the_demo_without_a_fault()
    {
        External.File("/usr/share/misc/pci.ids", "pci.ids");
        Prepare();
        var failures = new List<string>();

        // A preview runs until somebody stops it; it has tests of its own.
        foreach (var example in CommandExamples.Commands.Where(command => command != "preview").SelectMany(CommandExamples.Of).DistinctBy(example => example.Words))
        {
            var run = CommandRun.Of(Here(example.Words));
            if (run.Exit != 0 || run.Results.Length == 0)
                failures.Add($"{example.CommandLine} gave {run.Exit}: {run.Messages}");
        }

        Assert.Equal([], failures);
    }

    [Fact]
    public void Stand_below_the_usual_help()
    {
        var help = CommandRun.Of("explain", "--help");

        Assert.Equal((0, ""), (help.Exit, help.Messages));
        Golden.Matches("cli/help-explain.txt", help.Results);
    }

    /// <summary>A copy of the demo, and the files that imports read.</summary>
    private void Prepare()
    {
        Directory.CreateDirectory(_folder["data/policies"]);
        foreach (var file in Directory.GetFiles(Repository.PathTo("data", "policies")))
            File.Copy(file, Path.Combine(_folder["data/policies"], Path.GetFileName(file)));
        foreach (var file in Directory.GetFiles(Repository.PathTo("data", "demo"), "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder["data/demo"], Path.GetRelativePath(Repository.PathTo("data", "demo"), file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        File.WriteAllText(_folder["report.txt"], "OpenGL vendor string: Kestrin\nOpenGL renderer string: Kestrin Kite\nOpenGL version string: 1.1.0\nOpenGL extensions:\n    GL_EXT_bgra\n");
        File.WriteAllText(_folder["dump.txt"], OneRun.Dump);
        File.WriteAllText(_folder["old-driver.txt"], OneRun.Dump);
        File.WriteAllText(_folder["new-driver.txt"], OneRun.Dump.Replace("0x00000100", "0x00001000", StringComparison.Ordinal));
        File.WriteAllText(_folder["driver.inf"], OneRun.Inf, Encoding.Latin1);
        File.WriteAllText(_folder["spring-log.csv"], "title,card,fps,run\nferrymen,kite-2,41.7,1\n");
        File.WriteAllText(_folder["winter-list.csv"], "Game,Kite 2\nFerrymen,ok\n");
        File.WriteAllText(
            _folder["winter-list.sheet"],
            "sheet: {name: winter-list, states: observations, source: {text: A list}, columns: {Game: title, Kite 2: {card: kite-2}}, words: {ok: {runs: yes}}, names: {Ferrymen: {title: ferrymen, renderer: direct3d}}}\n");
        Directory.CreateDirectory(_folder["Gravel Tide"]);
        File.WriteAllText(_folder["Gravel Tide/tide.exe"], "MZ and nothing behind it");
    }

    /// <summary>An example's words as a shell in the folder would pass them: files named in full, the collection said where the folder would say it.</summary>
    private string[] Here(string words)
    {
        var args = Word().Matches(words).Select(match => match.Value.Trim('"')).ToList();
        var command = Tree().Parse(args).CommandResult.Command;
        if (command.Options.Contains(Session.CollectionOption) && !args.Contains("--collection") && args is not ["publish", "data/demo"])
            args.AddRange(["--collection", "data/demo"]);
        if (args[0] == "publish" && !args.Contains("--out"))
            args.AddRange(["--out", "evening"]);
        return [.. args.Select(arg => Written.Contains(arg) || Path.Exists(_folder[arg]) ? _folder[arg] : arg)];
    }

    private static RootCommand Tree() => CommandTree.Create(new Terminal(TextWriter.Null, TextWriter.Null, useColour: false));

    [GeneratedRegex("\"[^\"]*\"|[^ ]+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Word();
}
