using System.Text.Json;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The commands of the bench on the demo; its runs are the demo's own inventions.</summary>
public sealed class The_bench_on_the_command_line
{
    [Fact]
    public void Compares_two_drivers_named_in_either_order()
    {
        var forth = Run("against", "6.31", "5.12", "--format", "csv");

        Assert.Contains("Peatfire, chapel demo\",driver,driver 6.31,driver 5.12,800x600,", forth.Results, StringComparison.Ordinal);
        Assert.Contains("\"23.4 % slower (21.9 to 24.9 %), n = 4 and 5\"", forth.Results, StringComparison.Ordinal);
        Assert.Equal(forth.Results, Run("against", "5.12", "6.31", "--format", "csv").Results);
    }

    [Fact]
    public void Says_so_where_nothing_differs_in_that_alone() => Assert.Equal(
        (2, "No two series of runs differ in that alone. Say 'against' without words to see which do."),
        (Run("against", "6.31", "Windows XP").Exit, Run("against", "6.31", "Windows XP").Messages.TrimEnd()));

    [Theory]
    [InlineData("runs")]
    [InlineData("ladders")]
    [InlineData("rows")]
    [InlineData("speeds")]
    [InlineData("scores")]
    public void Prints_every_table_as_json(string table)
    {
        using var json = JsonDocument.Parse(Run("bench", "--show", table, "--format", "json").Results);

        Assert.Equal(JsonValueKind.Object, json.RootElement.ValueKind);
    }

    [Fact]
    public void Shows_runs_and_ladders_of_one_card_as_text()
    {
        var text = Run("bench", "--card", "beacon-32").Results;

        Assert.StartsWith("Runs: The Loden Sluice bench", text, StringComparison.Ordinal);
        Assert.Contains("\nResolution ladders: The Loden Sluice bench", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Kestrin Kite 2 ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Finds_less_headroom_at_a_higher_floor() => Assert.Equal(
        ["1 sample: highest mode that keeps 30 fps at 95 %: 1152x864, at least 31.4 fps (measured)", "1 sample: highest mode that keeps 60 fps at 99 %: 640x480, at least 87.1 fps (measured)"],
        [Headroom("30", "95"), Headroom("60", "99")]);

    [Theory]
    [InlineData("--confidence", "50", "--confidence has to lie above 50 and below 100.")]
    [InlineData("--floor", "0", "--floor has to lie above 0.")]
    public void Refuses_what_makes_no_sense(string option, string value, string message) =>
        Assert.Equal((2, message), (Run("headroom", option, value).Exit, Run("headroom", option, value).Messages.TrimEnd()));

    private static string Headroom(string floor, string confidence) =>
        Run("headroom", "--card", "kite-2", "--title", "hollow-regatta", "--floor", floor, "--confidence", confidence, "--format", "csv")
            .Results.TrimEnd().Split('\n')[^1].Split(",\"")[^1].Trim('"', '\r');

    private static CommandRun Run(params string[] args) => CommandRun.Of([.. args, "--collection", Repository.PathTo("data", "demo")]);
}
