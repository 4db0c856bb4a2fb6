using System.Numerics;

namespace FeatureMatrix.Deciding.Planning;

/// <summary>
/// A problem as the search works on it: must-haves and titles that no option tells apart are one, and options that another of the
/// same card and rigs replaces are left out.
/// </summary>
internal sealed class PlanTable
{
    /// <summary>Tabulates a problem.</summary>
    public PlanTable(PlanProblem problem, PlanLimits limits)
    {
        Problem = problem;
        var start = Seating.Empty(problem, limits);
        var useful = Enumerable.Range(0, problem.Options.Count).Where(i => !Enumerable.Range(0, problem.Options.Count).Any(j => Replaces(problem, j, i))).ToList();
        Moves = useful.SelectMany(option => problem.Options[option].Rigs.Where(rig => start.With(problem.Options[option].Card, rig) is not null)
            .Select(rig => new PlanMove(option, rig))).ToList();
        var options = Moves.Select(move => move.Option).Distinct().ToList();
        var musts = Enumerable.Range(0, problem.MustHaves)
            .GroupBy(must => string.Join(',', options.Where(option => problem.Options[option].Covers.Contains(must)))).ToList();
        Missing = musts.Where(group => group.Key.Length == 0).Sum(group => group.Count());
        var open = musts.Where(group => group.Key.Length > 0).ToList();
        Counts = open.Select(group => group.Count()).ToArray();
        var words = (open.Count + 63) / 64;
        Covers = new ulong[problem.Options.Count][];
        foreach (var option in options)
        {
            Covers[option] = new ulong[words];
            for (var i = 0; i < open.Count; i++)
            {
                if (problem.Options[option].Covers.Contains(open[i].First()))
                    Covers[option][i / 64] |= 1ul << (i % 64);
            }
        }

        var titles = problem.Options.Count == 0 ? 0 : problem.Options[0].Worths.Count;
        var columns = Enumerable.Range(0, titles).Select(title => options.Select(option => problem.Options[option].Worths[title]).ToArray())
            .Where(column => column.Any(worth => worth > 0)).GroupBy(column => string.Join(',', column))
            .Select(group => group.First().Select(worth => worth * group.Count()).ToArray()).ToList();
        Worths = new long[problem.Options.Count][];
        for (var i = 0; i < options.Count; i++)
            Worths[options[i]] = columns.Select(column => column[i]).ToArray();
        Titles = columns.Count;
    }

    /// <summary>The problem.</summary>
    public PlanProblem Problem { get; }

    /// <summary>Every option in every rig that bears its card by itself.</summary>
    public IReadOnlyList<PlanMove> Moves { get; }

    /// <summary>Must-haves that no move covers.</summary>
    public int Missing { get; }

    /// <summary>How many must-haves each of the others stands for.</summary>
    public IReadOnlyList<int> Counts { get; }

    /// <summary>For each option the must-haves it covers, one bit each.</summary>
    public ulong[][] Covers { get; }

    /// <summary>For each option its worths.</summary>
    public long[][] Worths { get; }

    /// <summary>How many distinct titles there are.</summary>
    public int Titles { get; }

    /// <summary>How many bits are set.</summary>
    public static int Count(ulong[] bits) => bits.Sum(BitOperations.PopCount);

    /// <summary>True where the bit is set.</summary>
    public static bool Has(ulong[] bits, int bit) => (bits[bit / 64] >> (bit % 64) & 1) != 0;

    /// <summary>True where the other option does as much on the same card, system and rigs.</summary>
    private static bool Replaces(PlanProblem problem, int by, int what)
    {
        var (one, other) = (problem.Options[what], problem.Options[by]);
        if (by == what || one.Card != other.Card || one.System != other.System || !one.Rigs.SequenceEqual(other.Rigs))
            return false;
        var isSame = true;
        for (var i = 0; i < one.Worths.Count; i++)
        {
            if (one.Worths[i] > other.Worths[i])
                return false;
            isSame &= one.Worths[i] == other.Worths[i];
        }

        var covered = one.Covers.Count(other.Covers.Contains);
        return covered == one.Covers.Count && (!isSame || covered < other.Covers.Count || by < what);
    }
}
