using System.Diagnostics;

namespace FeatureMatrix.Tests.Importing;

/// <summary>Runs a command of the machine and gives what it printed.</summary>
internal static class Tool
{
    /// <summary>Standard output; fails where the command's exit code is not 0.</summary>
    public static string Run(string command, IEnumerable<string> arguments, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(command, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{command} gave {process.ExitCode}: {error.GetAwaiter().GetResult()}{output}");
        return output;
    }
}
