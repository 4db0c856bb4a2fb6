using System.Text.Json;
using System.Xml.Linq;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Dependencies;

/// <summary>DEVELOPERS.md names every package that a lock file holds, with the licence that the package itself states.</summary>
public sealed class Licences_of_packages
{
    [Fact]
    public void Are_listed_completely_and_right()
    {
        var lines = File.ReadAllLines(Repository.PathTo("DEVELOPERS.md"));
        var missing = new List<string>();
        foreach (var (name, version) in Locked())
        {
            var licence = LicenceOf(name, version);
            if (!lines.Any(line => line.StartsWith('|') && line.Split('|')[1].Split(',', StringSplitOptions.TrimEntries).Any(one => one.Split(' ')[0] == name) && line.Split('|')[2].Trim() == licence))
                missing.Add($"{name}: {licence}");
        }

        Assert.Empty(missing);
    }

    private static IEnumerable<(string Name, string Version)> Locked() =>
        Directory.EnumerateFiles(Repository.Root, "packages.lock.json", SearchOption.AllDirectories)
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(path => JsonDocument.Parse(File.ReadAllText(path)).RootElement.GetProperty("dependencies").EnumerateObject())
            .SelectMany(framework => framework.Value.EnumerateObject())
            .Where(package => package.Value.GetProperty("type").GetString() != "Project")
            .Select(package => (package.Name, package.Value.GetProperty("resolved").GetString()!))
            .Distinct().OrderBy(package => package.Name, StringComparer.Ordinal);

    /// <summary>From the package in the cache that the build restored it to.</summary>
    private static string LicenceOf(string name, string version)
    {
        var cache = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } own
            ? own
            : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        var (folder, file) = (name.ToLowerInvariant(), Path.Combine(cache, name.ToLowerInvariant(), version.ToLowerInvariant(), $"{name.ToLowerInvariant()}.nuspec"));
        Assert.True(File.Exists(file), $"{folder} {version} is not restored");
        var metadata = XDocument.Load(file).Root!.Elements().Single(element => element.Name.LocalName == "metadata");
        var licence = metadata.Elements().SingleOrDefault(element => element.Name.LocalName == "license");
        return licence is null ? $"see {metadata.Elements().Single(element => element.Name.LocalName == "licenseUrl").Value}" : licence.Value.Trim();
    }
}
