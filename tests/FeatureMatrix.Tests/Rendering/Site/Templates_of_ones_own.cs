using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Site;

/// <summary>A folder of the user's lies over ours; faults in it name file and line.</summary>
public sealed class Templates_of_ones_own : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("templates").FullName;

    public Templates_of_ones_own()
    {
        foreach (var room in new[] { "pages", "parts", "site" })
            Directory.CreateDirectory(Path.Combine(_folder, room));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Take_the_place_of_ours_file_by_file()
    {
        File.WriteAllText(Path.Combine(_folder, "pages/rig.html"), "<h1>My rig {{ subject.name | html.escape }}</h1>\n");
        File.WriteAllText(Path.Combine(_folder, "site/extra.css"), "p {}\n");
        var files = Render();
        Assert.Contains("<h1>My rig The bench</h1>", A_small_site.Text(files.Single(file => file.Path == "rigs/bench.html")), StringComparison.Ordinal);
        Assert.Contains("<h1>Dune</h1>", A_small_site.Text(files.Single(file => file.Path == "cards/dune.html")), StringComparison.Ordinal);
        Assert.Contains(files, file => file.Path == "extra.css");
    }

    [Fact]
    public void With_a_slip_of_grammar_name_file_line_and_column() =>
        Assert.StartsWith($"{Path.Combine(_folder, "pages/rig.html")}(2,", FaultOf("pages/rig.html", "<h1>x</h1>\n{{ for }}\n"), StringComparison.Ordinal);

    [Fact]
    public void With_an_unknown_member_name_file_line_and_member()
    {
        var fault = FaultOf("pages/rig.html", "<h1>x</h1>\n\n{{ subject.nmae }}\n");
        Assert.StartsWith($"{Path.Combine(_folder, "pages/rig.html")}(3,", fault, StringComparison.Ordinal);
        Assert.Contains("nmae", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void With_an_unknown_variable_name_file_line_and_variable()
    {
        var fault = FaultOf("parts/tile.html", "{{ tiel }}\n");
        Assert.StartsWith($"{Path.Combine(_folder, "parts/tile.html")}(1,", fault, StringComparison.Ordinal);
        Assert.Contains("tiel", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void That_include_what_is_not_there_say_so() =>
        Assert.Contains("There is no template parts/elsewhere.html.", FaultOf("pages/rig.html", "{{ include 'parts/elsewhere.html' }}"), StringComparison.Ordinal);

    [Fact]
    public void That_lie_where_no_page_would_find_them_say_so() =>
        Assert.Equal($"{Path.Combine(_folder, "rig.html")} is in none of the folders that templates have: pages, parts, site. Nothing would be made of it.", FaultOf("rig.html", "<h1>x</h1>"));

    [Fact]
    public void That_bear_the_name_of_no_page_say_which_was_meant() =>
        Assert.Equal($"{Path.Combine(_folder, "pages/crad.html")}: there is no page of that name. Did you mean card.html?", FaultOf("pages/crad.html", "<h1>x</h1>"));

    [Fact]
    public void That_are_texts_or_hidden_are_passed_over()
    {
        var ours = Render();
        File.WriteAllText(Path.Combine(_folder, "README.md"), "mine");
        File.WriteAllText(Path.Combine(_folder, "site", ".notes"), "mine");
        Assert.Equal(ours.Select(file => file.Path), Render().Select(file => file.Path));
    }

    private string FaultOf(string name, string text)
    {
        File.WriteAllText(Path.Combine(_folder, name), text);
        return Assert.Throws<TemplateFaultException>(Render).Message;
    }

    private IReadOnlyList<FeatureMatrix.Rendering.OutputFile> Render() =>
        SiteRenderer.Render(SiteReport.Of(SmallEdition.Plain()), SmallEdition.Templates(_folder), SmallEdition.NoPicture);
}
