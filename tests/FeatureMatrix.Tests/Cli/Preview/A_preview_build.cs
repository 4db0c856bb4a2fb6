using System.Text;
using FeatureMatrix.Cli;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Cli.Preview;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Tests.Cli.Preview;

/// <summary>What a preview builds again when its sources change.</summary>
public sealed class A_preview_build : IDisposable
{
    private const string World = OneBoard.World;

    private readonly TemporaryFolder _folder = new();
    private readonly PreviewBuild _build;

    public A_preview_build()
    {
        Directory.CreateDirectory(_folder["collection"]);
        Directory.CreateDirectory(_folder["templates/pages"]);
        Write("collection/collection.yaml", World);
        _build = new PreviewBuild(_folder["collection"], null, _folder["templates"]);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Does_nothing_where_nothing_changed()
    {
        Assert.True(_build.Update());
        var first = _build.Feed.State;
        Assert.False(_build.Update());
        Assert.Same(first, _build.Feed.State);
        Assert.Equal((1, 1), _build.Work);
    }

    [Fact]
    public void Follows_a_change_of_the_collection()
    {
        _build.Update();
        Write("collection/collection.yaml", World.Replace("Low Mist", "High Water", StringComparison.Ordinal));
        Assert.True(_build.Update());
        Assert.Contains("<h1>High Water</h1>", Page("titles/low-mist.html"), StringComparison.Ordinal);
        Assert.Equal((2, 2), _build.Work);
    }

    [Fact]
    public void Draws_a_changed_template_without_reading_the_collection_again()
    {
        _build.Update();
        Write("templates/pages/titles.html", "<p>Nothing but titles</p>");
        Assert.True(_build.Update());
        Assert.Contains("<p>Nothing but titles</p>", Page("titles/index.html"), StringComparison.Ordinal);
        Assert.Equal((1, 2), _build.Work);
        File.Delete(_folder["templates/pages/titles.html"]);
        _build.Update();
        Assert.DoesNotContain("Nothing but titles", Page("titles/index.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Keeps_the_last_good_build_beside_faults_of_the_collection()
    {
        _build.Update();
        Write("collection/collection.yaml", World.Replace("[fog-table]", "[fog-tabel]", StringComparison.Ordinal));
        Assert.True(_build.Update());
        Assert.Contains("<h1>Low Mist</h1>", Page("titles/low-mist.html"), StringComparison.Ordinal);
        var fault = Assert.Single(_build.Feed.State.Faults);
        Assert.StartsWith("collection.yaml(6,", fault, StringComparison.Ordinal);
        Assert.Contains("did you mean 'fog-table'?", fault, StringComparison.Ordinal);
        Write("collection/collection.yaml", World + "\n");
        _build.Update();
        Assert.Empty(_build.Feed.State.Faults);
    }

    [Fact]
    public void Keeps_what_was_shown_of_a_page_whose_template_has_a_fault_now()
    {
        _build.Update();
        var before = Page("titles/index.html");
        Write("templates/pages/titles.html", "{{ nothing_of_that_name }}");
        _build.Update();
        Assert.Equal(before, Page("titles/index.html"));
        Assert.Contains("titles.html(1,4)", Assert.Single(_build.Feed.State.FaultsOf("titles/index.html")), StringComparison.Ordinal);
        Assert.Empty(_build.Feed.State.FaultsOf("cards/index.html"));
        Write("templates/pages/titles.html", "<p>Mended</p>");
        _build.Update();
        Assert.Contains("<p>Mended</p>", Page("titles/index.html"), StringComparison.Ordinal);
        Assert.Empty(_build.Feed.State.FaultsOf("titles/index.html"));
    }

    [Fact]
    public void Says_so_where_a_page_with_a_faulty_template_was_never_shown()
    {
        Write("templates/pages/titles.html", "{{ nothing_of_that_name }}");
        _build.Update();
        Assert.Contains("No good build of this page yet.", Page("titles/index.html"), StringComparison.Ordinal);
        Assert.Contains("titles.html(1,4)", Assert.Single(_build.Feed.State.FaultsOf("titles/index.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Shows_the_same_files_as_an_edition()
    {
        _build.Update();
        var texts = FeatureMatrix.Loading.CollectionFolder.Read(_folder["collection"], Session.VocabularyFolder);
        var edition = EditionReport.Of(new Decisions(FeatureMatrix.Loading.CollectionLoader.Load(texts.Files).Catalog!, null));
        var files = SiteRenderer.Render(SiteReport.Of(edition), FeatureMatrix.Cli.Templates.Read(_folder["templates"]), PictureCache.Get);
        Assert.All(files, file => Assert.Equal(file.Bytes, _build.Feed.State.Find(file.Path)?.Bytes));
        Assert.Null(_build.Feed.State.Find("titles/none.html"));
    }

    [Fact]
    public void Has_only_faults_where_the_first_attempt_has_some()
    {
        Write("collection/collection.yaml", "collection: {}\n");
        _build.Update();
        Assert.True(_build.Feed.State.IsNothing);
        Assert.Null(_build.Feed.State.Find("index.html"));
        Assert.NotEmpty(_build.Feed.State.Faults);
    }

    [Fact]
    public void Puts_no_script_of_its_own_into_the_edition()
    {
        _build.Update();
        Assert.All(["index.html", "titles/low-mist.html", "coverage/index.html"], path => Assert.DoesNotContain("preview.js", Page(path), StringComparison.Ordinal));
    }

    private string Page(string path) => Encoding.UTF8.GetString(_build.Feed.State.Find(path)!.Bytes);

    private void Write(string name, string text) => File.WriteAllText(_folder[name], text);
}
