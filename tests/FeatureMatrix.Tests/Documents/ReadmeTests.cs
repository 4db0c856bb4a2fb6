using System.CommandLine;
using System.Text.RegularExpressions;
using FeatureMatrix.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Documents;

/// <summary>What the README says to type. Its installing block is followed by <c>The_tool_package</c>.</summary>
public sealed partial class The_readme
{
    private static readonly string Text = File.ReadAllText(Repository.PathTo("README.md")).ReplaceLineEndings("\n");

    /// <summary>The lines of its code blocks.</summary>
    public static IReadOnlyList<string> Blocks { get; } = [.. Block().Matches(Text).Select(match => match.Groups["lines"].Value)];

    [Fact]
    public void Begins_with_the_two_commands_that_ci_runs()
    {
        var ci = File.ReadAllText(Repository.PathTo(".ci", "run"));

        Assert.Equal("dotnet run --project src/FeatureMatrix.Cli -- publish data/demo\n", Blocks[0]);
        Assert.Equal("tests/run\n", Blocks[1]);
        Assert.All(Blocks.Take(2), block => Assert.Contains("\n" + block.TrimEnd('\n'), ci, StringComparison.Ordinal));
        Assert.Equal(3, Blocks.Count);
    }

    [Fact]
    public void Names_commands_and_options_that_there_are()
    {
        var root = CommandTree.Create(new Terminal(TextWriter.Null, TextWriter.Null, useColour: false));
        Command command = root;
        var named = new HashSet<Command>();
        foreach (var words in Row().Matches(Text).SelectMany(row => Quoted().Matches(row.Groups["cell"].Value)).Select(match => match.Groups["words"].Value))
        {
            // Options alone, in brackets, belong to the command before them.
            if (!words.StartsWith('-'))
            {
                var parsed = root.Parse(words);
                command = parsed.CommandResult.Command;
                Assert.True(command != root && command.Subcommands.Count == 0 && parsed.UnmatchedTokens.Count == 0, words);
                named.Add(command);
            }

            Assert.All(words.Split(' ').Where(word => word.StartsWith("--", StringComparison.Ordinal)), option => Assert.Contains(option, command.Options.Select(one => one.Name)));
        }

        Assert.True(named.Count > 25, $"{named.Count}");
    }

    [GeneratedRegex("```\n(?<lines>[^`]*)```", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Block();

    [GeneratedRegex(@"^\| [^|]+\? \| (?<cell>[^|]+) \|$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Row();

    [GeneratedRegex("`(?<words>[^`]+)`", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Quoted();
}
