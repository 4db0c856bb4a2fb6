using System.Text.RegularExpressions;
using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Demo;

/// <summary>The decisions that the README quotes, asked again.</summary>
public sealed partial class ReadmeQuotes
{
    public static TheoryData<string, string> Quotes
    {
        get
        {
            var text = File.ReadAllText(Repository.PathTo("README.md"));
            var quotes = new TheoryData<string, string>();
            foreach (Match match in Quote().Matches(text[text.IndexOf("five decisions", StringComparison.Ordinal)..text.IndexOf("![The coverage", StringComparison.Ordinal)]))
                quotes.Add(match.Groups["command"].Value, Space().Replace(match.Groups["quote"].Value, " "));
            return quotes;
        }
    }

    [Fact]
    public void Are_five() => Assert.Equal(5, Quotes.Count);

    [Theory, MemberData(nameof(Quotes))]
    public void Are_what_the_program_says(string command, string quote)
    {
        var run = CommandRun.Of([.. command.Split(' '), "--collection", Repository.PathTo("data", "demo")]);
        Assert.Equal(0, run.Exit);
        Assert.Contains(quote, Space().Replace(run.Results, " "), StringComparison.Ordinal);
    }

    [GeneratedRegex("- `(?<command>[^`]+)`:\\s\"(?<quote>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quote();

    [GeneratedRegex("\\s+", RegexOptions.None, 1000)]
    private static partial Regex Space();
}
