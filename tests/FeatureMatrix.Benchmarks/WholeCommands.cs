using System.Diagnostics;
using System.Globalization;
using FeatureMatrix.Benchmarks.Collections;

namespace FeatureMatrix.Benchmarks;

/// <summary>
/// Times whole commands and the steps beside the engines, each as a process of its own, and prints the rows of the second table of RESULTS.md.
/// The time of processors is that of the process and everything it started, as Linux counts it.
/// </summary>
internal sealed class WholeCommands(string folder, string program)
{
    private readonly string _demo = Path.Combine(Workbench.RepositoryRoot, "data", "demo");
    private readonly string _edition = Path.Combine(folder, "edition");

    private sealed record Spent(double Processor, double Whole);

    /// <summary>All of them, smallest first. FOLDER keeps generated collections; PROGRAM is featmatrix.dll of a release build.</summary>
    public void Run()
    {
        Console.WriteLine("| what | processors | whole | ratio |");
        Console.WriteLine("| --- | --- | --- | --- |");
        var hello = Shortest(5, "dotnet", Hello());
        Print("hello", hello, null);
        Print("explain on the demo, against hello", Shortest(5, "dotnet", program, "explain", "ferrymen", "kite-2", "--collection", _demo), hello);
        Once("dotnet", program, "publish", _demo, "--out", _edition);
        Print("publish of the demo, pictures cached", Shortest(3, "dotnet", program, "publish", _demo, "--out", _edition), null);
        foreach (var size in new[] { CollectionSize.L, CollectionSize.Xl })
        {
            var parser = Step(3, "parse", Generated(size));
            Print($"YAML of {size.Name}, the parser alone", parser, null);
            Print($"YAML of {size.Name} loaded, against the parser", Step(3, "load", Generated(size)), parser);
        }

        Print("rank of 60 cards by 2,000 titles, with loading", Step(3, "decide", Generated(CollectionSize.D)), null);
        Print("workbook of 5,000 × 200", Step(3, "workbook", "W", Path.Combine(folder, "large.xlsx")), null);
        AllDifferent();
        Say("preview", program, _demo, "titles/causeway.yaml", "titles/glass-estuary.html", "20");
        Say("preview", program, _demo, "titles/causeway.yaml", "cards/kite-2.html", "20");
        var m = Generated(CollectionSize.M);
        Say("preview", program, m, Path.GetRelativePath(m, Directory.EnumerateFiles(Path.Combine(m, "titles")).Order(StringComparer.Ordinal).First()), "titles/title-00000.html", "12");
        Say("site", _demo, _edition);
        Say("site", m, _edition);
    }

    /// <summary>Sharing where there is nothing to share.</summary>
    private void AllDifferent()
    {
        var (collection, relations, answer) = (Path.Combine(folder, "L-different"), Path.Combine(folder, "L-different.rel"), Path.Combine(folder, "answer"));
        if (!File.Exists(relations))
        {
            Step(1, "generate", "L", collection, "--all-different");
            Step(1, "compile", "L", collection, relations);
        }

        var unshared = Step(5, "solve", "bulk-unshared", relations, answer);
        Print("L all different, without looking for kinds", unshared, null);
        Print("L all different, against that", Step(5, "solve", "bulk", relations, answer), unshared);
    }

    private string Generated(CollectionSize size)
    {
        var path = Path.Combine(folder, size.Name);
        if (!Directory.Exists(path))
            Step(1, "generate", size.Name, path);
        return path;
    }

    /// <summary>The console program that does nothing but greet, built for release.</summary>
    private string Hello()
    {
        var project = Directory.CreateDirectory(Path.Combine(folder, "hello")).FullName;
        File.WriteAllText(Path.Combine(project, "Program.cs"), "Console.WriteLine(\"Hello, World!\");\n");
        File.WriteAllText(
            Path.Combine(project, "hello.csproj"),
            "<Project Sdk=\"Microsoft.NET.Sdk\"><PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><ImplicitUsings>enable</ImplicitUsings></PropertyGroup></Project>\n");
        Once("dotnet", "build", project, "-c", "Release", "-v", "quiet");
        return Path.Combine(project, "bin", "Release", "net10.0", "hello.dll");
    }

    private static Spent Step(int repeats, params string[] args) => Shortest(repeats, "dotnet", [typeof(WholeCommands).Assembly.Location, .. args]);

    /// <summary>A step that prints what it found.</summary>
    private static void Say(params string[] args) => Once("dotnet", [typeof(WholeCommands).Assembly.Location, .. args], quiet: false);

    private static Spent Shortest(int repeats, string command, params string[] args) => Enumerable.Range(0, repeats).Select(_ => Once(command, args)).MinBy(spent => spent.Processor)!;

    private static Spent Once(string command, params string[] args) => Once(command, args, quiet: true);

    private static Spent Once(string command, string[] args, bool quiet)
    {
        var (before, watch) = (OfChildren(), Stopwatch.StartNew());
        using var process = Process.Start(new ProcessStartInfo(command, args) { RedirectStandardOutput = quiet, RedirectStandardError = quiet, UseShellExecute = false })!;
        if (quiet)
        {
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            process.StandardOutput.ReadToEnd();
        }

        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{command} {string.Join(' ', args)} ended with {process.ExitCode}");
        return new Spent(OfChildren() - before, watch.Elapsed.TotalSeconds);
    }

    /// <summary>What the processors worked for children that have ended: fields 16 and 17 of proc(5) stat, in hundredths of a second.</summary>
    private static double OfChildren()
    {
        var fields = File.ReadAllText("/proc/self/stat").Split(") ")[^1].Split(' ');
        return (double.Parse(fields[13], CultureInfo.InvariantCulture) + double.Parse(fields[14], CultureInfo.InvariantCulture)) / 100;
    }

    private static void Print(string what, Spent spent, Spent? against) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"| {what} | {spent.Processor:0.00} s | {spent.Whole:0.00} s | {(against is null ? "" : $"{spent.Processor / against.Processor:0.0}")} |"));
}
