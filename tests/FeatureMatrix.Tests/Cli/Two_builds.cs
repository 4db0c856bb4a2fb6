using System.Diagnostics;
using System.Security.Cryptography;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>
/// One collection published by two processes that have nothing else in common: another day, time zone, culture, folder, order of
/// files on the disk, line ends. The site, the workbook, the tables and the pictures are the same bytes.
/// </summary>
public sealed class Two_builds : IDisposable
{
    private const string Program = "featmatrix.dll";

    private readonly string _folder = Directory.CreateTempSubdirectory("builds").FullName;

    private static readonly (string Name, string Text)[] Files =
    [
        ("collection.yaml", "collection: {name: Zwölf Karten, note: 'Ein *Satz*.', currency: EUR}\nsources:\n  leaflet: {text: A leaflet, grade: documented}\n"),
        ("chips.yaml", "chips:\n  sand: {name: İzmir sand, source: leaflet, supply: {fog-table: yes, tex-pal8: no}}\n  silt: {name: ılık silt, source: leaflet, supply: {fog-table: no}}\n"),
        ("cards/dune.yaml", "cards:\n  dune: {name: Dune, chip: sand, memory: {unified: 16 MiB}, source: leaflet, prices: [{sold: 18.50 EUR, date: 2026-02-11, condition: tested}]}\n"),
        ("cards/delta.yaml", "cards:\n  delta: {name: Delta, chip: silt, memory: {unified: 4.5 MiB}, source: leaflet}\n"),
        ("drivers.yaml", "drivers:\n  sand-9x: {name: Sand drivers, os: [windows-98se], lists: [dune, delta], offers: {direct3d: \"7\"}, source: leaflet, versions: [{version: \"1.0\", released: 1999-03-01}]}\n"),
        ("titles.yaml", "titles:\n  low-mist: {name: Low Mist, os: [windows-98se], source: leaflet, renderers: {direct3d: {api: direct3d 6, needs: {severe: [fog-table], cosmetic: [tex-pal8]}}}}\n"),
        ("runs/mist.csv", "title,scene,renderer,wrapper,card,driver,os,width,height,depth,run,fps\n" + string.Concat(from card in new[] { "dune", "delta" } from width in new[] { 512, 640, 800, 1024 } from run in new[] { 1, 2, 3 }
            select $"low-mist,ferry,direct3d,none,{card},sand-9x 1.0,windows-98se,{width},{width * 3 / 4},16,{run},{(card == "dune" ? 70 : 44) - (width / 40) + run}.5\n")),
    ];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void On_other_days_in_other_places_give_the_same_bytes()
    {
        var first = Publish("a", Files, lineEnd: "\n", [("LANG", "C"), ("TZ", "UTC")], day: null);
        var second = Publish(
            Path.Combine("elsewhere ünï", "b"), Files.Reverse(), lineEnd: "\r\n",
            [("LANG", "tr_TR.UTF-8"), ("LC_ALL", "tr_TR.UTF-8"), ("TZ", "Pacific/Kiritimati"), ("HOSTNAME", "other"), ("USER", "other")], day: "2031-02-03 04:05:06");
        Assert.All(["index.html", "edition.xlsx", "coverage/low-mist/dune.html", "compare/delta/dune.html", "tables/bench.js"], name => Assert.Contains(name, first.Select(file => file.Name)));
        Assert.Contains(first, file => file.Name.EndsWith(".png", StringComparison.Ordinal));
        Assert.Equal(first.Select(file => file.Name), second.Select(file => file.Name));
        Assert.Empty(first.Zip(second).Where(pair => pair.First.Digest != pair.Second.Digest).Select(pair => pair.First.Name));
    }

    private List<(string Name, string Digest)> Publish(string place, IEnumerable<(string Name, string Text)> files, string lineEnd, (string, string)[] environment, string? day)
    {
        var data = Path.Combine(_folder, place, "data");
        foreach (var (name, text) in files)
        {
            var path = Path.Combine(data, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text.Replace("\n", lineEnd, StringComparison.Ordinal));
        }

        var output = Path.Combine(_folder, place, "out");
        // Illustrations are kept between runs in the user's own folder: with a folder of its own each build draws them.
        Run(Path.Combine(_folder, place), [.. environment, ("XDG_DATA_HOME", Path.Combine(_folder, place, "own"))], day, "publish", data, "--out", output);
        var tables = Run(data, environment, day, "coverage", "--collection", data) + Run(data, environment, day, "check", "--collection", data).Replace(data, "", StringComparison.Ordinal);
        return
        [
            .. Directory.EnumerateFiles(output, "*", SearchOption.AllDirectories)
                .Select(file => (Path.GetRelativePath(output, file), Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file))))).OrderBy(file => file.Item1, StringComparer.Ordinal),
            ("what coverage and check print", tables),
        ];
    }

    private static string Run(string folder, (string Name, string Value)[] environment, string? day, params string[] args)
    {
        string[] command = ["dotnet", Path.Combine(AppContext.BaseDirectory, Program), .. args];
        if (day is not null)
            command = [External.Command("faketime", "faketime"), day, .. command];
        var start = new ProcessStartInfo(command[0], command[1..]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        var results = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{string.Join(' ', command)} gave {process.ExitCode}: {messages.Result}{results}");
        return results;
    }
}
