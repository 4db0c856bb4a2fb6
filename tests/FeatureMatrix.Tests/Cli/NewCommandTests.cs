using FeatureMatrix.Cli.Scaffolding;
using FeatureMatrix.Tests.Loading.Schema;

namespace FeatureMatrix.Tests.Cli;

public sealed class A_collection_started_from_nothing : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Bench => _folder["bench"];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Grows_by_every_kind_and_loads_without_a_fault_or_warning()
    {
        New("collection", Bench, "--name", "The \"Reed\" bench");
        In("chip", "reed-1");
        In("chip", "reed-2", "--chip", "reed-1");
        In("card", "reed-8", "--chip", "reed-1");
        In("card", "reed-16", "--chip", "reed-2", "--name", "Reed Sixteen");
        In("specimen", "reed-8-mine", "--card", "reed-8");
        In("driver", "reed-9x", "--os", "windows-98se", "--card", "reed-8", "reed-16");
        In("title", "marsh-lights", "--api", "direct3d 6", "--os", "windows-98se", "windows-95");
        In("engine", "linnet", "--api", "opengl 1.1");
        In("title", "last-lights", "--engine", "linnet", "--os", "windows-98se");
        In("observation", "seen-once", "--title", "marsh-lights", "--renderer", "direct3d", "--card", "reed-8", "--driver", "reed-9x 1.0", "--os", "windows-98se", "--wrapper", "none", "--runs", "yes");
        In("observation", "seen-twice", "--title", "last-lights", "--card", "reed-16", "--runs", "no");
        In("wrapper", "dimglass", "--api", "glide 2", "--on", "direct3d 7");
        In("rig", "tower");
        In("library", "winter");

        var check = CommandRun.Of("check", "--collection", Bench);

        Assert.Equal((0, ""), (check.Exit, check.Messages));
        Assert.StartsWith($"{Bench}: 2 cards, 1 driver version, 1 wrapper version, 2 titles, 2 observations; 0 warnings.", check.Results, StringComparison.Ordinal);
        var files = Directory.GetFiles(Bench, "*.yaml", SearchOption.AllDirectories);
        Assert.Equal(16, files.Length);
        Assert.All(files, file => Assert.Equal("", SchemaFile.Complaint(File.ReadAllText(file))));
        Assert.All(files, file => Assert.True(File.Exists(SchemaNamedIn(file)), file));
    }

    [Fact]
    public void Has_examples_in_its_comments_that_load_as_well()
    {
        New("collection", Bench, "--name", "Bench");
        In("chip", "reed-1");
        In("card", "reed-8", "--chip", "reed-1");
        In("rig", "tower");
        Uncomment(_folder["bench/chips/reed-1.yaml"], "# fog-table: yes", "# tex-pal8: no", "# mt-units: \"2\"", "# year: 1998");
        Uncomment(_folder["bench/cards/reed-8.yaml"], "# memory: ", "# clocks: ", "# connector: ", "# hardware-ids: ", "# prices: ", "# drivers-complete: ", "# bios: ");
        Uncomment(_folder["bench/rigs/tower.yaml"], "# processor: ", "# memory: ", "# slots: ", "# monitor: ", "# power: ", "# os: ");

        var check = CommandRun.Of("check", "--collection", Bench);

        Assert.Equal((0, ""), (check.Exit, check.Messages));
    }

    [Fact]
    public void Overwrites_nothing()
    {
        New("collection", Bench, "--name", "Bench");
        In("chip", "reed-1");
        var before = File.ReadAllText(_folder["bench/chips/reed-1.yaml"]);

        var again = CommandRun.Of("new", "chip", "reed-1", "--name", "Other", "--collection", Bench);
        var collection = CommandRun.Of("new", "collection", Bench, "--name", "Other");

        Assert.Equal((2, $"{_folder["bench/chips/reed-1.yaml"]} exists already, and new overwrites nothing.\n"), (again.Exit, again.Messages));
        Assert.Equal((2, $"{_folder["bench/collection.yaml"]} exists already, and new overwrites nothing.\n"), (collection.Exit, collection.Messages));
        Assert.Equal(before, File.ReadAllText(_folder["bench/chips/reed-1.yaml"]));
    }

    [Fact]
    public void Writes_nothing_that_would_not_load()
    {
        New("collection", Bench, "--name", "Bench");

        var run = CommandRun.Of("new", "title", "marsh-lights", "--api", "direct3d 66", "--os", "windows-98se", "--collection", Bench);

        Assert.Equal(
            (1, "This title would not load: '66' is no level of direct3d; its levels are 2, 3, 5, 6, 7, 8, 8.1, 9 (FM108).\nNothing was written.\n"),
            (run.Exit, run.Messages));
        Assert.False(Directory.Exists(_folder["bench/titles"]));
    }

    [Theory]
    [InlineData("../outside")]
    [InlineData("Reed")]
    [InlineData("a b")]
    [InlineData("")]
    public void Refuses_an_id_that_is_none(string id)
    {
        New("collection", Bench, "--name", "Bench");

        var run = CommandRun.Of("new", "chip", id, "--collection", Bench);

        Assert.Equal((2, $"'{id}' is no id; an id has small letters, digits, hyphens and points, for example 'reed-bank-2'.\n"), (run.Exit, run.Messages));
    }

    [Fact]
    public void Says_what_is_missing_where_nobody_can_be_asked()
    {
        New("collection", Bench, "--name", "Bench");
        In("chip", "reed-1");

        var run = CommandRun.Of("new", "card", "reed-8", "--collection", Bench);

        Assert.Equal((2, "Its chip? There are: reed-1. Say it with --chip; nothing was written.\n"), (run.Exit, run.Messages));
    }

    [Fact]
    public void Asks_a_person_at_a_terminal()
    {
        New("collection", Bench, "--name", "Bench");
        In("chip", "reed-1");

        var run = CommandRun.Answering("Reed Eight\nreed-1\n", "new", "card", "reed-8", "--collection", Bench);

        Assert.Equal((0, "Name for people? [Reed 8] Its chip? There are: reed-1. "), (run.Exit, run.Messages));
        Assert.Contains("    name: \"Reed Eight\"\n    chip: reed-1\n", File.ReadAllText(_folder["bench/cards/reed-8.yaml"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_a_titles_renderers_from_its_engine_and_says_what_they_need()
    {
        New("collection", Bench, "--name", "Bench");
        File.WriteAllText(
            _folder["bench/engines.yaml"],
            "engines: {linnet: {name: Linnet, source: own-bench, renderers: {direct3d: {api: direct3d 6, needs: {must: [tex-perspective], severe: [fog-table]}}}}}");

        In("title", "marsh-lights", "--engine", "linnet", "--os", "windows-98se");

        Assert.Contains(
            "    engine: linnet\n    # Its renderers come from the engine:\n    # direct3d (direct3d 6): must tex-perspective; severe fog-table\n",
            File.ReadAllText(_folder["bench/titles/marsh-lights.yaml"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("reed-bank-2", "Reed Bank 2")]
    [InlineData("x", "X")]
    public void Makes_a_name_from_an_id(string id, string name) => Assert.Equal(name, Scaffold.NameOf(id));

    private static void New(params string[] args)
    {
        var run = CommandRun.Of(["new", .. args]);
        Assert.Equal((0, ""), (run.Exit, run.Messages));
    }

    private void In(params string[] args) => New([.. args, "--collection", Bench]);

    private static string SchemaNamedIn(string file)
    {
        var first = File.ReadLines(file).First();
        return Path.Combine(Path.GetDirectoryName(file)!, first["# yaml-language-server: $schema=".Length..]);
    }

    private static void Uncomment(string file, params string[] examples)
    {
        var text = File.ReadAllText(file);
        foreach (var example in examples)
        {
            Assert.Contains(example, text, StringComparison.Ordinal);
            text = text.Replace(example, example[2..], StringComparison.Ordinal);
        }

        File.WriteAllText(file, text);
    }
}
