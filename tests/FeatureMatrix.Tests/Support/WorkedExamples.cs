namespace FeatureMatrix.Tests.Support;

/// <summary>A question about a world, with the recorded answer, as it stands in a Markdown file.</summary>
internal sealed record WorkedExample(string File, string Name, string World, string Kind, string Question, string Expected, int ExpectedLine)
{
    /// <summary>
    /// Compares the answer with the recorded one; with <c>UPDATE_GOLDENS=1</c> records it in the file instead, to be read before it
    /// is committed.
    /// </summary>
    public void Check(string actual)
    {
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDENS") == "1")
        {
            WorkedExamples.Record(this, actual);
            return;
        }

        Assert.Equal(Expected, actual);
    }
}

/// <summary>Reads the worked examples of a Markdown file: a world, then questions with their answers.</summary>
internal static class WorkedExamples
{
    private static readonly Lock Writing = new();
    private static readonly string[] Kinds = ["ask", "label", "recommended", "timing"];

    /// <summary>The examples of a file, its path relative to the test project, or to the repository where it starts with a slash.</summary>
    public static IReadOnlyList<WorkedExample> In(string file)
    {
        var lines = System.IO.File.ReadAllLines(PathOf(file));
        var examples = new List<WorkedExample>();
        string world = "", kind = "", question = "", heading = "";
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("## ", StringComparison.Ordinal))
                heading = lines[i][3..];
            else if (Kinds.FirstOrDefault(word => lines[i].StartsWith(word + ": ", StringComparison.Ordinal)) is { } word)
                (kind, question) = (word, lines[i][(word.Length + 2)..]);
            else if (lines[i] == "```yaml")
                world = Block(lines, ref i);
            else if (lines[i] == "```text")
            {
                var start = i;
                var expected = Block(lines, ref i);
                examples.Add(new WorkedExample(file, $"{heading} | {question}{Times(examples, heading, question)}", world, kind, question, expected, start));
            }
        }

        return examples;
    }

    /// <summary>Writes an answer into the file in place of the recorded one.</summary>
    public static void Record(WorkedExample example, string actual)
    {
        lock (Writing)
        {
            var path = PathOf(example.File);
            var current = In(example.File).Single(other => other.Name == example.Name);
            var lines = System.IO.File.ReadAllLines(path).ToList();
            var end = lines.FindIndex(current.ExpectedLine + 1, line => line == "```");
            lines.RemoveRange(current.ExpectedLine + 1, end - current.ExpectedLine - 1);
            lines.InsertRange(current.ExpectedLine + 1, actual.Split('\n'));
            System.IO.File.WriteAllText(path, string.Join('\n', lines) + "\n");
        }
    }

    /// <summary>The world that every example of the file builds on; empty where there is none.</summary>
    public static string Base(string file)
    {
        var lines = System.IO.File.ReadAllLines(PathOf(file));
        var start = Array.IndexOf(lines, "```base");
        return start < 0 ? "" : Block(lines, ref start);
    }

    // The same question may be asked of several worlds under one heading.
    private static string Times(List<WorkedExample> examples, string heading, string question)
    {
        var before = examples.Count(example => example.Name.StartsWith($"{heading} | ", StringComparison.Ordinal) && example.Question == question);
        return before == 0 ? "" : $" ({before + 1})";
    }

    private static string Block(string[] lines, ref int i)
    {
        var start = ++i;
        while (lines[i] != "```")
            i++;
        return string.Join('\n', lines[start..i]);
    }

    private static string PathOf(string file) => file.StartsWith('/')
        ? Repository.PathTo(file[1..].Split('/'))
        : Repository.PathTo(["tests", "FeatureMatrix.Tests", .. file.Split('/')]);
}
