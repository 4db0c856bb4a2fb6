using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli.Browser;

/// <summary>The coverage matrix and the cards' pages as PDF, printed by an installed Chromium.</summary>
internal static partial class PdfPages
{
    /// <summary>Prints the pages of a site.</summary>
    /// <param name="chromium">The program.</param>
    /// <param name="site">All files of the site.</param>
    /// <param name="tell">Told which page is printed.</param>
    public static IReadOnlyList<OutputFile> Of(Chromium chromium, IReadOnlyList<OutputFile> site, Action<string> tell)
    {
        var folder = Directory.CreateTempSubdirectory("featurematrix-pdf-").FullName;
        try
        {
            foreach (var file in site)
            {
                var path = Path.Combine(folder, "site", file.Path);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, IsPrinted(file.Path) ? WithoutLinks(file.Bytes) : file.Bytes);
            }

            return site.Select(file => file.Path).Where(IsPrinted).Select(page =>
            {
                tell($"Printing {page}.");
                return new OutputFile(NameOf(page), Print(chromium, folder, page));
            }).ToList();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static bool IsPrinted(string page) => page == "coverage/index.html"
        || (page.StartsWith("cards/", StringComparison.Ordinal) && page.EndsWith(".html", StringComparison.Ordinal) && page != "cards/index.html");

    private static string NameOf(string page) => page == "coverage/index.html" ? "pdf/coverage.pdf" : $"pdf/{Path.ChangeExtension(page, ".pdf")}";

    private static byte[] Print(Chromium chromium, string folder, string page)
    {
        var target = Path.Combine(folder, "page.pdf");
        return WithoutClock(chromium.Make(folder, Path.Combine(folder, "site", page), target, page, "--no-pdf-header-footer", $"--print-to-pdf={target}"));
    }

    // Links would lead into the folder it is printed from, which is gone afterwards.
    private static byte[] WithoutLinks(byte[] page) => Encoding.UTF8.GetBytes(Link().Replace(Encoding.UTF8.GetString(page), "<a ${before}"));

    /// <summary>The same file with the dates of its making set to a fixed day of the same length: the same edition gives the same bytes.</summary>
    /// <remarks>Names of nodes count from a number that differs from run to run; they become their rank, which keeps their order and length.</remarks>
    private static byte[] WithoutClock(byte[] pdf)
    {
        var text = Made().Replace(Encoding.Latin1.GetString(pdf), "/${kind}Date (D:20000101000000+00'00')");
        var ranks = Node().Matches(text).Select(match => match.Value).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select((name, i) => (name, Rank: $"node{i.ToString("D8", CultureInfo.InvariantCulture)}")).ToDictionary(pair => pair.name, pair => pair.Rank, StringComparer.Ordinal);
        return Encoding.Latin1.GetBytes(Node().Replace(text, match => ranks[match.Value]));
    }

    [GeneratedRegex("/(?<kind>Creation|Mod)Date \\(D:[0-9]{14}[+-][0-9]{2}'[0-9]{2}'\\)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Made();

    [GeneratedRegex("node[0-9]{8}", RegexOptions.None, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Node();

    [GeneratedRegex("<a (?<before>[^>]*?)href=\"[^\"]*\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Link();
}
