using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Deciding.Generated;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>Comparisons against brute force over every completion, on generated libraries full of gaps.</summary>
public sealed class Comparisons_on_small_libraries
{
    private const int MostCompletions = 4000;
    private const int Usual = 150;
    private const int Campaign = 20_000;

    [Fact]
    public void Equal_brute_force() => Gen.Int[0, 1_000_000].Sample(AgreesWithBruteForce, iter: Usual, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Equal_brute_force_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesWithBruteForce, iter: Campaign, threads: 2);

    [Fact]
    public void Equal_brute_force_at_the_speed_floor() => Gen.Int[0, 1_000_000].Sample(AgreesAtTheFloor, iter: Usual, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Equal_brute_force_at_the_speed_floor_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesAtTheFloor, iter: Campaign / 10, threads: 1);

    [Fact]
    public void Flip_just_beyond_the_reported_values_and_not_before() => Gen.Int[0, 1_000_000].Sample(FlipsWhereItSays, iter: Usual, threads: 1);

    [Fact]
    public void Name_every_must_have_that_makes_the_winner() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var small = new SmallLibrary(seed);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        var expected = small.Prospects.Library.Entries
            .Select(entry => new MustHaveFlip(entry, Anew(small, entry with { MustHaveTolerance = entry.IsMustHave ? null : Strength.Cosmetic }).Winner))
            .Where(flip => flip.Beyond != comparison.Winner).ToHashSet();

