using System.Runtime.InteropServices;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>
/// The product's bulk solver: finds kinds of titles and setups while it reads, holds each kind once, solves kind against kind on all
/// processors, and writes the rows of many titles at a time.
/// </summary>
internal static class BulkEngine
{
    private const int BlockBytes = 1 << 20;

    /// <summary>Answers relations.</summary>
    /// <param name="relations">The file of relations.</param>
    /// <param name="path">Where the answer goes.</param>
    /// <param name="share">False to leave out the search for kinds: every title and setup is its own.</param>
    public static void Answer(string relations, string path, bool share)
    {
        using var file = new RelationsFile(relations);
        var (kinds, kindOfTitle) = TitleKinds(file, share);
        var (setups, kindOfSetup) = SetupKinds(file, share);
        var problem = Problem(file, setups, kinds, kindOfTitle, kindOfSetup);
        using var answer = new AnswerFile(path, kindOfTitle.Length, kindOfSetup.Length);
        var rows = new byte[share ? kinds.Count : 0][];
        answer.WriteCounts(Solve(problem, share ? (kind, row) => rows[kind] = row : (title, row) => answer.WriteTitles(title, row)));
        if (share)
            WriteBlocks(answer, rows, kindOfTitle, kindOfSetup.Length);
        Console.WriteLine($"{kinds.Count} kinds of titles, {setups.Count} kinds of setups");
    }

    /// <summary>Solves every kind of title, hands over its best routes on all setups, and counts.</summary>
    private static List<SetupCounts> Solve(BulkProblem problem, Action<int, byte[]> take)
    {
        var titles = new int[problem.TitleKinds.Count];
        foreach (var kind in problem.KindOfTitle)
            titles[kind]++;
        var totals = new SetupCounts[problem.SetupKinds];
        var next = -1;
        Parallel.For(0, Environment.ProcessorCount, _ =>
        {
            var solver = new BulkSolver(problem);
            var counts = new SetupCounts[totals.Length];
            for (int kind; (kind = Interlocked.Increment(ref next)) < titles.Length;)
            {
                solver.Solve(problem.TitleKinds[kind]);
                for (var i = 0; i < counts.Length; i++)
                    counts[i].Add(solver.Worst[i], solver.Best[i], titles[kind]);
                var row = new byte[problem.KindOfSetup.Length];
                for (var setup = 0; setup < row.Length; setup++)
                    row[setup] = (byte)solver.Route[problem.KindOfSetup[setup]];
                take(kind, row);
            }

            lock (totals)
            {
                for (var i = 0; i < counts.Length; i++)
                    totals[i] = totals[i].With(counts[i]);
            }
        });
        return problem.KindOfSetup.Select(kind => totals[kind]).ToList();
    }

    private static void WriteBlocks(AnswerFile answer, byte[][] rows, int[] kindOfTitle, int setups)
    {
        var titles = Math.Max(1, BlockBytes / setups);
        var block = new byte[titles * setups];
        for (var first = 0; first < kindOfTitle.Length; first += titles)
        {
            var count = Math.Min(titles, kindOfTitle.Length - first);
            for (var i = 0; i < count; i++)
                rows[kindOfTitle[first + i]].CopyTo(block, i * setups);
            answer.WriteTitles(first, block.AsSpan(0, count * setups));
        }
    }

    private static (List<byte[]> Kinds, int[] KindOfSetup) SetupKinds(RelationsFile file, bool share)
    {
        var kindOfSetup = new int[file.Setups];
        var kinds = new List<byte[]>();
        var known = new Dictionary<Row, int>();
        var row = new byte[file.Demands];
        for (var setup = 0; setup < kindOfSetup.Length; setup++)
        {
            file.ReadSetup(row);
            if (share && known.TryGetValue(new Row(row), out kindOfSetup[setup]))
                continue;
            kindOfSetup[setup] = kinds.Count;
            if (share)
                known[new Row(row)] = kinds.Count;
            kinds.Add(row);
            row = new byte[file.Demands];
        }

        return (kinds, kindOfSetup);
    }

    private static (List<TitleKind> Kinds, int[] KindOfTitle) TitleKinds(RelationsFile file, bool share)
    {
        var kinds = new List<TitleKind>();
        var kindOfTitle = new List<int>();
        var known = new Dictionary<Row, int>();
        foreach (var numbers in file.Titles())
        {
            var kind = kinds.Count;
            if (!share || known.TryAdd(new Row(numbers), kind))
                kinds.Add(new TitleKind(RelationsFile.Routes(numbers.Span).Routes, false, BulkMarks.None));
            else
                kind = known[new Row(numbers)];
            kindOfTitle.Add(kind);
        }

        return (kinds, [.. kindOfTitle]);
    }

    /// <summary>The problem; demands that cost the same on every kind of setup share their rows.</summary>
    private static BulkProblem Problem(RelationsFile file, List<byte[]> setups, List<TitleKind> kinds, int[] kindOfTitle, int[] kindOfSetup)
    {
        var known = new Dictionary<Row, (ushort[] Worst, ushort[] Best, ushort[] Marks)>();
        var rows = new (ushort[] Worst, ushort[] Best, ushort[] Marks)[file.Demands];
        var column = new byte[setups.Count];
        for (var demand = 0; demand < rows.Length; demand++)
        {
            for (var kind = 0; kind < column.Length; kind++)
                column[kind] = setups[kind][demand];
            if (!known.TryGetValue(new Row(column), out rows[demand]))
                known[new Row(column.ToArray())] = rows[demand] = (Codes(toll => toll.Worst), Codes(toll => toll.Best), Codes(toll => (ushort)toll.Marks));
        }

        return new BulkProblem
        {
            Worst = Array.ConvertAll(rows, row => row.Worst),
            Best = Array.ConvertAll(rows, row => row.Best),
            Marks = Array.ConvertAll(rows, row => row.Marks),
            TitleKinds = kinds,
            KindOfTitle = kindOfTitle,
            KindOfSetup = kindOfSetup,
            SetupKinds = setups.Count,
        };

        ushort[] Codes(Func<Toll, ushort> part)
        {
            var ofToll = file.Tolls.Select(part).ToArray();
            var codes = new ushort[BulkProblem.RowLengthFor(column.Length)];
            for (var kind = 0; kind < column.Length; kind++)
                codes[kind] = ofToll[column[kind]];
            return codes;
        }
    }

    /// <summary>Bytes or numbers that are compared by what they hold.</summary>
    private readonly struct Row : IEquatable<Row>
    {
        private readonly ReadOnlyMemory<byte> _bytes;
        private readonly ReadOnlyMemory<int> _numbers;

        public Row(byte[] bytes) => _bytes = bytes;

        public Row(ReadOnlyMemory<int> numbers) => _numbers = numbers;

        private ReadOnlySpan<byte> Bytes => _numbers.IsEmpty ? _bytes.Span : MemoryMarshal.AsBytes(_numbers.Span);

        public bool Equals(Row other) => Bytes.SequenceEqual(other.Bytes);

        public override bool Equals(object? obj) => obj is Row other && Equals(other);

        public override int GetHashCode()
        {
            var hash = default(HashCode);
            hash.AddBytes(Bytes);
            return hash.ToHashCode();
        }
    }
}
