using System.Text.RegularExpressions;
using FeatureMatrix.Loading;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>data/README.md says what the loader does.</summary>
public sealed partial class The_documentation_of_the_format
{
    private static readonly string Document = File.ReadAllText(Repository.PathTo("data", "README.md")).ReplaceLineEndings("\n");

    [Fact]
    public void Holds_examples_that_load_together_without_a_fault()
    {
        var examples = YamlBlock().Matches(Document).Select((match, i) => new SourceText($"example{i + 1:00}.yaml", match.Groups["yaml"].Value)).ToList();
        var vocabulary = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null);

        var log = new SourceText("runs/example.csv", CsvBlock().Match(Document).Groups["csv"].Value);

        var result = CollectionLoader.Load([.. vocabulary.Files, .. examples, log]);

        Assert.True(examples.Count > 10);
        Assert.Equal("", string.Join('\n', result.Faults));
        Assert.Equal("The Brackwater bench", result.Catalog!.Name);
        Assert.Equal([41.7, 19.3], result.Catalog.Runs.Select(run => run.Fps!.Value));
    }

    [Fact]
    public void Lists_every_fault_code_and_no_other()
    {
        var source = string.Concat(Directory.GetFiles(Repository.PathTo("src", "FeatureMatrix", "Loading"), "FaultTexts*.cs").Select(File.ReadAllText));
        var given = Code().Matches(source).Select(match => match.Value).Distinct().Order(StringComparer.Ordinal);
        var listed = CodeRow().Matches(Document).Select(match => match.Groups["code"].Value);

        Assert.Equal(given, listed);
    }

    [GeneratedRegex("```yaml\n(?<yaml>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex YamlBlock();

    [GeneratedRegex("```csv\n(?<csv>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex CsvBlock();

    [GeneratedRegex("FM[0-9]{3}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Code();

    [GeneratedRegex("^\\| (?<code>FM[0-9]{3}) \\|", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex CodeRow();
}