        Assert.Equal(expected, Sensitivity.OfMustHaves(comparison).ToHashSet());
    }, iter: Usual, threads: 1);

    [Fact]
    public void Do_not_change_where_all_weights_are_scaled() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var small = new SmallLibrary(seed);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        var scaled = comparison.With(weight: entry => entry.Weight * 8);
        Assert.Equal((comparison.Winner, comparison.Ground, comparison.Dominance), (scaled.Winner, scaled.Ground, scaled.Dominance));
        Assert.Equal(comparison.Difference.Low * 8, scaled.Difference.Low);
        Assert.Equal(comparison.Difference.High * 8, scaled.Difference.High);
    }, iter: Usual, threads: 1);

    [Fact]
    public void Never_let_a_dominated_card_win() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var small = new SmallLibrary(seed);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        var impossible = comparison.Dominance switch
        {
            Dominance.Equal => comparison.Winner != Winner.Equal,
            Dominance.First => comparison.Winner != Winner.First,
            Dominance.FirstPerhaps => comparison.Winner is Winner.Second or Winner.Equal,
            Dominance.Second => comparison.Winner != Winner.Second,
            Dominance.SecondPerhaps => comparison.Winner is Winner.First or Winner.Equal,
            _ => false,
        };
        Assert.False(impossible, $"{comparison.Dominance} but {comparison.Winner}");
    }, iter: Usual, threads: 1);

    [Fact]
    public void Are_exactly_equal_where_every_title_is_even_past_the_limit()
    {
        var small = new SmallLibrary(332301);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        Assert.False(comparison.IsExact);
        Assert.Equal((Dominance.Equal, Winner.Equal, new ScoreInterval(0, 0)), (comparison.Dominance, comparison.Winner, comparison.Difference));
    }

    [Fact]
    public void Only_narrow_when_an_unknown_is_settled() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var small = new SmallLibrary(seed);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        foreach (var unknown in comparison.Groups.SelectMany(group => group.Unknowns).Distinct())
        {
            var states = comparison.Groups.SelectMany(group => group.Stakes).SelectMany(stake => stake.Prospect.Cases)
                .SelectMany(one => one.Settled).Where(pair => pair.Key == unknown).Select(pair => pair.Value).Distinct();
            foreach (var state in states)
            {
                var settled = comparison.Settle(unknown, state);
                Assert.True(comparison.Difference.Contains(settled.Difference));
                if (comparison.Winner != Winner.Undecided)
                    Assert.Equal(comparison.Winner, settled.Winner);
            }
        }
    }, iter: Usual, threads: 1);

    // A card fact about palettes with alpha parts the card's plain palettes from those of the chip's other cards.
    [Theory, InlineData(130688)]
    public void Equal_brute_force_where_cards_of_a_chip_differ(int seed) => AgreesWithBruteForce(seed);

    [Theory, InlineData(930499)]
    public void Flip_downwards_where_the_current_value_is_the_edge(int seed) => FlipsWhereItSays(seed);

    /// <summary>A third of the routes keeps the floor, a third misses it, of a third nobody knows.</summary>
    private static void AgreesAtTheFloor(int seed)
    {
        var small = new SmallLibrary(seed);
        var prospects = new Prospects(small.Library, small.Prospects.VerdictOn) { Floor = Floor };
        Agree(small, prospects, EveryCompletion.Of(small, small.First, small.Second, MostCompletions, Floor));

        FloorAnswer Floor(Route route) =>
            (FloorAnswer)($"{route.Renderer.Title.Id} {route.Renderer.Id} {route.Setup.Card.Id} {route.Setup.Driver.Id} {route.Wrapper?.Id} {seed}".Sum(letter => letter) % 3);
    }

    private static void AgreesWithBruteForce(int seed)
    {
        var small = new SmallLibrary(seed);
        Agree(small, small.Prospects, EveryCompletion.Of(small, small.First, small.Second, MostCompletions));
    }

    private static void Agree(SmallLibrary small, Prospects prospects, List<WholeCompletion>? completions)
    {
        if (completions is null)
            return;
        var comparison = CardComparison.Of(prospects, small.First, small.Second);
        var differences = completions.Select(completion => Difference(small, completion)).ToList();
        if (!comparison.IsExact)
        {
            Assert.True((double)comparison.Difference.Low <= differences.Min() + 1e-9 && (double)comparison.Difference.High >= differences.Max() - 1e-9);
            return;
        }

        Same(differences.Min(), comparison.Difference.Low);
        Same(differences.Max(), comparison.Difference.High);
        Same(completions.Min(completion => EveryCompletion.Score(small, completion, true)), comparison.FirstScore.Low);
        Same(completions.Max(completion => EveryCompletion.Score(small, completion, true)), comparison.FirstScore.High);
        Same(completions.Min(completion => EveryCompletion.Score(small, completion, false)), comparison.SecondScore.Low);
        Same(completions.Max(completion => EveryCompletion.Score(small, completion, false)), comparison.SecondScore.High);

        var winners = completions.Select(completion => EveryCompletion.WinnerIn(small, completion)).Distinct().ToList();
        Assert.Equal(winners.Count == 1 ? winners[0] : Winner.Undecided, comparison.Winner);

        var firstNeverWorse = completions.TrueForAll(completion => completion.Titles.All(title => title.First.IsNoWorseThan(title.Second)));
        var secondNeverWorse = completions.TrueForAll(completion => completion.Titles.All(title => title.Second.IsNoWorseThan(title.First)));
        var alikeSomewhere = completions.Exists(completion => completion.Titles.All(title => title.First == title.Second));
        var expected = (firstNeverWorse, secondNeverWorse, alikeSomewhere) switch
        {
            (true, true, _) => Dominance.Equal,
            (true, false, false) => Dominance.First,
            (true, false, true) => Dominance.FirstPerhaps,
            (false, true, false) => Dominance.Second,
            (false, true, true) => Dominance.SecondPerhaps,
            _ => Dominance.None,
        };
        Assert.Equal(expected, comparison.Dominance);
    }

    /// <summary>The comparison with one entry of the library replaced, worked out from the verdicts on.</summary>
    private static CardComparison Anew(SmallLibrary small, LibraryEntry changed)
    {
        var library = small.Prospects.Library;
        var other = new Library
        {
            Id = library.Id,
            Name = library.Name,
            Entries = [.. library.Entries.Select(entry => entry.Title == changed.Title ? changed : entry)],
            Policy = library.Policy,
        };
        return CardComparison.Of(new Prospects(other, small.Prospects.VerdictOn), small.First, small.Second);
    }

    private static void FlipsWhereItSays(int seed)
    {
        var small = new SmallLibrary(seed);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        foreach (var flip in Sensitivity.Of(comparison))
        {
            var step = 1e-9m * Math.Max(1, flip.Value) * (flip.Upwards ? 1 : -1);
            Assert.Equal(comparison.ScoreWinner, flip.Now);
            Assert.True(flip.Beyond == At(comparison, flip.Parameter, flip.Value + step).ScoreWinner, $"{flip}: {At(comparison, flip.Parameter, flip.Value + step).ScoreWinner} at {flip.Value + step}");
            for (var share = 0.05m; share < 1; share += 0.1m)
                Assert.Equal(flip.Now, At(comparison, flip.Parameter, flip.Current + ((flip.Value - flip.Current) * share)).ScoreWinner);
        }
    }

    private static CardComparison At(CardComparison comparison, Parameter parameter, decimal value) => parameter switch
    {
        Parameter.WeightOf weight => comparison.With(weight: entry => entry.Title == weight.Title ? (double)value : entry.Weight),
        Parameter.SevereWorth => comparison.With(comparison.Scale with { Severe = value }),
        Parameter.CosmeticWorth => comparison.With(comparison.Scale with { Cosmetic = value }),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static double Difference(SmallLibrary small, WholeCompletion completion) =>
        EveryCompletion.Score(small, completion, true) - EveryCompletion.Score(small, completion, false);

    private static void Same(double expected, decimal actual) => Assert.Equal(expected, (double)actual, 1e-9);
}
