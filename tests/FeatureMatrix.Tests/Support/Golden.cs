using System.Text;

namespace FeatureMatrix.Tests.Support;

/// <summary>
/// Compares output with a recorded file under tests/goldens, byte by byte. Set <c>UPDATE_GOLDENS=1</c> to record;
/// a missing file fails otherwise.
/// </summary>
internal static class Golden
{
    public static void Matches(string name, string actual) => Matches(name, Encoding.UTF8.GetBytes(actual));

    public static void Matches(string name, byte[] actual)
    {
        var path = Repository.PathTo("tests", "goldens", name);
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDENS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"no golden {name}; record it with UPDATE_GOLDENS=1 and read it before committing");
        var expected = File.ReadAllBytes(path);
        if (!expected.AsSpan().SequenceEqual(actual))
            Assert.Fail($"{name} differs: {FirstDifference(Encoding.UTF8.GetString(expected), Encoding.UTF8.GetString(actual))}");
    }

    private static string FirstDifference(string expected, string actual)
    {
        var before = expected.Split('\n');
        var after = actual.Split('\n');
        var line = Enumerable.Range(0, Math.Max(before.Length, after.Length))
            .First(i => i >= before.Length || i >= after.Length || before[i] != after[i]);
        return $"first at line {line + 1}\n  recorded: {At(before, line)}\n  now:      {At(after, line)}";

        static string At(string[] lines, int i) => i < lines.Length ? lines[i] : "(no such line)";
    }
}
