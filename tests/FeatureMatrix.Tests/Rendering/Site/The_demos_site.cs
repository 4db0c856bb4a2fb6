using System.Diagnostics;
using FeatureMatrix.Rendering;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Tests.Demo;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Site;

/// <summary>The site of the demo, and what the validators say of it.</summary>
public sealed class The_demos_site(LodenSluice bench) : IClassFixture<LodenSluice>
{
    private const int HeaviestPage = 150 * 1024;

    [Fact]
    public void Is_light_and_valid()
    {
        var files = SmallEdition.Site(EditionReport.Of(new Decisions(bench.Catalog, null)));
        Assert.Empty(files.Where(file => !file.Path.EndsWith(".png", StringComparison.Ordinal) && !file.Path.StartsWith("tables/", StringComparison.Ordinal) && file.Bytes.Length > HeaviestPage)
            .Select(file => $"{file.Path}: {file.Bytes.Length}"));
        Assert.Equal("", Validate(files));
    }

    [Theory]
    [InlineData(
        "", "The terms of all pages, decisions included, are the default ones. The collection has libraries with their own: "
        + "the long shelf (publish --library long-shelf --out FOLDER) and the sluice evening (publish --library sluice-evening --out FOLDER).")]
    [InlineData(
        "long-shelf", "The terms of all pages, decisions included, are those of the long shelf. The collection has another library with its own: "
        + "the sluice evening (publish --library sluice-evening --out FOLDER).")]
    public void Says_whose_terms_it_is_on_and_how_to_have_it_on_those_of_others(string library, string text) =>
        Assert.Equal(text, SiteReport.Of(EditionReport.Of(bench.AllDecisions.Single(decisions => (decisions.Library?.Id ?? "") == library))).LibrariesText);

    [Fact]
    public void Has_style_sheets_that_their_checker_accepts()
    {
        var checkers = Repository.PathTo("tests", "checkers");
        var tool = External.File(Path.Combine(checkers, "node_modules", "stylelint", "bin", "stylelint.mjs"), "npm (npm ci in tests/checkers)");
        var config = Path.Combine(checkers, "stylelint.json");
        Assert.Equal("", Run(External.Command("node", "nodejs"), tool, "--config", config, Path.Combine(Repository.PathTo("templates", "site"), "*.css")));
    }

    // Errors only: of a page in a folder the validator warns that "self" names no origin, which browsers read as the folder.
    // One start of the validator for the fixture, the hostile fixture and the demo; of the demo's cells those of three titles.
    private static string Validate(IReadOnlyList<OutputFile> demo)
    {
        var jar = External.File(Repository.PathTo("tests", "checkers", "node_modules", "vnu-jar", "build", "dist", "vnu.jar"), "npm (npm ci in tests/checkers)");
        var java = External.Command("java", "default-jre-headless");
        var folder = Directory.CreateTempSubdirectory("site").FullName;
        try
        {
            SmallEdition.Write(Pages(SmallEdition.Site(SmallEdition.Plain())), Path.Combine(folder, "plain"));
            SmallEdition.Write(Pages(SmallEdition.Site(SmallEdition.WithHostileNames())), Path.Combine(folder, "hostile"));
            SmallEdition.Write(Pages(demo).Where(file => !file.Path.StartsWith("coverage/", StringComparison.Ordinal) || file.Path.Count(c => c == '/') == 1
                || file.Path.Split('/')[1] is "mirebound" or "ferrymen" or "long-dusk-patrol"), Path.Combine(folder, "demo"));
            return Run(java, "-Xss8m", "-jar", jar, "--stdout", "--format", "gnu", "--errors-only", "--skip-non-html", folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<OutputFile> Pages(IEnumerable<OutputFile> files) =>
        files.Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal));

    private static string Run(string command, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(command, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? output : output + error.Result;
    }
}
