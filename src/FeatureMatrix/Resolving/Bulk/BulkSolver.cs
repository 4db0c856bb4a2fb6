using System.Numerics;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// Ends and best routes of one kind of title on every kind of setup. A route's outcome at either end is the sum of what its demands
/// cost there; the cell's is the smallest of its routes'. Sums and comparisons run over many kinds of setups at a time.
/// </summary>
/// <remarks>
/// Why sums are enough (rule R13): where no cell is marked, "every unknown at its most hopeful" and "every unknown missing" are two
/// completions, each demand of each route is at its best in the one and at its worst in the other, and so is the best route among them.
/// </remarks>
public sealed class BulkSolver
{
    /// <summary>The place of the best route where none runs.</summary>
    public const ushort NoRoute = 0xFF;

    private readonly BulkProblem _problem;
    private readonly ushort[] _rank;
    private readonly ushort[] _rankAtBest;

    /// <summary>Prepares buffers; one solver for each thread.</summary>
    public BulkSolver(BulkProblem problem)
    {
        _problem = problem;
        var length = problem.RowLength;
        (Worst, Best, Route, Marks) = (new ushort[length], new ushort[length], new ushort[length], new ushort[length]);
        (_rank, _rankAtBest, BestAtWorst) = (new ushort[length], new ushort[length], new ushort[length]);
    }

    /// <summary>The worst end on each kind of setup, as <see cref="OutcomeCode.AtWorst"/>.</summary>
    public ushort[] Worst { get; }

    /// <summary>The best end on each kind of setup, as <see cref="OutcomeCode.AtBest"/>.</summary>
    public ushort[] Best { get; }

    /// <summary>
    /// The most hopeful end of the route that is chosen there, as <see cref="OutcomeCode.AtWorst"/>; only where the kind may lose something
    /// that nobody graded.
    /// </summary>
    public ushort[] BestAtWorst { get; }

    /// <summary>
    /// The place of the route that is best in its worst completion, then in its best, then by preference (rule R16);
    /// <see cref="NoRoute"/> where none may run.
    /// </summary>
    public ushort[] Route { get; }

    /// <summary>Not zero where only the resolver decides; the ends are sound bounds there.</summary>
    public ushort[] Marks { get; }

    /// <summary>Works out one kind of title. The answers stand until the next call.</summary>
    public void Solve(TitleKind kind)
    {
        Array.Fill(Worst, OutcomeCode.DoesNotRun);
        Array.Fill(Best, OutcomeCode.DoesNotRun);
        Array.Fill(Route, NoRoute);
        Array.Clear(Marks);
        Array.Fill(_rank, ushort.MaxValue);
        Array.Fill(_rankAtBest, ushort.MaxValue);
        Array.Fill(BestAtWorst, OutcomeCode.DoesNotRun);
        for (var place = 0; place < kind.Routes.Count; place++)
            Add(kind.Routes[place], (ushort)place, new Vector<ushort>((ushort)kind.Deciding), kind.HasUngraded);
        if (kind.HasUngraded)
            MarkDoubtfulBest();
    }

    private void Add(int[] demands, ushort place, Vector<ushort> deciding, bool hasUngraded)
    {
        var stops = new Vector<ushort>(OutcomeCode.DoesNotRun);
        for (var at = 0; at < Worst.Length; at += Vector<ushort>.Count)
        {
            var (worst, best, marks) = (Vector<ushort>.Zero, Vector<ushort>.Zero, Vector<ushort>.Zero);
            foreach (var demand in demands)
            {
                worst = Vector.AddSaturate(worst, new Vector<ushort>(_problem.Worst[demand], at));
                best = Vector.AddSaturate(best, new Vector<ushort>(_problem.Best[demand], at));
                marks |= new Vector<ushort>(_problem.Marks[demand], at);
            }

            var runs = Vector.LessThan(best, stops);
            Lower(Worst, at, worst);
            Lower(Best, at, best);
            Store(Load(Marks, at) | (marks & deciding & runs), Marks, at);
            Prefer(worst, best, marks, runs, place, at);
            if (hasUngraded)
                Lower(BestAtWorst, at, Vector.ConditionalSelect(runs, Reordered(best), stops));
        }
    }

    /// <summary>Takes the route where it ranks before those so far; they are preferred to it where it ranks with them.</summary>
    private void Prefer(Vector<ushort> worst, Vector<ushort> best, Vector<ushort> marks, Vector<ushort> runs, ushort place, int at)
    {
        // The last count of a code only breaks ties between outcomes; routes are compared without it, and textures not reduced go first.
        var rank = Vector.ShiftRightLogical(Vector.Min(worst, new Vector<ushort>(OutcomeCode.DoesNotRun)), 5);
        var reduced = Vector.ShiftRightLogical(marks & new Vector<ushort>((ushort)BulkMarks.Reduced), 2);
        var rankAtBest = Vector.ShiftLeft(Vector.ShiftRightLogical(best, 5), 1) | reduced;
        var first = Load(_rank, at);
        var second = Load(_rankAtBest, at);
        var better = runs & (Vector.LessThan(rank, first) | (Vector.Equals(rank, first) & Vector.LessThan(rankAtBest, second)));
        Store(Vector.ConditionalSelect(better, rank, first), _rank, at);
        Store(Vector.ConditionalSelect(better, rankAtBest, second), _rankAtBest, at);
        Store(Vector.ConditionalSelect(better, new Vector<ushort>(place), Load(Route, at)), Route, at);
    }

    /// <summary>
    /// Routes are chosen between with ungraded losses as severe, the best end counts them as cosmetic. Where that makes a difference another
    /// completion may have a better end than the most hopeful one: marked.
    /// </summary>
    private void MarkDoubtfulBest()
    {
        for (var at = 0; at < Worst.Length; at += Vector<ushort>.Count)
        {
            var best = Load(Best, at);
            var differs = Vector.LessThan(best, new Vector<ushort>(OutcomeCode.DoesNotRun)) & ~Vector.Equals(Reordered(best), Load(BestAtWorst, at));
            Store(Load(Marks, at) | (differs & new Vector<ushort>((ushort)BulkMarks.Entangled)), Marks, at);
        }
    }

    /// <summary>Codes ordered at best as codes ordered at worst; of what runs.</summary>
    private static Vector<ushort> Reordered(Vector<ushort> best)
    {
        var count = new Vector<ushort>(OutcomeCode.MostLosses);
        var severe = Vector.ShiftRightLogical(best, 10);
        var light = Vector.ShiftRightLogical(best, 5) & count;
        var ungraded = best & count;
        return Vector.ShiftLeft(severe + ungraded, 10) | Vector.ShiftLeft(light - ungraded, 5) | severe;
    }

    private static void Lower(ushort[] row, int at, Vector<ushort> codes) => Store(Vector.Min(Load(row, at), codes), row, at);

    private static Vector<ushort> Load(ushort[] row, int at) => new(row, at);

    private static void Store(Vector<ushort> values, ushort[] row, int at) => values.CopyTo(row, at);
}
