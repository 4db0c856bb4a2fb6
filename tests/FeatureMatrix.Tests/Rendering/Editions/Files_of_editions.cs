using System.Xml.Linq;
using FeatureMatrix.Rendering.Editions;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Tests.Reports.Editions;

namespace FeatureMatrix.Tests.Rendering.Editions;

public sealed class Files_of_editions
{
    private static readonly EditionState Spring = Differences_between_editions.State("facts: [{chip: heron, fog-table: yes, source: manual}]") with
    {
        Name = "2026-spring",
        Date = new DateOnly(2026, 3, 14),
        Note = "First <b>\"edition\"</b> & more.",
    };

    [Fact]
    public void Come_back_as_they_were_written()
    {
        var text = EditionFile.Write(Spring);
        var back = EditionFile.Read(text);
        Assert.Equal(text, EditionFile.Write(back));
        Assert.Equal("No verdict changed.", EditionDifference.Between(Spring, back).Headline);
        Assert.Equal((Spring.Name, Spring.Date, Spring.Note, Spring.Program, Spring.Policy), (back.Name, back.Date, back.Note, back.Program, back.Policy));
    }

    [Fact]
    public void Have_a_line_for_each_statement_and_cell()
    {
        var lines = EditionFile.Write(Spring).Split('\n').Select(line => line.TrimEnd(',')).ToList();
        Assert.Contains("    [\"Heron: table fog:\",\"yes (documented: A manual)\"]", lines);
        Assert.StartsWith("    [\"bay\",\"heron-16\",\"works, natively\",[", lines.Single(line => line.Contains("heron-16\",\"works", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\n\"edition\": ", "line 2: it is no JSON")]
    [InlineData("{}", "it is no edition that publish wrote")]
    [InlineData("[]", "it is no edition that publish wrote")]
    [InlineData("""{"edition":"a","date":"14.3.2026","note":"","program":"","policy":"","titles":{},"cards":{},"statements":[],"cells":[]}""", "it is no edition that publish wrote")]
    [InlineData("""{"edition":"a","date":"2026-03-14","note":"","program":"","policy":"","titles":{},"cards":{},"statements":[],"cells":[["t","c","works",[7]]]}""", "it is no edition that publish wrote")]
    public void Say_what_is_wrong_with_them(string text, string why) => Assert.Equal(why, Assert.Throws<FormatException>(() => EditionFile.Read(text)).Message);

    [Fact]
    public void Make_a_feed_as_RFC_4287_wants_it()
    {
        var summer = Differences_between_editions.State("") with { Name = "2026-summer", Date = new DateOnly(2026, 7, 1) };
        var file = EditionFeed.Of(new EditionHistory([Spring, summer]), "Shelf", "editions.html")!;
        var feed = XDocument.Parse(System.Text.Encoding.UTF8.GetString(file.Bytes)).Root!;
        XNamespace atom = "http://www.w3.org/2005/Atom";

        // RFC 4287, section 4.1.1: exactly one id, title and updated; an author; section 4.1.2: the same for each entry, and a summary or link.
        Assert.Equal("editions.atom", file.Path);
        Assert.Equal(atom + "feed", feed.Name);
        Assert.All(feed.Elements(atom + "entry").Append(feed), element =>
        {
            Assert.Matches("^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$", Assert.Single(element.Elements(atom + "id")).Value);
            Assert.Single(element.Elements(atom + "title"));
            Assert.Matches("^[0-9]{4}-[0-9]{2}-[0-9]{2}T00:00:00Z$", Assert.Single(element.Elements(atom + "updated")).Value);
            Assert.Equal("editions.html", Assert.Single(element.Elements(atom + "link")).Attribute("href")!.Value);
        });
        Assert.Equal("Shelf", Assert.Single(feed.Elements(atom + "author")).Element(atom + "name")!.Value);
        Assert.Equal(
            [("2026-summer", "1 verdict changed."), ("2026-spring", "First <b>\"edition\"</b> & more. The first edition.")],
            feed.Elements(atom + "entry").Select(entry => (entry.Element(atom + "title")!.Value, entry.Element(atom + "summary")!.Value)));
        Assert.Equal(3, feed.Descendants(atom + "id").Select(id => id.Value).Distinct().Count());
    }

    [Fact]
    public void Make_no_feed_where_there_are_none() => Assert.Null(EditionFeed.Of(new EditionHistory([]), "Shelf", "editions.html"));
}
