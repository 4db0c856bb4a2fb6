using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Site;

/// <summary>Markup, entities and quotes in names and notes stay text on every page.</summary>
public sealed class Hostile_names
{
    [Fact]
    public void Stay_text_in_every_template()
    {
        var pages = SmallEdition.Site(SmallEdition.WithHostileNames()).Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal)).ToList();
        Assert.All(pages, page =>
        {
            var text = A_small_site.Text(page);
            Assert.DoesNotContain(SmallEdition.Hostile, text, StringComparison.Ordinal);
            Assert.DoesNotContain("<b>&amp;", text, StringComparison.Ordinal);
            Assert.Contains("&lt;b&gt;&amp;&quot;&#39;Two boards", text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Show_as_they_were_written()
    {
        var card = SmallEdition.Site(SmallEdition.WithHostileNames()).Single(file => file.Path == "cards/dune.html");
        Assert.Contains("<h1>&lt;b&gt;&amp;&quot;&#39;Dune</h1>", A_small_site.Text(card), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a <script>alert(1)</script> b", "<p>a &lt;script&gt;alert(1)&lt;/script&gt; b</p>\n")]
    [InlineData("[press](javascript:alert(1))", "<p>press</p>\n")]
    [InlineData("[press](JAVASCRIPT:alert(1))", "<p>press</p>\n")]
    [InlineData("[press](data:text/html,x)", "<p>press</p>\n")]
    [InlineData("[read](https://example.org/a?b=1&c=2)", "<p><a href=\"https://example.org/a?b=1&amp;c=2\">read</a></p>\n")]
    [InlineData("![far](https://example.org/x.png)", "<p>far</p>\n")]
    [InlineData("# Big\n\ntext", "<h3>Big</h3>\n<p>text</p>\n")]
    [InlineData("", "")]
    public void In_notes_lose_scripts_odd_links_and_far_pictures(string markdown, string html) => Assert.Equal(html, MarkdownText.ToHtml(markdown));
}
