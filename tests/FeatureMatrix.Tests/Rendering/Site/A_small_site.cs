using System.Text;
using FeatureMatrix.Rendering;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Site;

/// <summary>The site of one small edition, page by page.</summary>
public sealed class A_small_site
{
    private static readonly IReadOnlyList<OutputFile> Files = SmallEdition.Site(SmallEdition.Plain());

    public static TheoryData<string> Recorded => new(
        "index.html", "coverage/index.html", "coverage/windows-98se.html", "cards/index.html", "cards/dune.html", "titles/low-mist.html", "features/fog-table.html",
        "wrappers/lens.html", "drivers/sand-9x.html", "rigs/bench.html", "coverage/low-mist/dune.html", "bench.html", "sources.html", "about.html", "editions.html", "compare/index.html", "compare/delta/dune.html", "plan.html", "worth/dune.html", "installs/dune.html", "tables/coverage-index.js");

    [Theory]
    [MemberData(nameof(Recorded))]
    public void Is_as_recorded(string path) => Golden.Matches($"site/{path}", Files.Single(file => file.Path == path).Bytes);

    [Fact]
    public void Is_the_same_bytes_again()
    {
        var again = SmallEdition.Site(SmallEdition.Plain());
        Assert.Equal(Files.Select(file => file.Path), again.Select(file => file.Path));
        Assert.All(Files.Zip(again), pair => Assert.Equal(pair.First.Bytes, pair.Second.Bytes));
    }

    [Fact]
    public void States_a_date_only_when_given_one()
    {
        var dated = SmallEdition.Site(SmallEdition.Plain(new DateOnly(2026, 3, 14)));
        Assert.Contains("<time datetime=\"2026-03-14\">2026-03-14</time>", Text(dated, "index.html"), StringComparison.Ordinal);
        Assert.DoesNotContain("<time", Text(Files, "index.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Has_no_file_twice() => Assert.Equal(Files.Count, Files.Select(file => file.Path.ToUpperInvariant()).Distinct(StringComparer.Ordinal).Count());

    [Fact]
    public void Links_only_to_files_and_places_that_exist()
    {
        var broken = new List<string>();
        foreach (var file in Files.Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal)))
        {
            var page = new Uri("http://site/" + file.Path);
            foreach (var link in Attributes(Text(file), "href=\"").Concat(Attributes(Text(file), "src=\"")).Concat(Attributes(Text(file), "data-source=\"")))
            {
                if (link.StartsWith("http", StringComparison.Ordinal))
                    continue;
                var target = new Uri(page, link);
                var found = Files.FirstOrDefault(other => other.Path == target.AbsolutePath[1..]);
                if (found is null || (target.Fragment.Length > 1 && !Text(found).Contains($"id=\"{target.Fragment[1..]}\"", StringComparison.Ordinal)))
                    broken.Add($"{file.Path}: {link}");
            }
        }

        Assert.Empty(broken);
    }

    [Fact]
    public void Has_no_script_or_style_inside_a_page()
    {
        Assert.All(Files.Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal)), file =>
        {
            Assert.DoesNotContain(" style=\"", Text(file), StringComparison.Ordinal);
            Assert.DoesNotContain("<style", Text(file), StringComparison.Ordinal);
            Assert.DoesNotMatch("<script(?! src=)", Text(file));
            Assert.DoesNotMatch(" on[a-z]+=\"", Text(file));
            Assert.Contains("Content-Security-Policy\" content=\"default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'\"", Text(file), StringComparison.Ordinal);
        });
    }

    internal static string Text(OutputFile file) => Encoding.UTF8.GetString(file.Bytes);

    private static string Text(IReadOnlyList<OutputFile> files, string path) => Text(files.Single(file => file.Path == path));

    private static IEnumerable<string> Attributes(string html, string name)
    {
        for (var at = html.IndexOf(name, StringComparison.Ordinal); at >= 0; at = html.IndexOf(name, at + 1, StringComparison.Ordinal))
        {
            var start = at + name.Length;
            yield return System.Net.WebUtility.HtmlDecode(html[start..html.IndexOf('"', start)]);
        }
    }
}
