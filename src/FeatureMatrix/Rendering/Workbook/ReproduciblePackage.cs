using System.Globalization;
using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// Rewrites an Open Packaging file so that the same content gives the same bytes: fixed entry order and times, and fixed names
/// where the libraries put random ones (the core-properties part, relationship ids, extension GUIDs).
/// </summary>
internal static partial class ReproduciblePackage
{
    private const string ContentTypes = "[Content_Types].xml";
    private const string SharedStrings = "xl/sharedStrings.xml";
    private const string CoreProperties = "docProps/core.xml";
    private static readonly DateTimeOffset Epoch = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>The package with nothing random left in it, and with the rows that were left for the last.</summary>
    public static byte[] Rewrite(byte[] package, IReadOnlyList<BulkRows> bulk)
    {
        var parts = Read(package);
        NameCoreProperties(parts);
        foreach (var path in parts.Keys.Where(path => path.EndsWith(".rels", StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToList())
            NameRelationships(parts, path);
        foreach (var path in parts.Keys.Where(path => path.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)).ToList())
            parts[path] = NameGuids(parts[path]);
        return Pack(parts, bulk.ToDictionary(rows => PathOf(parts, rows.Sheet), StringComparer.Ordinal));
    }

    /// <summary>The part of a sheet.</summary>
    private static string PathOf(SortedDictionary<string, string> parts, string sheet)
    {
        var element = SheetElement().Matches(parts["xl/workbook.xml"]).First(match => WebUtility.HtmlDecode(Attribute(match.Value, "name")) == sheet).Value;
        var id = Attribute(element, "r:id");
        var target = Attribute(Relationship().Matches(parts["xl/_rels/workbook.xml.rels"]).First(match => Attribute(match.Value, "Id") == id).Value, "Target");
        return target.StartsWith('/') ? target[1..] : "xl/" + target;
    }

    private static SortedDictionary<string, string> Read(byte[] package)
    {
        using var zip = new ZipArchive(new MemoryStream(package), ZipArchiveMode.Read);
        var parts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in zip.Entries)
        {
            using var reader = new StreamReader(entry.Open(), Utf8);
            parts[entry.FullName] = reader.ReadToEnd();
        }

        return parts;
    }

    private static void NameCoreProperties(SortedDictionary<string, string> parts)
    {
        if (parts.Keys.FirstOrDefault(path => path.EndsWith(".psmdcp", StringComparison.Ordinal)) is not { } old)
            return;
        parts[CoreProperties] = parts[old];
        parts.Remove(old);
        parts["_rels/.rels"] = parts["_rels/.rels"].Replace("/" + old, "/" + CoreProperties, StringComparison.Ordinal).Replace(old, CoreProperties, StringComparison.Ordinal);
        var types = DefaultForCoreProperties().Replace(parts[ContentTypes], "");
        parts[ContentTypes] = types.Replace(
            "</Types>", $"<Override PartName=\"/{CoreProperties}\" ContentType=\"application/vnd.openxmlformats-package.core-properties+xml\"/></Types>", StringComparison.Ordinal);
    }

    private static void NameRelationships(SortedDictionary<string, string> parts, string path)
    {
        var relationships = Relationship().Matches(parts[path])
            .Select(match => (Id: Attribute(match.Value, "Id"), Key: Attribute(match.Value, "Type") + "|" + Attribute(match.Value, "Target"), match.Value))
            .OrderBy(one => one.Key, StringComparer.Ordinal).ToList();
        var renamed = relationships.Where(one => RandomId().IsMatch(one.Id))
            .Select((one, i) => (one.Id, New: $"rN{(i + 1).ToString(CultureInfo.InvariantCulture)}")).ToDictionary(pair => pair.Id, pair => pair.New, StringComparer.Ordinal);
        var text = string.Concat(relationships.Select(one => one.Value));
        var start = parts[path].IndexOf("<Relationship ", StringComparison.Ordinal);
        if (start < 0)
            return;
        var end = parts[path].LastIndexOf("</Relationships>", StringComparison.Ordinal);
        parts[path] = Rename(parts[path][..start] + text + parts[path][end..], renamed);
        var owner = Owner(path);
        if (parts.TryGetValue(owner, out var content))
            parts[owner] = Rename(content, renamed);
    }

    private static string Rename(string text, Dictionary<string, string> renamed) =>
        renamed.Aggregate(text, (current, pair) => current.Replace($"\"{pair.Key}\"", $"\"{pair.Value}\"", StringComparison.Ordinal));

    private static string Owner(string relsPath)
    {
        var folder = relsPath[..relsPath.LastIndexOf("_rels/", StringComparison.Ordinal)];
        var file = relsPath[(relsPath.LastIndexOf('/') + 1)..^".rels".Length];
        return folder + file;
    }

    private static string NameGuids(string sheet)
    {
        var names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        return RandomGuid().Replace(sheet, match =>
        {
            if (!names.TryGetValue(match.Value, out var name))
                names[match.Value] = name = $"{{00000000-0000-4000-8000-{(names.Count + 1).ToString("X12", CultureInfo.InvariantCulture)}}}";
            return name;
        });
    }

    private static byte[] Pack(SortedDictionary<string, string> parts, Dictionary<string, BulkRows> bulk)
    {
        var texts = new SharedTexts(parts[SharedStrings]);
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            // The shared texts come last, because the rows that are written before may add to them.
            foreach (var path in parts.Keys.OrderBy(path => path != ContentTypes).ThenBy(path => path == SharedStrings).ThenBy(path => path, StringComparer.Ordinal))
            {
                var entry = zip.CreateEntry(path, bulk.ContainsKey(path) ? CompressionLevel.Fastest : CompressionLevel.Optimal);
                entry.LastWriteTime = Epoch;
                entry.ExternalAttributes = 0;
                using var writer = new StreamWriter(entry.Open(), Utf8, bufferSize: 64 * 1024);
                if (bulk.TryGetValue(path, out var rows))
                    rows.Write(parts[path], writer, texts);
                else
                    writer.Write(path == SharedStrings ? texts.ToString() : parts[path]);
            }
        }

        return stream.ToArray();
    }

    private static string Attribute(string element, string name)
    {
        var start = element.IndexOf($" {name}=\"", StringComparison.Ordinal) + name.Length + 3;
        return element[start..element.IndexOf('"', start)];
    }

    [GeneratedRegex("<Relationship [^>]*/>", RegexOptions.None, 10_000)]
    private static partial Regex Relationship();

    [GeneratedRegex("<x:sheet [^>]*/>", RegexOptions.None, 10_000)]
    private static partial Regex SheetElement();

    [GeneratedRegex("^R[0-9a-f]{16,32}$", RegexOptions.None, 10_000)]
    private static partial Regex RandomId();

    [GeneratedRegex(@"\{[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-4[0-9a-fA-F]{3}-[89abAB][0-9a-fA-F]{3}-[0-9a-fA-F]{12}\}", RegexOptions.None, 10_000)]
    private static partial Regex RandomGuid();

    [GeneratedRegex("<Default Extension=\"psmdcp\"[^>]*/>", RegexOptions.None, 10_000)]
    private static partial Regex DefaultForCoreProperties();
}
