using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using FeatureMatrix.Benchmarks.Collections;

namespace FeatureMatrix.Benchmarks;

/// <summary>
/// Runs every engine on every size, each as a process of its own, and prints a table: the shortest of several whole processes, what the
/// processors worked meanwhile, peak memory, and how many times as long as ours. Stops where two answers differ.
/// </summary>
internal static partial class Race
{
    /// <summary>The engines, and the largest size each is asked to finish; larger ones are worked out by hand from the cells.</summary>
    private static readonly (string Engine, string Largest)[] Engines =
        [("bulk", "XL"), ("bulk-unshared", "XL"), ("duckdb-masks", "L"), ("duckdb-joins", "L"), ("linq", "L"), ("sqlite", "M")];

    private static readonly string[] Order = ["S", "M", "L", "XL"];

    private sealed record Timing(double Seconds, double Processor, int Megabytes);

    public static void Run(string folder, int repeats, IReadOnlyList<CollectionSize> sizes)
    {
        Console.WriteLine("| size | step | whole process | processors | peak | times ours |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
        foreach (var size in sizes)
        {
            var (collection, relations) = (Path.Combine(folder, size.Name), Path.Combine(folder, size.Name + ".rel"));
            if (!Directory.Exists(collection))
                Time(1, "generate", size.Name, collection);
            Print(size, "load YAML", Time(1, "load", collection), null);
            Print(size, "the YAML parser alone", Time(1, "parse", collection), null);
            if (!File.Exists(relations))
                Print(size, "load and compile", Time(1, "compile", size.Name, collection, relations), null);
            OneSize(folder, size, relations, repeats);
        }
    }

    private static void OneSize(string folder, CollectionSize size, string relations, int repeats)
    {
        Timing? ours = null;
        string? expected = null;
        var answer = Path.Combine(folder, "answer");
        foreach (var (engine, largest) in Engines.Where(one => Array.IndexOf(Order, size.Name) <= Array.IndexOf(Order, one.Largest)))
        {
            var timing = Time(engine.StartsWith("bulk", StringComparison.Ordinal) || size.Name is "S" or "M" ? repeats : 1, "solve", engine, relations, answer);
            ours ??= timing;
            Print(size, engine, timing, ours);
            using var file = File.OpenRead(answer);
            var hash = Convert.ToHexString(SHA256.HashData(file));
            expected ??= hash;
            if (hash != expected)
                throw new InvalidOperationException($"{engine} answers {size.Name} otherwise than ours");
        }

        var bytes = new FileInfo(answer).Length.ToString(CultureInfo.InvariantCulture);
        Print(size, $"write the same {bytes} bytes", Time(repeats, "write", bytes, answer), ours);
    }

    private static void Print(CollectionSize size, string step, Timing timing, Timing? ours) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"| {size.Name} | {step} | {timing.Seconds:0.000} s | {timing.Processor:0.000} s | {timing.Megabytes} MB | {(ours is null ? "" : (timing.Seconds / ours.Seconds).ToString("0.0", CultureInfo.InvariantCulture))} |"));

    private static Timing Time(int repeats, params string[] args) => Enumerable.Range(0, repeats).Select(_ => Once(args)).MinBy(timing => timing.Seconds)!;

    private static Timing Once(string[] args)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true, UseShellExecute = false };
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet")
            start.ArgumentList.Add(typeof(Race).Assembly.Location);
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var seconds = watch.Elapsed.TotalSeconds;
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{string.Join(' ', args)} failed");
        var numbers = Numbers().Match(output);
        return new Timing(seconds, double.Parse(numbers.Groups["processor"].Value, CultureInfo.InvariantCulture), int.Parse(numbers.Groups["peak"].Value, CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"processor (?<processor>[0-9.]+) s, peak (?<peak>[0-9]+) MB\s*$", RegexOptions.None, 1000)]
    private static partial Regex Numbers();
}
