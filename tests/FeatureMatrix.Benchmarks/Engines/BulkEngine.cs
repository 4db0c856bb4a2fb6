using System.Runtime.InteropServices;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>The product's bulk solver: finds kinds of titles and setups, solves kind against kind on all cores, and streams the rows.</summary>
internal static class BulkEngine
{
    /// <summary>Answers the relations.</summary>
    /// <param name="relations">The relations.</param>
    /// <param name="path">Where the answer goes.</param>
    /// <param name="share">False to leave out the search for kinds: every title and setup is its own.</param>
    public static void Answer(Relations relations, string path, bool share)
    {
        var (kindOfSetup, firsts) = SetupKinds(relations, share);
        var (kinds, titlesOfKind) = TitleKinds(relations, share);
        var problem = Problem(relations, firsts, kinds, kindOfSetup);
        using var answer = new AnswerFile(path, relations.Titles.Count, relations.Setups);
        var totals = new SetupCounts[firsts.Count];
        var next = -1;
        Parallel.For(0, Environment.ProcessorCount, _ =>
        {
            var solver = new BulkSolver(problem);
            var counts = new SetupCounts[firsts.Count];
            var row = new byte[relations.Setups];
            for (int kind; (kind = Interlocked.Increment(ref next)) < kinds.Count;)
            {
                solver.Solve(kinds[kind]);
                Count(solver, counts, titlesOfKind[kind].Count);
                for (var setup = 0; setup < row.Length; setup++)
                    row[setup] = (byte)solver.Route[kindOfSetup[setup]];
                foreach (var title in titlesOfKind[kind])
                    answer.WriteTitle(title, row);
            }

            lock (totals)
                Merge(counts, totals);
        });
        answer.WriteCounts(kindOfSetup.Select(kind => totals[kind]).ToList());
        Console.WriteLine($"{kinds.Count} kinds of titles, {firsts.Count} kinds of setups");
    }

    private static void Count(BulkSolver solver, SetupCounts[] counts, int titles)
    {
        for (var kind = 0; kind < counts.Length; kind++)
            counts[kind].Add(solver.Worst[kind], solver.Best[kind], titles);
    }

    private static void Merge(SetupCounts[] counts, SetupCounts[] totals)
    {
        for (var i = 0; i < counts.Length; i++)
        {
            var (one, other) = (counts[i], totals[i]);
            totals[i] = new SetupCounts(
                one.RunAtWorst + other.RunAtWorst, one.RunAtBest + other.RunAtBest, one.CompleteAtWorst + other.CompleteAtWorst,
                one.CompleteAtBest + other.CompleteAtBest, one.WorstCodes + other.WorstCodes, one.BestCodes + other.BestCodes);
        }
    }

    private static (int[] KindOfSetup, List<int> Firsts) SetupKinds(Relations relations, bool share)
    {
        var kindOfSetup = new int[relations.Setups];
        var firsts = new List<int>();
        var known = new Dictionary<Row, int>();
        for (var setup = 0; setup < relations.Setups; setup++)
        {
            var row = new Row(relations.TollOf.AsMemory(setup * relations.Demands, relations.Demands));
            if (!share || !known.TryGetValue(row, out kindOfSetup[setup]))
            {
                kindOfSetup[setup] = firsts.Count;
                firsts.Add(setup);
                if (share)
                    known[row] = kindOfSetup[setup];
            }
        }

        return (kindOfSetup, firsts);
    }

    private static (List<TitleKind> Kinds, List<List<int>> Titles) TitleKinds(Relations relations, bool share)
    {
        var kinds = new List<TitleKind>();
        var titles = new List<List<int>>();
        var known = new Dictionary<Row, int>();
        for (var title = 0; title < relations.Titles.Count; title++)
        {
            var routes = relations.Titles[title];
            var row = share ? new Row(MemoryMarshal.AsBytes<int>(routes.SelectMany(route => route.Prepend(-1)).ToArray()).ToArray()) : default;
            if (share && known.TryGetValue(row, out var kind))
            {
                titles[kind].Add(title);
                continue;
            }

            if (share)
                known[row] = kinds.Count;
            kinds.Add(new TitleKind(routes, false, BulkMarks.None));
            titles.Add([title]);
        }

        return (kinds, titles);
    }

    private static BulkProblem Problem(Relations relations, List<int> firsts, List<TitleKind> kinds, int[] kindOfSetup)
    {
        ushort[][] Rows(Func<Toll, ushort> part)
        {
            var codes = relations.Tolls.Select(part).ToArray();
            var rows = new ushort[relations.Demands][];
            for (var demand = 0; demand < rows.Length; demand++)
                rows[demand] = new ushort[BulkProblem.RowLengthFor(firsts.Count)];
            for (var kind = 0; kind < firsts.Count; kind++)
            {
                var tolls = relations.TollOf.AsSpan(firsts[kind] * relations.Demands, relations.Demands);
                for (var demand = 0; demand < tolls.Length; demand++)
                    rows[demand][kind] = codes[tolls[demand]];
            }

            return rows;
        }

        return new BulkProblem
        {
            Worst = Rows(toll => toll.Worst),
            Best = Rows(toll => toll.Best),
            Marks = Rows(toll => (ushort)toll.Marks),
            TitleKinds = kinds,
            KindOfTitle = [],
            KindOfSetup = kindOfSetup,
            SetupKinds = firsts.Count,
        };
    }

    /// <summary>Bytes that are compared by what they hold.</summary>
    private readonly record struct Row(ReadOnlyMemory<byte> Bytes)
    {
        public bool Equals(Row other) => Bytes.Span.SequenceEqual(other.Bytes.Span);

        public override int GetHashCode()
        {
            var hash = default(HashCode);
            hash.AddBytes(Bytes.Span);
            return hash.ToHashCode();
        }
    }
}
