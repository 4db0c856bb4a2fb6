using System.Diagnostics;
using System.Globalization;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Benchmarks;

/// <summary>A site against writing the same bytes: verdicts, pages, and the same files and one file of their size as the floor. Pictures are left out.</summary>
internal static class SiteBench
{
    /// <summary>Prints what each step took of the processors.</summary>
    public static void Run(string folder, string output)
    {
        var decisions = new Decisions(Workbench.Load(folder), null);
        var spent = Spent();
        decisions.DecideAll();
        spent = Say("verdicts", spent, 0);
        var templates = TemplateSet.Read(Path.Combine(Workbench.RepositoryRoot, "templates"), null);
        var none = new DrawnPair([], []);
        var files = SiteRenderer.Render(SiteReport.Of(EditionReport.Of(decisions)), templates, _ => none);
        var bytes = files.Sum(file => (long)file.Bytes.Length);
        spent = Say("pages", spent, bytes);
        foreach (var file in files)
        {
            var path = Path.Combine(output, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, file.Bytes);
        }

        spent = Say($"the same bytes as {files.Count} files", spent, bytes);
        Workbench.WriteBytes(bytes, Path.Combine(output, "one-file"));
        Say("the same bytes as one file", spent, bytes);
    }

    private static TimeSpan Spent() => Process.GetCurrentProcess().TotalProcessorTime;

    private static TimeSpan Say(string what, TimeSpan before, long bytes)
    {
        var seconds = (Spent() - before).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {seconds:0.000} s of processors{(bytes > 0 ? $", {bytes / 1e6:0.0} MB, {bytes / 1e6 / seconds:0} MB/s" : "")}"));
        return Spent();
    }
}
