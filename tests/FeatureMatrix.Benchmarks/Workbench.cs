using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using FeatureMatrix.Benchmarks.Collections;
using FeatureMatrix.Benchmarks.Engines;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks;

/// <summary>The steps before and beside the engines.</summary>
internal static class Workbench
{
    private const int Seed = 1997;

    /// <summary>Where the sources lie.</summary>
    public static string RepositoryRoot { get; } = typeof(Workbench).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(one => one.Key == "RepositoryRoot").Value!;

    private static string VocabularyFolder { get; } = Path.Combine(RepositoryRoot, "data", "vocabulary");

    /// <summary>Writes a generated collection into a folder.</summary>
    public static void Generate(CollectionSize size, string folder, bool allDifferent)
    {
        var features = CollectionLoader.Load(CollectionFolder.Read(VocabularyFolder, null).Files).Catalog!.Features;
        var usable = features.Where(feature => !feature.IsApi && feature.Implies.Count == 0 && !feature.Id.StartsWith('v')).ToList();
        foreach (var (name, text) in CollectionGenerator.Generate(size, usable, Seed, allDifferent))
        {
            var path = Path.Combine(folder, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
    }

    /// <summary>Loads a collection and says how long each part took.</summary>
    public static Catalog Load(string folder)
    {
        var watch = Stopwatch.StartNew();
        var texts = CollectionFolder.Read(folder, VocabularyFolder);
        Say("read", watch);
        var result = CollectionLoader.Load(texts.Files, texts.Faults);
        foreach (var fault in result.Faults.Where(fault => fault.Severity == Severity.Error).Take(10))
            Console.Error.WriteLine(fault);
        Say("load", watch);
        var catalog = result.Catalog ?? throw new InvalidDataException($"{folder} has faults");
        Console.WriteLine($"{catalog.Titles.Count} titles, {catalog.Cards.Count} cards, {texts.Files.Sum(file => (long)file.Text.Length)} characters");
        return catalog;
    }

    /// <summary>Reads the same texts through the YAML parser alone: every event, nothing made of it.</summary>
    public static void Parse(string folder)
    {
        var events = 0;
        foreach (var file in CollectionFolder.Read(folder, VocabularyFolder).Files.Where(file => file.Path.EndsWith(".yaml", StringComparison.Ordinal)))
        {
            var parser = new YamlDotNet.Core.Parser(new StringReader(file.Text));
            while (parser.MoveNext())
                events++;
        }

        Console.WriteLine($"{events} events");
    }

    /// <summary>Ranks every card for a library of all titles: each with each, what is open settled alike for both.</summary>
    public static void Decide(string folder)
    {
        var catalog = Load(folder);
        var watch = Stopwatch.StartNew();
        var weighing = new Weighing(new Decisions(catalog, null));
        var ranked = RankingReport.Of(weighing).Ranked;
        Say("rank", watch);
        Console.WriteLine($"{catalog.Cards.Count * catalog.Titles.Count} cells, {ranked.Count * (ranked.Count - 1) / 2} pairs: {ranked.Sum(card => card.UndecidedWith.Count) / 2} undecided, {ranked.Sum(card => card.PerhapsDecided.Count) / 2} of them not shown to be, {ranked.Sum(card => card.EqualTo.Count) / 2} equal; {ranked.Count(card => card.ScoreIsExact)} scores exact");
    }

    /// <summary>Turns a collection into relations: everything that the rules say of single demands.</summary>
    public static void Compile(CollectionSize size, string folder, string path)
    {
        var catalog = Load(folder);
        var watch = Stopwatch.StartNew();
        var resolver = new Resolver(catalog);
        var setups = catalog.Cards.SelectMany(resolver.SetupsOf).Where(setup => setup.Install == Install.Listed).Take(size.Setups).ToList();
        var problem = BulkCompiler.Compile(catalog, catalog.Titles, setups, _ => Terms.Default);
        Say("compile", watch);
        var marked = problem.Marks.Sum(row => row.Count(marks => (marks & (ushort)BulkMarks.Entangled) != 0));
        Console.WriteLine($"{setups.Count} setups, {problem.Worst.Length} demands, {problem.TitleKinds.Count} kinds of titles, {problem.SetupKinds} kinds of setups, {marked} entangled tolls");
        Relations.Of(problem, Ways(catalog)).Write(path);
    }

    private static List<int[]> Ways(Catalog catalog)
    {
        var numbers = new Dictionary<object, int>();
        var wrappers = Resolver.WrappersByApi(catalog);
        return catalog.Titles.Select(title => BulkCompiler.RoutesOf(title, wrappers, Policy.Default).Select(route =>
        {
            object way = (object?)route.Wrapper ?? route.Renderer.Api!.Value.Feature;
            if (!numbers.TryGetValue(way, out var number))
                numbers[way] = number = numbers.Count;
            return number;
        }).ToArray()).ToList();
    }

    /// <summary>Writes as many bytes as an answer has, and nothing else: the floor.</summary>
    public static void WriteBytes(long count, string path)
    {
        var block = new byte[1 << 20];
        using var file = File.OpenHandle(path, FileMode.Create, FileAccess.Write);
        for (long at = 0; at < count; at += block.Length)
            RandomAccess.Write(file, block.AsSpan(0, (int)Math.Min(block.Length, count - at)), at);
    }

    private static void Say(string what, Stopwatch watch)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {watch.Elapsed.TotalSeconds:0.000} s"));
        watch.Restart();
    }
}
