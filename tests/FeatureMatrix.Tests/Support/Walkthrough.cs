namespace FeatureMatrix.Tests.Support;

/// <summary>
/// A Markdown file that a reader follows at the keyboard: commands in <c>sh</c> blocks, what they print in the <c>text</c> block behind, and
/// files to write in <c>yaml</c> blocks behind a line that ends in "Make `path` read:".
/// </summary>
internal static class Walkthrough
{
    private const string Make = "Make `";

    /// <summary>
    /// Does all of it in a folder. Gives the file with the text blocks as they came out, to be compared with the file as it is.
    /// </summary>
    public static string Follow(string markdown, string folder)
    {
        var lines = markdown.Split('\n').ToList();
        var (state, here, printed, path) = (Path.Combine(folder, ".here"), folder, "", "");
        for (var i = 0; i < lines.Count; i++)
        {
            if (lines[i].LastIndexOf(Make, StringComparison.Ordinal) is var at and >= 0 && lines[i].EndsWith("` read:", StringComparison.Ordinal))
                path = lines[i][(at + Make.Length)..^"` read:".Length];
            if (!lines[i].StartsWith("```", StringComparison.Ordinal))
                continue;
            var end = lines.IndexOf("```", i + 1);
            var block = string.Join('\n', lines[(i + 1)..end]);
            switch (lines[i])
            {
                case "```sh":
                    printed = Shell.Run($"set -e\n{block}\npwd > '{state}'", here);
                    here = File.ReadAllText(state).TrimEnd('\n');
                    break;
                case "```yaml":
                    Assert.True(File.Exists(Path.Combine(here, path)), $"line {i + 1}: a reader has no file {path} to change");
                    File.WriteAllText(Path.Combine(here, path), block + "\n");
                    break;
                case "```text":
                    lines.RemoveRange(i + 1, end - i - 1);
                    var shown = printed.TrimEnd('\n').Split('\n');
                    lines.InsertRange(i + 1, shown);
                    end = i + 1 + shown.Length;
                    break;
                default:
                    Assert.Fail($"line {i + 1}: nothing is known of blocks that begin with {lines[i]}");
                    break;
            }

            i = end;
        }

        return string.Join('\n', lines);
    }
}
