using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>Who wins.</summary>
public enum Winner
{
    /// <summary>Some completions say one thing, some another.</summary>
    Undecided,

    /// <summary>The first card, in every completion.</summary>
    First,

    /// <summary>The second card, in every completion.</summary>
    Second,

    /// <summary>Neither: alike, in every completion.</summary>
    Equal,
}

/// <summary>What a decision rests on, in the order in which it is asked (DESIGN section 5).</summary>
public enum Ground
{
    /// <summary>One card misses a must-have for certain, the other covers all.</summary>
    MustHaves,

    /// <summary>One card is never worse on any title and better on some; no weights needed.</summary>
    Dominance,

    /// <summary>The interval of the weighted difference.</summary>
    Score,
}

/// <summary>
/// Two cards weighed for a library over the joint completions of what nobody knows: must-haves, then dominance, then the exact
/// interval of the weighted difference. What both cards hang on is settled alike for both.
/// </summary>
public sealed class CardComparison
{
    private readonly Tally _tally;

    private CardComparison(Card first, Card second, IReadOnlyList<Stake> stakes, WorthScale scale, Policy policy)
    {
        First = first;
        Second = second;
        Policy = policy;
        Scale = scale;
        Groups = SharedGroup.Of(stakes);
        _tally = Total(scale, stake => stake);
        Titles = stakes.Where(stake => stake.Side == Side.First)
            .Zip(stakes.Where(stake => stake.Side == Side.Second), (one, other) => TitleComparison.Of(one, other, scale, policy)).ToList();
        Dominance = FindDominance();
        FirstScore = ScoreOf(Side.First);
        SecondScore = ScoreOf(Side.Second);
    }

    /// <summary>The first card.</summary>
    public Card First { get; }

    /// <summary>The second card.</summary>
    public Card Second { get; }

    /// <summary>The policy it was decided on.</summary>
    public Policy Policy { get; }

    /// <summary>What losses are worth.</summary>
    public WorthScale Scale { get; }

    /// <summary>Title by title, in the order of the library.</summary>
    public IReadOnlyList<TitleComparison> Titles { get; }

    /// <summary>The stakes of both sides, put together where they share unknowns.</summary>
    public IReadOnlyList<SharedGroup> Groups { get; }

    /// <summary>Who is never worse.</summary>
    public Dominance Dominance { get; }

    /// <summary>The score of the first card alone.</summary>
    public ScoreInterval FirstScore { get; }

    /// <summary>The score of the second card alone. Two intervals that overlap decide nothing: see <see cref="Difference"/>.</summary>
    public ScoreInterval SecondScore { get; }

    /// <summary>First less second, over joint completions.</summary>
    /// <remarks>Titles are compared one by one too, which says more where a group of them was too large to walk.</remarks>
    public ScoreInterval Difference
    {
        get
        {
            var interval = Rounded(_tally.Overall);
            return new ScoreInterval(
                Titles.All(title => title.FirstIsNeverWorse) ? Math.Max(0, interval.Low) : interval.Low,
                Titles.All(title => title.SecondIsNeverWorse) ? Math.Min(0, interval.High) : interval.High);
        }
    }

    /// <summary>False where some group was too large to walk, so that intervals are sound but perhaps too wide.</summary>
    public bool IsExact => Groups.All(group => group.IsExact);

    /// <summary>Who wins: must-haves first, then dominance, then the score.</summary>
    public Winner Winner
    {
        get
        {
            // A card that is never worse on any title covers whatever the other covers.
            if (Dominance is Dominance.Equal or Dominance.First or Dominance.Second)
                return Dominance switch { Dominance.Equal => Winner.Equal, Dominance.First => Winner.First, _ => Winner.Second };
            var winners = WinnersIn(_tally).Distinct().ToList();
            return winners.Count == 1 ? winners[0] : Winner.Undecided;
        }
    }

    /// <summary>Who wins on the score alone, whatever the must-haves say.</summary>
    public Winner ScoreWinner => BySign(Difference) is [var only] ? only : Winner.Undecided;

    /// <summary>What the decision rests on.</summary>
    public Ground Ground
    {
        get
        {
            if (_tally.Where(false, false) is null && _tally.Where(true, true) is null)
                return Ground.MustHaves;
            return Dominance is Dominance.First or Dominance.Second or Dominance.Equal ? Ground.Dominance : Ground.Score;
        }
    }

