using System.Diagnostics;

namespace FeatureMatrix.Tests.Support;

/// <summary>Scripts as a person would type them; in them <c>featmatrix</c> is the program that was built beside the tests.</summary>
internal static class Shell
{
    /// <summary>What the script printed, without messages; fails where it does not end with 0.</summary>
    /// <param name="script">The script.</param>
    /// <param name="folder">The folder it runs in.</param>
    /// <param name="shell">The shell that runs it.</param>
    /// <param name="input">What it can read.</param>
    public static string Run(string script, string folder, string shell = "bash", string input = "")
    {
        var start = new ProcessStartInfo(External.Command(shell, shell), ["-c", script])
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = AppContext.BaseDirectory + Path.PathSeparator + start.Environment["PATH"];
        start.Environment["NO_COLOR"] = "1";
        using var process = Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{shell} gave {process.ExitCode}: {output}{messages.GetAwaiter().GetResult()}\n{script}");
        return output;
    }
}
