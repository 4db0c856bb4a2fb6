using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>A policy in a file of its own, laid over those of libraries.</summary>
public sealed class Policies_in_files
{
    private const string World = """
        titles: {salt-marsh: {name: Salt Marsh, os: [windows-98se], renderers: {opengl: {api: opengl 1.1}}}}
        libraries:
          winter: {name: Winter, titles: [salt-marsh], policy: {os: [windows-xp], wrappers: none, forced: yes, mode: 800x600, depth: 16, fps-floor: 30, worth: {severe: 0.4}}}
          plain: {name: Plain, titles: [salt-marsh]}
        """;

    private static IReadOnlyList<SourceText> Vocabulary { get; } = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null).Files;

    [Fact]
    public void Replace_what_they_state_and_leave_the_rest_as_it_is()
    {
        var result = Load("name: Strict\npolicy: {os: [windows-98se], forced: no, samples: 2, worth: {cosmetic: 0.9}}");

        Assert.Equal("", Errors(result));
        var winter = PolicyOf(result, "winter");
        Assert.Equal(["windows-98se"], winter.Oses!.Select(os => os.Id));
        Assert.Equal(
            winter with { Oses = null, Wrappers = null },
            Policy.Default with { Name = "Strict", AllowForced = false, Mode = new Mode(800, 600), Depth = 16, FpsFloor = 30, Samples = 2, SevereWorth = 0.4, CosmeticWorth = 0.9 });
        Assert.Empty(winter.Wrappers!);
        Assert.Equal(PolicyOf(result, "plain") with { Oses = null }, result.Policy! with { Oses = null });
        Assert.Equal(Policy.Default with { Name = "Strict", Samples = 2, CosmeticWorth = 0.9 }, result.Policy! with { Oses = null });
    }

    [Fact]
    public void Take_back_what_a_library_asks_for()
    {
        var result = Load("policy: {os: any, wrappers: any, forced: no, mode: lowest, depth: lowest, fps-floor: none, worth: {severe: 0.5}}");

        Assert.Equal(Policy.Default with { Name = "my/policy.yaml" }, PolicyOf(result, "winter"));
    }

    [Fact]
    public void Say_where_they_are_wrong_and_what_was_meant()
    {
        var result = Load("nmae: Strict\npolicy:\n  os: [windows-98sx]\n  fps_floor: 30\n  depth: 17\n  forced: perhaps\n");

        Assert.Equal(
            """
            my/policy.yaml(1,1): error FM101: unknown key 'nmae' in the policy file; did you mean 'name'?
            my/policy.yaml(3,8): error FM103: unknown operating system 'windows-98sx'; did you mean 'windows-98se'?
            my/policy.yaml(4,3): error FM101: unknown key 'fps_floor' in 'policy' of the policy file; did you mean 'fps-floor'?
            my/policy.yaml(5,10): error FM107: '17' is no value of 'depth': it is 8, 15, 16, 24 or 32
            my/policy.yaml(6,11): error FM107: 'perhaps' is no value of 'forced': it is yes, no, true or false
            """.ReplaceLineEndings("\n"),
            Errors(result));
        Assert.Null(result.Catalog);
    }

    [Theory]
    [InlineData("name: Strict", "my/policy.yaml(1,1): error FM102: the policy file needs the key 'policy'")]
    [InlineData("[a, b]", "my/policy.yaml(1,1): error FM105: the policy file wants a map of keys, not a list")]
    [InlineData("policy: none", "my/policy.yaml(1,9): error FM105: 'policy' of the policy file wants a map of keys, not a text")]
    public void Have_the_shape_of_a_policy(string text, string fault) => Assert.Equal(fault, Errors(Load(text)));

    [Fact]
    public void Read_as_the_documentation_shows()
    {
        var document = File.ReadAllText(Repository.PathTo("data", "README.md")).ReplaceLineEndings("\n");
        var example = document.Split("```yml\n")[1].Split("```")[0];

        var policy = PolicyOf(Load(example), "winter");

        Assert.Equal(("No tinkering", 0, false, (double?)null), (policy.Name, policy.Wrappers!.Count, policy.AllowForced, policy.FpsFloor));
    }

    [Fact]
    public void Are_printed_with_each_decision_that_is_made_on_them()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["strict.yaml"], "name: Strict\npolicy: {wrappers: none, fps-floor: none}\n");

        foreach (var library in (string[][])[[], ["--library", "long-shelf"]])
        {
            var run = CommandRun.Of(["compare", "kite-2", "beacon-32", "--collection", Repository.PathTo("data", "demo"), "--policy", folder["strict.yaml"], .. library]);
            Assert.Equal((0, ""), (run.Exit, run.Messages));
            Assert.Contains("Policy: from: Strict; ", run.Results, StringComparison.Ordinal);
            Assert.Contains("wrappers: none; ", run.Results, StringComparison.Ordinal);
            Assert.Contains("speed floor: none; ", run.Results, StringComparison.Ordinal);
            Assert.DoesNotContain("the picture at the speed floor", run.Results, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Stop_a_command_where_they_are_missing_or_wrong()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["wrong.yaml"], "policy: {wrapers: none}\n");

        var missing = CommandRun.Of("rank", "--collection", Repository.PathTo("data", "demo"), "--policy", folder["none.yaml"]);
        var wrong = CommandRun.Of("rank", "--collection", Repository.PathTo("data", "demo"), "--policy", folder["wrong.yaml"]);

        Assert.Equal((2, ""), (missing.Exit, missing.Results));
        Assert.Equal($"There is no file {folder["none.yaml"]}.", missing.Messages.Split('\n')[0]);
        Assert.Equal((1, ""), (wrong.Exit, wrong.Results));
        Assert.Contains($"{folder["wrong.yaml"]}(1,10): error FM101: unknown key 'wrapers' in 'policy' of the policy file; did you mean 'wrappers'?", wrong.Messages, StringComparison.Ordinal);
    }

    private static LoadResult Load(string policy) => CollectionLoader.Load(
        [.. Vocabulary, new SourceText("collection.yaml", "collection: {name: Small}\n"), new SourceText("world.yaml", World)], policy: new SourceText("my/policy.yaml", policy));

    private static string Errors(LoadResult result) => string.Join('\n', result.Faults.Where(fault => fault.Severity == Severity.Error));

    private static Policy PolicyOf(LoadResult result, string library) => result.Catalog!.Libraries.Single(one => one.Id == library).Policy;
}
