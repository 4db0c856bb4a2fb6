using FeatureMatrix.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The command <c>next</c> where there is much to ask.</summary>
public sealed class The_next_test
{
    [Fact]
    public void Is_a_short_list_in_the_order_of_swaps_unless_all_is_asked_for()
    {
        var (few, all) = (Rows(), Rows("--all"));
        Assert.Equal(8, few.Count);
        Assert.True(all.Count > few.Count);
        Assert.Equal(few, all.Where(few.Contains));
    }

    private static List<string> Rows(params string[] more)
    {
        var (code, results, messages) = CommandRun.Of(
            ["next", "kite-9", "beacon-32", "--library", "long-shelf", "--format", "csv", "--collection", Repository.PathTo("data", "demo"), .. more]);
        Assert.True(code == ExitCode.Fine, messages);
        return [.. results.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)];
    }
}
