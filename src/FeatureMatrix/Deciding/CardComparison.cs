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
    private readonly IReadOnlyList<Stake> _firsts;
    private readonly IReadOnlyList<Stake> _seconds;
    private readonly CardComparison? _before;
    private readonly Dictionary<SharedGroup, Tally> _tallies = new(ReferenceEqualityComparer.Instance);
    private readonly (bool First, bool Second)?[] _neverWorse;
    private readonly Lazy<Tally> _tally;
    private readonly Lazy<IReadOnlyList<TitleComparison>> _titles;
    private readonly Lazy<IReadOnlyList<SharedGroup>> _groups;
    private readonly Lazy<Dominance> _dominance;
    private readonly Lazy<ScoreInterval> _firstScore;
    private readonly Lazy<ScoreInterval> _secondScore;
    private readonly Lazy<ScoreInterval> _difference;

    /// <summary>Another one made from it; where they differ in some stakes alone, what that leaves untouched is taken over.</summary>
    private CardComparison(
        CardComparison other, IReadOnlyList<Stake> firsts, IReadOnlyList<Stake> seconds, WorthScale scale, Func<IReadOnlyList<SharedGroup>> groups, bool keepsRest)
        : this(other.First, other.Second, firsts, seconds, scale, other.Policy, groups) => _before = keepsRest ? other : null;

    private CardComparison(
        Card first, Card second, IReadOnlyList<Stake> firsts, IReadOnlyList<Stake> seconds, WorthScale scale, Policy policy, Func<IReadOnlyList<SharedGroup>> groups)
    {
        (First, Second, _firsts, _seconds, Scale, Policy) = (first, second, firsts, seconds, scale, policy);
        _neverWorse = new (bool, bool)?[firsts.Count];
        _groups = new Lazy<IReadOnlyList<SharedGroup>>(groups);
        _tally = new Lazy<Tally>(() => Groups.Select(TallyOf).Aggregate(Tally.Zero, (one, other) => one.And(other)));
        _titles = new Lazy<IReadOnlyList<TitleComparison>>(() => Enumerable.Range(0, firsts.Count).Select(TitleAt).ToList());
        _dominance = new Lazy<Dominance>(FindDominance);
        _firstScore = new Lazy<ScoreInterval>(() => ScoreOf(firsts));
        _secondScore = new Lazy<ScoreInterval>(() => ScoreOf(seconds));
        _difference = new Lazy<ScoreInterval>(FindDifference);
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
    public IReadOnlyList<TitleComparison> Titles => _titles.Value;

    /// <summary>The stakes of both sides, put together where they share unknowns.</summary>
    public IReadOnlyList<SharedGroup> Groups => _groups.Value;

    /// <summary>Who is never worse.</summary>
    public Dominance Dominance => _dominance.Value;

    /// <summary>The score of the first card alone.</summary>
    public ScoreInterval FirstScore => _firstScore.Value;

    /// <summary>The score of the second card alone. Two intervals that overlap decide nothing: see <see cref="Difference"/>.</summary>
    public ScoreInterval SecondScore => _secondScore.Value;

    /// <summary>First less second, over joint completions.</summary>
    /// <remarks>Titles are compared one by one too, which says more where a group of them was too large to walk.</remarks>
    public ScoreInterval Difference => _difference.Value;

    /// <summary>False where some group was too large to walk, so that intervals are sound but perhaps too wide.</summary>
    public bool IsExact => Groups.All(group => group.IsExact);

    /// <summary>Who wins: must-haves first, then dominance, then the score.</summary>
    public Winner Winner
    {
        get
        {
            var winners = WinnersIn(_tally.Value).Distinct().ToList();
            if (winners.Count == 1)
                return winners[0];
            // A card that is never worse on any title covers whatever the other covers; this tells more where a group was too large.
            return Dominance switch
            {
                Dominance.Equal => Winner.Equal,
                Dominance.First => Winner.First,
                Dominance.Second => Winner.Second,
                _ => Winner.Undecided,
            };
        }
    }

    /// <summary>Who wins on the score alone, whatever the must-haves say.</summary>
    public Winner ScoreWinner => BySign(Difference) is [var only] ? only : Winner.Undecided;

    /// <summary>What the decision rests on.</summary>
    public Ground Ground
    {
        get
        {
            if (_tally.Value.Where(false, false) is null && _tally.Value.Where(true, true) is null)
                return Ground.MustHaves;
            return Dominance is Dominance.First or Dominance.Second or Dominance.Equal ? Ground.Dominance : Ground.Score;
        }
    }

    /// <summary>Compares two cards.</summary>
    public static CardComparison Of(Prospects prospects, Card first, Card second)
    {
        var (firsts, seconds) = (prospects.Stakes(first), prospects.Stakes(second, Side.Second));
        return new CardComparison(first, second, firsts, seconds, WorthScale.Of(prospects.Policy), prospects.Policy, () => SharedGroup.Of([.. firsts, .. seconds]));
    }

    /// <summary>The must-haves of a side with what is known of each.</summary>
    public IReadOnlyList<(LibraryEntry Entry, Coverage Coverage)> MustHaves(Side side) => Titles
        .Where(title => title.Entry.IsMustHave)
        .Select(title => (title.Entry, (side == Side.First ? title.First : title.Second).CoverageUnder(Policy))).ToList();

    /// <summary>The same comparison on other terms: a changed weight, other worths.</summary>
    public CardComparison With(WorthScale? scale = null, Func<LibraryEntry, double>? weight = null)
    {
        if (weight is null)
            return new CardComparison(this, _firsts, _seconds, scale ?? Scale, () => Groups, keepsRest: false);
        var entries = _firsts.ToDictionary(stake => stake.Entry, stake => stake.Entry with { Weight = weight(stake.Entry) });
        return new CardComparison(
            this, _firsts.Select(Weighed).ToList(), _seconds.Select(Weighed).ToList(), scale ?? Scale, () => Groups.Select(group => group.With(Weighed)).ToList(), keepsRest: false);

        Stake Weighed(Stake stake) => stake with { Entry = entries[stake.Entry] };
    }

    /// <summary>The same comparison with other terms for one title: another tolerance, another weight.</summary>
    public CardComparison With(LibraryEntry entry)
    {
        return new CardComparison(
            this, _firsts.Select(After).ToList(), _seconds.Select(After).ToList(), Scale,
            () => Groups.Select(group => group.Stakes.Any(IsMeant) ? group.With(After) : group).ToList(), keepsRest: true);

        bool IsMeant(Stake stake) => stake.Entry.Title == entry.Title;

        Stake After(Stake stake) => IsMeant(stake) ? stake with { Entry = entry } : stake;
    }

    /// <summary>The same comparison once an unknown is known.</summary>
    public CardComparison Settle(UnknownFact unknown, Support state)
    {
        var touched = Groups.Where(group => group.Unknowns.Any(other => Implications.AreLinked(unknown, other))).ToList();
        var settled = new Dictionary<Stake, Stake>(ReferenceEqualityComparer.Instance);
        foreach (var stake in touched.SelectMany(group => group.Stakes))
        {
            var prospect = stake.Prospect.Settle(unknown, state);
            settled[stake] = prospect == stake.Prospect ? stake : stake with { Prospect = prospect };
        }

        return new CardComparison(
            this, _firsts.Select(After).ToList(), _seconds.Select(After).ToList(), Scale,
            () => [.. Groups.Except(touched), .. SharedGroup.Of(touched.SelectMany(group => group.Stakes).Select(After).ToList())], keepsRest: true);

        Stake After(Stake stake) => settled.GetValueOrDefault(stake, stake);
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

    internal static Winner[] BySign(ScoreInterval difference) => (Math.Sign(difference.Low), Math.Sign(difference.High)) switch
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
        var (first, second) = (true, true);
        for (var i = 0; i < _firsts.Count && (first || second); i++)
        {
            var (one, other) = NeverWorse(i);
            first &= one;
            second &= other;
        }

        if (first && second)
            return Dominance.Equal;
        if (!first && !second)
            return Dominance.None;
        // Where one side is never worse, titles that all weigh the same sum to zero exactly where the cards are alike throughout. A title
        // without weight makes no card better.
        var unweighted = Groups.Select(group => Tally.Of(group.With(Unweighted), new WorthScale(0.5m, 0.8m), Policy)).Aggregate(Tally.Zero, (one, other) => one.And(other)).Overall;
        if (first)
            return unweighted.Low > 0 ? Dominance.First : Dominance.FirstPerhaps;
        return unweighted.High < 0 ? Dominance.Second : Dominance.SecondPerhaps;

        static Stake Unweighted(Stake stake) => stake with { Entry = stake.Entry with { Weight = Math.Sign(stake.Entry.Weight) } };
    }

    private ScoreInterval FindDifference()
    {
        var interval = Rounded(_tally.Value.Overall);
        if (interval.IsPoint || IsExact)
            return interval;
        return new ScoreInterval(
            Titles.All(title => title.FirstIsNeverWorse) ? Math.Max(0, interval.Low) : interval.Low,
            Titles.All(title => title.SecondIsNeverWorse) ? Math.Min(0, interval.High) : interval.High);
    }

    private bool IsAsBefore(int title) => _before is { } before && ReferenceEquals(before._firsts[title], _firsts[title]) && ReferenceEquals(before._seconds[title], _seconds[title]);

    private TitleComparison TitleAt(int title) => IsAsBefore(title) ? _before!.Titles[title] : TitleComparison.Of(_firsts[title], _seconds[title], Scale, Policy);

    private (bool First, bool Second) NeverWorse(int title) =>
        _neverWorse[title] ??= IsAsBefore(title) ? _before!.NeverWorse(title) : TitleComparison.NeverWorse(_firsts[title], _seconds[title]);

    private Tally TallyOf(SharedGroup group)
    {
        if (_before?._tallies.TryGetValue(group, out var tally) == true)
            return tally;
        if (!_tallies.TryGetValue(group, out tally))
            _tallies[group] = tally = Tally.Of(group, Scale, Policy);
        return tally;
    }

    private ScoreInterval ScoreOf(IReadOnlyList<Stake> stakes)
    {
        var total = SharedGroup.Of(stakes.Select(stake => stake with { Side = Side.First }).ToList())
            .Select(group => Tally.Of(group, Scale, Policy)).Aggregate(Tally.Zero, (one, other) => one.And(other)).Overall;
        return Rounded(total);
    }

    /// <summary>Eighteen decimals: far finer than any weight, and coarse enough to swallow what decimal arithmetic rounds.</summary>
    internal static ScoreInterval Rounded(ScoreInterval interval) => new(decimal.Round(interval.Low, 18), decimal.Round(interval.High, 18));
}
