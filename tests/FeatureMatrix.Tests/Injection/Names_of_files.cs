using System.Text;
using System.Text.Json;
using FeatureMatrix.Cli;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Tests.Cli.Import;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Injection;

/// <summary>
/// Nothing in data, templates or imports names a file outside the folder it belongs to, or one that another system cannot have.
/// The folder of editions: Stopped_publishing; changes of a collection: InterruptedWrites; names of worksheets: A_wrong_cell.
/// </summary>
public sealed class Names_of_files : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("names").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("../x")]
    [InlineData("..")]
    [InlineData("a/b")]
    [InlineData("a\\b")]
    [InlineData("/etc")]
    [InlineData("c:x")]
    [InlineData("%2e%2e")]
    [InlineData(".hidden")]
    [InlineData("x.")]
    [InlineData("x ")]
    [InlineData("x\n")]
    [InlineData("Dune")]
    [InlineData("d\u00fcne")]
    public void An_id_is_plain_and_small(string id) =>
        Assert.Matches("^x.yaml\\(1,9\\): error FM106: '[^']*' is no id; an id has small letters, digits, hyphens and points, for example 'nl-4'$", FaultsOf(id));

    [Theory]
    [InlineData("con")]
    [InlineData("nul")]
    [InlineData("aux.old")]
    [InlineData("prn")]
    [InlineData("com1")]
    [InlineData("lpt9.1")]
    [InlineData("index")]
    public void An_id_is_no_name_that_a_system_or_the_site_has_taken(string id) => Assert.Contains(
        $"error FM106: '{id}' cannot be an id: files are named after ids, and that name belongs to a device of Windows or to a list page; 'the-{id}' can", FaultsOf(id), StringComparison.Ordinal);

    [Theory]
    [InlineData("console")]
    [InlineData("the-con")]
    [InlineData("com10")]
    [InlineData("index-2")]
    public void An_id_that_only_begins_so_is_one(string id) => Assert.Equal("", FaultsOf(id));

    [Fact]
    public void An_id_is_short_enough_for_every_file_system()
    {
        Assert.Equal("", FaultsOf(new string('x', Ids.Longest)));
        Assert.Contains("is longer than 80 characters; files are named after ids", FaultsOf(new string('x', Ids.Longest + 1)), StringComparison.Ordinal);
    }

    [Fact]
    public void Tables_of_a_card_never_take_the_name_of_another_cards()
    {
        // The second table of 'dune' and the first of 'dune-2' once had one name, so that one page offered the other's table.
        var world = SmallEdition.Site(SmallEdition.With("", text => text.Replace("delta", "dune-2", StringComparison.Ordinal)));
        var tables = world.Where(file => file.Path is "tables/cards-dune.js" or "tables/cards-dune-2.js").SelectMany(file =>
        {
            var script = Encoding.UTF8.GetString(file.Bytes);
            using var json = JsonDocument.Parse(script["featureMatrixTables(".Length..^");\n".Length]);
            return json.RootElement.EnumerateObject().Select(table => table.Name).ToList();
        });
        Assert.Equal(["cards-dune", "cards-dune-2", "cards-dune-2_2", "cards-dune-2_3", "cards-dune_2", "cards-dune_3"], tables.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("../secret.html")]
    [InlineData("{0}/secret.html")]
    [InlineData("..\\\\secret.html")]
    public void A_template_includes_nothing_from_elsewhere(string path)
    {
        var named = path.Replace("{0}", _folder, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(_folder, "secret.html"), "secret");
        var templates = Directory.CreateDirectory(Path.Combine(_folder, "mine", "pages")).Parent!.FullName;
        File.WriteAllText(Path.Combine(templates, "pages", "rig.html"), $"{{{{ include '{named}' }}}}");
        var fault = Assert.Throws<TemplateFaultException>(() => SiteRenderer.Render(SiteReport.Of(SmallEdition.Plain()), SmallEdition.Templates(templates), SmallEdition.NoPicture));
        Assert.Contains($"There is no template {named.Replace(@"\\", @"\", StringComparison.Ordinal)}.", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_in_a_template_folder_publishes_nothing()
    {
        File.WriteAllText(Path.Combine(_folder, "secret.txt"), "secret");
        var templates = Directory.CreateDirectory(Path.Combine(_folder, "mine", "site")).Parent!.FullName;
        File.CreateSymbolicLink(Path.Combine(templates, "site", "extra.css"), Path.Combine(_folder, "secret.txt"));
        Assert.DoesNotContain(SmallEdition.Templates(templates).PlainFiles, file => file.Name == "extra.css");
    }

    [Fact]
    public void A_template_that_never_ends_is_stopped_with_its_place()
    {
        var templates = Directory.CreateDirectory(Path.Combine(_folder, "mine", "pages")).Parent!.FullName;
        File.WriteAllText(Path.Combine(templates, "pages", "rig.html"), "\n{{ while true }}{{ end }}");
        var fault = Assert.Throws<TemplateFaultException>(() => SiteRenderer.Render(SiteReport.Of(SmallEdition.Plain()), SmallEdition.Templates(templates), SmallEdition.NoPicture));
        Assert.StartsWith($"{Path.Combine(templates, "pages", "rig.html")}(2,", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_in_a_collection_is_not_read()
    {
        var outside = Directory.CreateDirectory(Path.Combine(_folder, "outside")).FullName;
        File.WriteAllText(Path.Combine(outside, "secret.yaml"), "chips: {}");
        var collection = Directory.CreateDirectory(Path.Combine(_folder, "data")).FullName;
        File.WriteAllText(Path.Combine(collection, "own.yaml"), "chips: {}");
        Directory.CreateSymbolicLink(Path.Combine(collection, "folder"), outside);
        File.CreateSymbolicLink(Path.Combine(collection, "file.yaml"), Path.Combine(outside, "secret.yaml"));
        Assert.Equal(["own.yaml"], CollectionFolder.Read(collection, null).Files.Select(file => file.Path));
    }

    [Theory]
    [InlineData("import dump --driver new --os windows-98se --write --card", "../../escaped")]
    [InlineData("import dump --driver new --os windows-98se --write --card", "con")]
    [InlineData("import dump --os windows-98se --write --card x --driver", "../../escaped@1")]
    [InlineData("import title --os windows-98se --write --title", "../../escaped")]
    public void An_import_writes_nothing_under_a_name_that_leads_elsewhere(string words, string name)
    {
        using var bench = new ImportBench();
        var file = words.StartsWith("import title", StringComparison.Ordinal) ? Directory.CreateDirectory(bench.PathOf("game")).FullName : bench.Write("dump.txt", Encoding.Latin1.GetBytes(OneRun.Dump));
        if (Directory.Exists(file))
            File.WriteAllBytes(Path.Combine(file, "a.exe"), [.. "MZ"u8, .. "ddraw.dll DirectDrawCreate"u8]);
        var before = bench.Texts();
        Assert.NotEqual(ExitCode.Fine, bench.Run(words, name, file));
        Assert.Equal(before, bench.Texts());
        Assert.Empty(Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(bench.Folder)!, "*escaped*"));
    }

    [Fact]
    public void A_worksheet_that_may_hold_answers_is_not_written_over()
    {
        using var bench = new ImportBench();
        var filled = bench.Write("worksheet.xlsx", "filled"u8.ToArray());
        Assert.Equal(ExitCode.Usage, bench.Run("worksheet --out", filled));
        Assert.Equal($"{filled} exists already and may hold answers. Import it and move it away, or name another file.\n", bench.Told);
        Assert.Equal("filled", File.ReadAllText(filled));
    }

    private static string FaultsOf(string id)
    {
        var key = id.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal);
        return string.Join('\n', CollectionLoader.Load([new SourceText("x.yaml", $"chips: {{\"{key}\": {{name: N, source: A book}}}}")]).Faults);
    }
}
