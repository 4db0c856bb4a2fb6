using System.Runtime.InteropServices;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>
/// What every engine starts from: which demands each route of each title makes, and what each demand costs on each setup. Nothing is shared
/// between titles or between setups here; whoever gains by sharing has to find it.
/// </summary>
internal sealed class Relations
{
    /// <summary>How the file begins.</summary>
    public static readonly byte[] Signature = "bulk0001"u8.ToArray();

    /// <summary>The number of setups.</summary>
    public required int Setups { get; init; }

    /// <summary>The number of demands.</summary>
    public required int Demands { get; init; }

    /// <summary>For each title its routes, preferred first: the numbers of their demands.</summary>
    public required IReadOnlyList<IReadOnlyList<int[]>> Titles { get; init; }

    /// <summary>
    /// For each title the ways its routes lead: the API for a native route, else the wrapper version, as numbers. Routes of different ways
    /// share few demands, which a hand-tuned layout of bits makes use of.
    /// </summary>
    public required IReadOnlyList<int[]> Ways { get; init; }

    /// <summary>The different tolls that occur; at most 256.</summary>
    public required IReadOnlyList<Toll> Tolls { get; init; }

    /// <summary>For each setup, one after the other, for each demand the number of its toll.</summary>
    public required byte[] TollOf { get; init; }

    /// <summary>What a demand costs on a setup.</summary>
    public Toll this[int setup, int demand] => Tolls[TollOf[(setup * Demands) + demand]];

    /// <summary>All that a compiled problem shares, written out again.</summary>
    public static Relations Of(BulkProblem problem, IReadOnlyList<int[]> ways)
    {
        var (setups, demands) = (problem.KindOfSetup.Length, problem.Worst.Length);
        var tolls = new Dictionary<Toll, byte>();
        var tollOf = new byte[setups * demands];
        for (var setup = 0; setup < setups; setup++)
        {
            var kind = problem.KindOfSetup[setup];
            for (var demand = 0; demand < demands; demand++)
            {
                var toll = new Toll(problem.Worst[demand][kind], problem.Best[demand][kind], (BulkMarks)problem.Marks[demand][kind]);
                if (!tolls.TryGetValue(toll, out var number))
                    tolls[toll] = number = checked((byte)tolls.Count);
                tollOf[(setup * demands) + demand] = number;
            }
        }

        return new Relations
        {
            Setups = setups,
            Demands = demands,
            Titles = problem.KindOfTitle.Select(kind => problem.TitleKinds[kind].Routes).ToList(),
            Ways = ways,
            Tolls = [.. tolls.Keys],
            TollOf = tollOf,
        };
    }

    /// <summary>Writes them to a file.</summary>
    public void Write(string path)
    {
        using var writer = new BinaryWriter(File.Create(path));
        writer.Write(Signature);
        foreach (var number in new[] { Setups, Demands, Titles.Count, Tolls.Count })
            writer.Write(number);
        foreach (var toll in Tolls)
        {
            writer.Write(toll.Worst);
            writer.Write(toll.Best);
            writer.Write((ushort)toll.Marks);
        }

        var numbers = new List<int>();
        for (var title = 0; title < Titles.Count; title++)
        {
            numbers.Add(Titles[title].Count);
            foreach (var (route, way) in Titles[title].Zip(Ways[title]))
            {
                numbers.Add(way);
                numbers.Add(route.Length);
                numbers.AddRange(route);
            }
        }

        writer.Write(numbers.Count);
        writer.Write(MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(numbers)));
        writer.Write(TollOf);
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static Relations Read(string path)
    {
        using var file = new RelationsFile(path);
        var titles = file.Titles().Select(title => RelationsFile.Routes(title.Span)).ToList();
        var tollOf = GC.AllocateUninitializedArray<byte>(file.Setups * file.Demands);
        for (var setup = 0; setup < file.Setups; setup++)
            file.ReadSetup(tollOf.AsSpan(setup * file.Demands, file.Demands));
        return new Relations
        {
            Setups = file.Setups,
            Demands = file.Demands,
            Titles = titles.ConvertAll(title => (IReadOnlyList<int[]>)title.Routes),
            Ways = titles.ConvertAll(title => title.Ways),
            Tolls = file.Tolls,
            TollOf = tollOf,
        };
    }
}
