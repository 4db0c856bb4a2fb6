using System.ComponentModel;
using System.Diagnostics;

namespace FeatureMatrix.Cli.Browser;

/// <summary>The Chromium that is installed; the program brings none of its own.</summary>
/// <param name="Path">The program.</param>
internal sealed record Chromium(string Path)
{
    private const string Variable = "CHROMIUM";
    private static readonly string[] Names = ["chromium", "chromium-browser"];
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>What the variable CHROMIUM names, else what lies on the path; null for none.</summary>
    /// <exception cref="UsageException">The variable names a file that is not there.</exception>
    public static Chromium? Find()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
            return File.Exists(named) ? new Chromium(named) : throw new UsageException($"{Variable} names {named}, which does not exist. Nothing was written.");
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return folders.SelectMany(folder => Names.SelectMany(name => new[] { System.IO.Path.Combine(folder, name), System.IO.Path.Combine(folder, name + ".exe") })).FirstOrDefault(File.Exists) is { } found
            ? new Chromium(found)
            : null;
    }

    /// <summary>The same for an option that cannot do without.</summary>
    /// <exception cref="UsageException">There is none.</exception>
    public static Chromium FindFor(string option) =>
        Find() ?? throw new UsageException($"{option} needs Chromium, and none is on the path. Install it, name it in the variable {Variable}, or leave {option} out. Nothing was written.");

    /// <summary>Loads a page and writes the file that the options name.</summary>
    /// <param name="folder">A folder of ours, for its profile.</param>
    /// <param name="page">The page's file.</param>
    /// <param name="target">The file that it is to write.</param>
    /// <param name="what">What it makes, for messages.</param>
    /// <param name="options">What is to be done with the page.</param>
    /// <returns>The file's bytes.</returns>
    public byte[] Make(string folder, string page, string target, string what, params IReadOnlyList<string> options)
    {
        var start = new ProcessStartInfo(Path) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false };
        foreach (var argument in (string[])
            [
                "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                $"--user-data-dir={System.IO.Path.Combine(folder, "profile")}", .. options,
                .. Environment.IsPrivilegedProcess ? (string[])["--no-sandbox"] : [], new Uri(page).AbsoluteUri,
            ])
        {
            start.ArgumentList.Add(argument);
        }

        File.Delete(target);
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
                throw new UsageException($"Chromium did not make {what} within two minutes. Nothing was written.");
            }
        }
        catch (Win32Exception problem)
        {
            throw new UsageException($"{Path} cannot be run: {problem.Message}. Nothing was written.");
        }

        return File.Exists(target) ? File.ReadAllBytes(target) : throw new UsageException($"{Path} did not make {what}. Nothing was written.");
    }
}
