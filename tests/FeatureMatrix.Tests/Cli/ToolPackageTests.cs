using FeatureMatrix.Tests.Documents;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>
/// The package as a stranger gets it: made and installed as the README says, from a folder, with an empty package cache, but into a folder
/// of the test's own.
/// </summary>
public sealed class The_tool_package : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Installs_from_a_folder_and_brings_vocabulary_and_templates_along()
    {
        var lines = The_readme.Blocks[2].TrimEnd('\n').Split('\n');
        Assert.Equal(3, lines.Length);
        var project = Repository.PathTo("src", "FeatureMatrix.Cli");

        // What is built goes to the test's folder too: other tests may be building the project just now.
        Shell.Run($"{lines[0].Replace("src/FeatureMatrix.Cli", project, StringComparison.Ordinal)} --artifacts-path built -p:RunAnalyzers=false --disable-build-servers", _folder.Path);
        Shell.Run($"NUGET_PACKAGES=$PWD/packages {lines[1].Replace("--global", "--tool-path tool", StringComparison.Ordinal)}", _folder.Path);

        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+\n$", Shell.Run("tool/" + lines[2], _folder.Path));
        Shell.Run("tool/featmatrix new collection bench --name Bench && tool/featmatrix new chip reed-1 --collection bench && tool/featmatrix publish bench --out edition", _folder.Path);
        Assert.True(File.Exists(_folder["edition/index.html"]));
    }
}