    /// <summary>Compares two cards.</summary>
    public static CardComparison Of(Prospects prospects, Card first, Card second)
    {
        var stakes = prospects.Stakes(first, Side.First).Concat(prospects.Stakes(second, Side.Second)).ToList();
        return new CardComparison(first, second, stakes, WorthScale.Of(prospects.Policy), prospects.Policy);
    }

    /// <summary>The must-haves of a side with what is known of each.</summary>
    public IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> MustHaves(Side side) => Titles
        .Where(title => title.Entry.IsMustHave)
        .Select(title => (title.Entry, (side == Side.First ? title.First : title.Second).CoverageUnder(Policy))).ToList();

    /// <summary>The same comparison on other terms: a changed weight, other worths.</summary>
    public CardComparison With(WorthScale? scale = null, Func<LibraryEntry, double>? weight = null)
    {
        var stakes = Titles.Select(title => title.First).Concat(Titles.Select(title => title.Second)).ToList();
        if (weight is not null)
        {
            var entries = Titles.ToDictionary(title => title.Entry, title => title.Entry with { Weight = weight(title.Entry) });
            stakes = stakes.ConvertAll(stake => stake with { Entry = entries[stake.Entry] });
        }

        return new CardComparison(First, Second, stakes, scale ?? Scale, Policy);
    }

    /// <summary>The same comparison once an unknown is known.</summary>
    public CardComparison Settle(UnknownFact unknown, Support state)
    {
        var stakes = Titles.Select(title => title.First).Concat(Titles.Select(title => title.Second))
            .Select(stake => stake with { Prospect = stake.Prospect.Settle(unknown, state) }).ToList();
        return new CardComparison(First, Second, stakes, Scale, Policy);
    }

    /// <summary>Every winner that some completion makes.</summary>
    internal static IEnumerable<Winner> WinnersIn(Tally tally)
    {
        foreach (var firstMisses in (bool[])[false, true])
        {
            foreach (var secondMisses in (bool[])[false, true])
            {
                if (tally.Where(firstMisses, secondMisses) is not { } interval)
                    continue;
                if (firstMisses != secondMisses)
                    yield return firstMisses ? Winner.Second : Winner.First;
                else
                {
                    foreach (var winner in BySign(Rounded(interval)))
                        yield return winner;
                }
            }
        }
    }

    private static Winner[] BySign(ScoreInterval difference) => (Math.Sign(difference.Low), Math.Sign(difference.High)) switch
    {
        ( > 0, _) => [Winner.First],
        (_, < 0) => [Winner.Second],
        (0, 0) => [Winner.Equal],
        (0, _) => [Winner.Equal, Winner.First],
        (_, 0) => [Winner.Second, Winner.Equal],
        _ => [Winner.Second, Winner.First],
    };

    private Dominance FindDominance()
    {
        var first = Titles.All(title => title.FirstIsNeverWorse);
        var second = Titles.All(title => title.SecondIsNeverWorse);
        if (first && second)
            return Dominance.Equal;
        if (!first && !second)
            return Dominance.None;
        // Where one side is never worse, titles that all weigh the same sum to zero exactly where the cards are alike throughout. A title
        // without weight makes no card better.
        var unweighted = Total(new WorthScale(0.5m, 0.8m), stake => stake with { Entry = stake.Entry with { Weight = Math.Sign(stake.Entry.Weight) } }).Overall;
        if (first)
            return unweighted.Low > 0 ? Dominance.First : Dominance.FirstPerhaps;
        return unweighted.High < 0 ? Dominance.Second : Dominance.SecondPerhaps;
    }

    private Tally Total(WorthScale scale, Func<Stake, Stake> change) => Groups
        .Select(group => Tally.Of(group with { Stakes = group.Stakes.Select(change).ToList() }, scale, Policy))
        .Aggregate(Tally.Zero, (one, other) => one.And(other));

    private ScoreInterval ScoreOf(Side side)
    {
        var total = Total(Scale, stake => stake.Side == side ? stake : stake with { Entry = stake.Entry with { Weight = 0 } }).Overall;
        return Rounded(side == Side.First ? total : new ScoreInterval(-total.High, -total.Low));
    }

    /// <summary>Eighteen decimals: far finer than any weight, and coarse enough to swallow what decimal arithmetic rounds.</summary>
    private static ScoreInterval Rounded(ScoreInterval interval) => new(decimal.Round(interval.Low, 18), decimal.Round(interval.High, 18));
}
