using System.Text.RegularExpressions;
using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Documents;

public sealed partial class The_page_about_verdicts
{
    [Fact]
    public void Quotes_what_the_demo_says()
    {
        var rows = Row().Matches(File.ReadAllText(Repository.PathTo("data", "VERDICTS.md")).ReplaceLineEndings("\n")).ToList();

        Assert.Equal(11, rows.Count);
        Assert.All(rows, row => Assert.EndsWith($": {row.Groups["label"].Value}", FirstLine(row.Groups["words"].Value), StringComparison.Ordinal));
    }

    private static string FirstLine(string words)
    {
        var run = CommandRun.Of([.. words.Split(' '), "--collection", Repository.PathTo("data", "demo")]);
        Assert.Equal((0, ""), (run.Exit, run.Messages));
        return run.Results.Split('\n')[0];
    }

    [GeneratedRegex(@"^\| (?<label>[^|]+) \| [^|]+ \| `(?<words>explain [^`]+)` \|$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Row();
}
