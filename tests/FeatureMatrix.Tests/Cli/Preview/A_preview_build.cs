using System.Text;
using FeatureMatrix.Cli.Preview;

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
        Directory.CreateDirectory(_folder["templates"]);
        Write("collection/collection.yaml", World);
        _build = new PreviewBuild(_folder["collection"], null, _folder["templates"]);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Does_nothing_where_nothing_changed()
    {
        Assert.True(_build.Update());
        var first = _build.State;
        Assert.False(_build.Update());
        Assert.Same(first, _build.State);
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
        Write("templates/titles.html", "<p>Nothing but titles</p>");
        Assert.True(_build.Update());
        Assert.Contains("<p>Nothing but titles</p>", Page("titles/index.html"), StringComparison.Ordinal);
        Assert.Equal((1, 2), _build.Work);
        File.Delete(_folder["templates/titles.html"]);
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
        var fault = Assert.Single(_build.State.Faults);
        Assert.StartsWith("collection.yaml(6,", fault, StringComparison.Ordinal);
        Assert.Contains("did you mean 'fog-table'?", fault, StringComparison.Ordinal);
        Write("collection/collection.yaml", World + "\n");
        _build.Update();
        Assert.Empty(_build.State.Faults);
    }

    [Fact]
    public void Keeps_the_last_good_build_beside_faults_of_a_template()
    {
        _build.Update();
        Write("templates/titles.html", "{{ nothing_of_that_name }}");
        _build.Update();
        Assert.Contains("<h1>Titles</h1>", Page("titles/index.html"), StringComparison.Ordinal);
        Assert.Contains("titles.html(1,4)", Assert.Single(_build.State.Faults), StringComparison.Ordinal);
    }

    [Fact]
    public void Has_only_faults_where_the_first_attempt_has_some()
    {
        Write("collection/collection.yaml", "collection: {}\n");
        _build.Update();
        Assert.Empty(_build.State.Files);
        Assert.NotEmpty(_build.State.Faults);
    }

    [Fact]
    public void Puts_no_script_of_its_own_into_the_edition()
    {
        _build.Update();
        Assert.All(_build.State.Files.Values.Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal)), file =>
            Assert.DoesNotContain("preview.js", Encoding.UTF8.GetString(file.Bytes), StringComparison.Ordinal));
    }

    private string Page(string path) => Encoding.UTF8.GetString(_build.State.Files[path].Bytes);

    private void Write(string name, string text) => File.WriteAllText(_folder[name], text);
}
