using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace FeatureMatrix.Benchmarks;

/// <summary>
/// Times a preview as its user meets it: the program runs as a process of its own on a copy of a collection, a name in one file changes, and
/// the clock runs until the page that is open has been told of it and been loaded again.
/// </summary>
internal static partial class PreviewRace
{
    private const int Port = 8677;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Prints the shortest, the middle and the longest of several edits.</summary>
    /// <param name="program">The program's own assembly.</param>
    /// <param name="folder">The collection; it is copied.</param>
    /// <param name="file">The file to change: the first <c>name:</c> in it.</param>
    /// <param name="page">The page that is open; it need not show the name.</param>
    /// <param name="edits">How often.</param>
    public static void Run(string program, string folder, string file, string page, int edits)
    {
        var copy = Directory.CreateTempSubdirectory("preview-").FullName;
        try
        {
            foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
            {
                var target = Path.Combine(copy, Path.GetRelativePath(folder, path));
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(path, target);
            }

            using var preview = Process.Start(new ProcessStartInfo("dotnet", [program, "preview", copy, "--port", $"{Port}"]) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true })!;
            try
            {
                var times = Edit(Path.Combine(copy, file), page, edits).GetAwaiter().GetResult().Order().ToList();
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"{page}: shortest {times[0]:0} ms, middle {times[times.Count / 2]:0} ms, longest {times[^1]:0} ms of {times.Count} edits"));
            }
            finally
            {
                preview.Kill();
                preview.WaitForExit();
            }
        }
        finally
        {
            Directory.Delete(copy, recursive: true);
        }
    }

    private static async Task<List<double>> Edit(string file, string page, int edits)
    {
        using var browser = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{Port}/"), Timeout = Patience };
        var text = await File.ReadAllTextAsync(file);
        var (seen, times) = ("", new List<double>());
        while (seen.Length == 0)
            seen = await Ask(browser, page, "");
        await browser.GetByteArrayAsync(page);
        for (var i = 0; i < edits; i++)
        {
            await Task.Delay(300);
            var waiting = Ask(browser, page, seen);
            await Task.Delay(100);
            var changed = Name().Replace(text, $"name: Edit {i} of ", 1);
            // As editors do it: the new text stands beside the old one before it takes its place, so that nobody reads half of it.
            var edited = Path.GetTempFileName();
            await File.WriteAllTextAsync(edited, changed);
            var watch = Stopwatch.StartNew();
            File.Move(edited, file, overwrite: true);
            var now = await waiting;
            while (now == seen)
                now = await Ask(browser, page, seen);
            await browser.GetByteArrayAsync(page);
            times.Add(watch.Elapsed.TotalMilliseconds);
            seen = now;
        }

        return times;
    }

    /// <summary>What the page would keep of the state; empty where there is none yet.</summary>
    private static async Task<string> Ask(HttpClient browser, string page, string seen)
    {
        try
        {
            return Mark().Match(await browser.GetStringAsync($"preview-state.js?page=/{page}&seen={seen}")) is { Success: true } found ? found.Groups["mark"].Value : "";
        }
        catch (HttpRequestException)
        {
            await Task.Delay(50);
            return "";
        }
    }

    [GeneratedRegex("name: ", RegexOptions.None, 1000)]
    private static partial Regex Name();

    [GeneratedRegex("\"tag\":\"[^\"]+\".*\"mark\":\"(?<mark>[0-9a-f]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Mark();
}
