namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// The routes of titles that are alike: each a list of demands, best preferred first. Titles are alike where every route asks for the
/// same; most share their engine's.
/// </summary>
/// <param name="Routes">For each route the numbers of its demands, ascending.</param>
/// <param name="HasUngraded">True where some loss is not graded, so that the two orders of outcomes may differ.</param>
/// <param name="Deciding">The marks that make the resolver decide; an open veto does not where nothing else asks for its cause.</param>
public sealed record TitleKind(IReadOnlyList<int[]> Routes, bool HasUngraded, BulkMarks Deciding)
{
    /// <summary>Titles with more routes or needs than codes can count: the resolver decides on every setup.</summary>
    public static TitleKind ForResolver { get; } = new([], false, BulkMarks.Entangled);

    /// <summary>True where the resolver decides on every setup.</summary>
    public bool IsForResolver => this == ForResolver;
}

/// <summary>
/// A collection as the bulk solver reads it: kinds of titles against kinds of setups. Setups are alike where every demand costs the
/// same on them. One row for each demand, one column for each kind of setup.
/// </summary>
public sealed class BulkProblem
{
    /// <summary>What each demand costs at worst, as <see cref="OutcomeCode.AtWorst"/>.</summary>
    public required ushort[][] Worst { get; init; }

    /// <summary>What each demand costs at best, as <see cref="OutcomeCode.AtBest"/>.</summary>
    public required ushort[][] Best { get; init; }

    /// <summary>What each demand costs in each completion of everything at once, by <see cref="Hope"/>; for decisions between cards.</summary>
    public IReadOnlyList<ushort[][]> In { get; init; } = [];

    /// <summary>For each demand what it asks, as a number: the same for demands that ask it through different wrappers.</summary>
    public int[] Questions { get; init; } = [];

    /// <summary>Marks of each demand, as <see cref="BulkMarks"/>.</summary>
    public required ushort[][] Marks { get; init; }

    /// <summary>The kinds of titles.</summary>
    public required IReadOnlyList<TitleKind> TitleKinds { get; init; }

    /// <summary>The kind of each title.</summary>
    public required int[] KindOfTitle { get; init; }

    /// <summary>The kind of each setup.</summary>
    public required int[] KindOfSetup { get; init; }

    /// <summary>The number of kinds of setups, without those that fill up the rows.</summary>
    public required int SetupKinds { get; init; }

    /// <summary>The length of a row: the kinds of setups, filled up to whole vectors.</summary>
    public int RowLength => RowLengthFor(SetupKinds);

    /// <summary>The length of a row for some kinds of setups.</summary>
    public static int RowLengthFor(int setupKinds)
    {
        var lanes = System.Numerics.Vector<ushort>.Count;
        return (setupKinds + lanes - 1) / lanes * lanes;
    }
}
