using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using FeatureMatrix.Reports.Editions;

namespace FeatureMatrix.Rendering.Editions;

/// <summary>The editions as an Atom feed (RFC 4287), the latest first, so that readers learn of a new one.</summary>
public static class EditionFeed
{
    /// <summary>What the file is called in the site.</summary>
    public const string FileName = "editions.atom";

    private static readonly XNamespace Atom = "http://www.w3.org/2005/Atom";

    /// <summary>The feed; null where there is no edition, because a feed must say when it was last changed.</summary>
    /// <param name="history">The editions.</param>
    /// <param name="collection">The collection's name.</param>
    /// <param name="page">The page that shows the differences, relative to the feed.</param>
    public static OutputFile? Of(EditionHistory history, string collection, string page)
    {
        if (history.Editions.Count == 0)
            return null;
        var feed = new XElement(
            Atom + "feed",
            new XElement(Atom + "title", $"Editions of {collection}"),
            new XElement(Atom + "id", Id(collection)),
            new XElement(Atom + "updated", Day(history.Editions[^1])),
            new XElement(Atom + "author", new XElement(Atom + "name", collection)),
            new XElement(Atom + "link", new XAttribute("rel", "alternate"), new XAttribute("href", page)),
            history.Editions.Reverse().Select(edition => new XElement(
                Atom + "entry",
                new XElement(Atom + "title", edition.Name),
                new XElement(Atom + "id", Id($"{collection}\n{edition.Name}")),
                new XElement(Atom + "updated", Day(edition)),
                new XElement(Atom + "link", new XAttribute("rel", "alternate"), new XAttribute("href", page)),
                new XElement(Atom + "summary", history.Summary(edition)))));
        var text = new StringBuilder();
        using (var writer = XmlWriter.Create(new Utf8Text(text), new XmlWriterSettings { Indent = true, NewLineChars = "\n", Encoding = Encoding.UTF8 }))
            feed.Save(writer);
        return OutputFile.Text(FileName, text.Append('\n').ToString());
    }

    /// <summary>A name that stays the same wherever the site moves: a UUID made of the name (RFC 4122, version 8 bits with SHA-256, RFC 9562).</summary>
    private static string Id(string name)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(name))[..16];
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return $"urn:uuid:{new Guid(bytes, bigEndian: true)}";
    }

    private static string Day(EditionState edition) => edition.Date!.Value.ToString("yyyy-MM-dd'T00:00:00Z'", CultureInfo.InvariantCulture);

    private sealed class Utf8Text(StringBuilder text) : StringWriter(text, CultureInfo.InvariantCulture)
    {
        public override Encoding Encoding => Encoding.UTF8;
    }
}
