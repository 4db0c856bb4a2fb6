using System.Diagnostics;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The package as a stranger gets it: from a folder, with an empty package cache.</summary>
[Trait("Category", "campaign")]
public sealed class The_tool_package : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Installs_from_a_folder_and_brings_vocabulary_and_templates_along()
    {
        Run("dotnet", "pack", Repository.PathTo("src", "FeatureMatrix.Cli"), "-c", "Release", "-o", _folder["feed"], "-v", "quiet", "--nologo");
        Run("dotnet", "tool", "install", "--tool-path", _folder["tool"], "--source", _folder["feed"], "FeatureMatrix.Tool");
        var tool = _folder[OperatingSystem.IsWindows() ? "tool/featmatrix.exe" : "tool/featmatrix"];

        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+", Run(tool, "--version"));
        Run(tool, "new", "collection", _folder["bench"], "--name", "Bench");
        Run(tool, "new", "chip", "reed-1", "--collection", _folder["bench"]);
        Run(tool, "publish", _folder["bench"], "--out", _folder["edition"]);
        Assert.True(File.Exists(_folder["edition/index.html"]));
    }

    private string Run(string program, params string[] args)
    {
        var start = new ProcessStartInfo(program, args) { WorkingDirectory = _folder.Path, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        if (args[0] == "tool")
            start.Environment["NUGET_PACKAGES"] = _folder["packages"];
        using var process = Process.Start(start)!;
        var errors = "";
        process.ErrorDataReceived += (_, line) => errors += line.Data + "\n";
        process.BeginErrorReadLine();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', args)}: {output}{errors}");
        return output;
    }
}
