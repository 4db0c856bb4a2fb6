using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli;

/// <summary>The coverage matrix and the cards' pages as PDF, printed by the Chromium that is installed; the program brings none of its own.</summary>
internal static partial class PdfPages
{
    private const string Variable = "CHROMIUM";
    private static readonly string[] Names = ["chromium", "chromium-browser"];
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Where Chromium is: what the variable CHROMIUM names, else what lies on the path.</summary>
    /// <exception cref="UsageException">There is none.</exception>
    public static string FindChromium()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
            return File.Exists(named) ? named : throw new UsageException($"{Variable} names {named}, which does not exist. Nothing was written.");
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return folders.SelectMany(folder => Names.SelectMany(name => new[] { Path.Combine(folder, name), Path.Combine(folder, name + ".exe") })).FirstOrDefault(File.Exists)
            ?? throw new UsageException($"--pdf needs Chromium, and none is on the path. Install it, name it in the variable {Variable}, or leave --pdf out. Nothing was written.");
    }

    /// <summary>Prints the pages of a site.</summary>
    /// <param name="chromium">The program.</param>
    /// <param name="site">All files of the site.</param>
    /// <param name="tell">Told which page is printed.</param>
    public static IReadOnlyList<OutputFile> Of(string chromium, IReadOnlyList<OutputFile> site, Action<string> tell)
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

    private static byte[] Print(string chromium, string folder, string page)
    {
        var target = Path.Combine(folder, "page.pdf");
        var start = new ProcessStartInfo(chromium) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false };
        foreach (var argument in (string[])
            [
                "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                $"--user-data-dir={Path.Combine(folder, "profile")}", "--no-pdf-header-footer", $"--print-to-pdf={target}",
                .. Environment.IsPrivilegedProcess ? (string[])["--no-sandbox"] : [], new Uri(Path.Combine(folder, "site", page)).AbsoluteUri,
            ])
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            using var process = Process.Start(start)!;
            process.ErrorDataReceived += (_, _) => { };
            process.OutputDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            process.BeginOutputReadLine();
            if (!process.WaitForExit(Patience))
            {
                process.Kill(entireProcessTree: true);
                throw new UsageException($"Chromium did not print {page} within two minutes. Nothing was written.");
            }
        }
        catch (Win32Exception problem)
        {
            throw new UsageException($"{chromium} cannot be run: {problem.Message}. Nothing was written.");
        }

        return File.Exists(target)
            ? WithoutClock(File.ReadAllBytes(target))
            : throw new UsageException($"{chromium} did not print {page}. Nothing was written.");
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
