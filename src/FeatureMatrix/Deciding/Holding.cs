using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>
/// Several setups at hand at once, of one card or of many: for each title the best permitted route among them counts, in each
/// completion. What is owned, what a plan installs, what one driver gives.
/// </summary>
public sealed class Holding
{
    private static readonly ProspectBuilder Builder = new();
    private readonly Lazy<ScoreInterval> _score;

    private Holding(IReadOnlyList<Stake> stakes, Policy policy)
    {
        Stakes = stakes;
        Policy = policy;
        _score = new Lazy<ScoreInterval>(() => ScoreOf(stakes, policy));
    }

    /// <summary>The library's titles, in its order.</summary>
    public IReadOnlyList<Stake> Stakes { get; }

    /// <summary>The policy.</summary>
    public Policy Policy { get; }

    /// <summary>Everything that may come of it, weighted.</summary>
    public ScoreInterval Score => _score.Value;

    /// <summary>The must-haves that are covered for certain.</summary>
    public IReadOnlyList<LibraryEntry> Covered => Stakes
        .Where(stake => stake.Entry.IsMustHave && stake.CoverageUnder(Policy) == Coverage.Covered).Select(stake => stake.Entry).ToList();

    /// <summary>The must-haves that are not covered for certain.</summary>
    public IReadOnlyList<LibraryEntry> NotCovered => Stakes
        .Where(stake => stake.Entry.IsMustHave && stake.CoverageUnder(Policy) != Coverage.Covered).Select(stake => stake.Entry).ToList();

    /// <summary>What the verdicts of each title offer together; none for nothing at hand.</summary>
    public static Holding Of(Library library, Func<LibraryEntry, IEnumerable<Verdict>> verdictsOf)
    {
        var stakes = library.Entries.Select(entry =>
        {
            var verdicts = verdictsOf(entry).ToList();
            var prospect = Builder.Build(verdicts.SelectMany(verdict => verdict.Routes), _ => FloorAnswer.Reaches);
            return new Stake(entry, Side.First, prospect, verdicts.Exists(verdict => verdict.Software.Count > 0));
        }).ToList();
        return new Holding(stakes, library.Policy);
    }

    /// <summary>What this has over another, title by title and summed up, what is open settled alike for both.</summary>
    public ScoreInterval Over(Holding other)
    {
        var stakes = Stakes.Concat(other.Stakes.Select(stake => stake with { Side = Side.Second })).ToList();
        return ScoreOf(stakes, Policy);
    }

    /// <summary>The same for one title.</summary>
    public ScoreInterval Over(Holding other, int title) =>
        ScoreOf([Stakes[title], other.Stakes[title] with { Side = Side.Second }], Policy);

    private static ScoreInterval ScoreOf(IReadOnlyList<Stake> stakes, Policy policy)
    {
        var scale = WorthScale.Of(policy);
        var total = SharedGroup.Of(stakes).Select(group => Tally.Of(group, scale, policy)).Aggregate(Tally.Zero, (one, other) => one.And(other)).Overall;
        return new ScoreInterval(decimal.Round(total.Low, 18), decimal.Round(total.High, 18));
    }
}
