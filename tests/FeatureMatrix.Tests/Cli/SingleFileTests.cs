using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The one file for a PC without .NET, made as the README says.</summary>
[Trait("Category", "campaign")]
public sealed class The_single_file : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Holds_everything_and_runs_from_any_folder()
    {
        var project = Repository.PathTo("src", "FeatureMatrix.Cli");
        Shell.Run($"dotnet publish {project} -r linux-x64 -o program --artifacts-path built -p:RunAnalyzers=false --disable-build-servers", _folder.Path);
        Assert.Equal([_folder["program/featmatrix"]], Directory.GetFileSystemEntries(_folder["program"]));

        // It unpacks itself below the home folder, and there is no .NET for it to find.
        var elsewhere = Directory.CreateDirectory(_folder["elsewhere"]).FullName;
        var program = $"HOME={elsewhere} DOTNET_ROOT={elsewhere} PATH=/usr/bin:/bin {_folder["program/featmatrix"]}";

        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+\n$", Shell.Run($"{program} --version", elsewhere));
        Assert.Equal(
            CommandRun.Of("explain", "reedcutter", "kite-2", "--collection", Repository.PathTo("data", "demo")).Results,
            Shell.Run($"{program} explain reedcutter kite-2 --collection {Repository.PathTo("data", "demo")}", elsewhere));
        Shell.Run($"{program} publish {Repository.PathTo("data", "demo")} --out edition", elsewhere);
        Assert.True(File.Exists(Path.Combine(elsewhere, "edition", "index.html")));
    }
}
