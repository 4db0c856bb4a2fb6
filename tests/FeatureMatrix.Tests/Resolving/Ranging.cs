using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving;

using Support = FeatureMatrix.Model.Support;

/// <summary>All outcomes of a route (rule R13): unknowns that share nothing are walked apart, and past a limit there are bounds.</summary>
public sealed class The_range_of_a_route
{
    [Fact]
    public void Is_one_outcome_where_nothing_is_open_that_matters()
    {
        Assert.Equal("exactly runs by nothing", Range(8, [Made.Gate(Made.Is(Support.Yes))], Made.Need(Strength.Severe, Made.Choice(Made.Level(0), Support.Yes))));
        Assert.Equal("exactly does not run by nothing", Range(8, [Made.Gate(Made.Is(Support.No))], Made.Need(Strength.Severe, Made.Choice(Made.Level(0)))));
        Assert.Equal("exactly runs, Severe f-01 1 Missing by nothing", Range(8, [], Made.Need(Strength.Bonus, Made.Choice(Made.Level(0))), Made.Need(Strength.Severe, Made.Choice(Made.Level(1), Support.No))));
    }

    [Fact]
    public void Mixes_the_outcomes_of_parts_that_share_no_unknown()
    {
        Assert.Equal(
            "exactly runs | runs, Cosmetic f-01 1 Missing | runs, Severe f-00 1 Missing | runs, Severe f-00 1 Missing, Cosmetic f-01 1 Missing by f-00 1, f-01 1",
            Range(2, [], Made.Need(Strength.Severe, Made.Choice(Made.Level(0))), Made.Need(Strength.Cosmetic, Made.Choice(Made.Level(1)))));
        Assert.Equal(
            "exactly runs | runs, Severe f-01 1 Missing | does not run by f-00 1, f-01 1",
            Range(2, [Made.Gate(Made.Open(Made.Level(0)))], Made.Need(Strength.Severe, Made.Choice(Made.Level(1)))));
    }

    [Fact]
    public void Walks_together_what_shares_an_unknown_or_one_that_implies_it()
    {
        Assert.Equal("exactly runs | does not run by f-00 1", Range(8, [Made.Gate(Made.Open(Made.Level(0)))], Made.Need(Strength.Severe, Made.Choice(Made.Level(0)))));
        Assert.Equal(
            "exactly runs | runs, Severe f-00 1 Missing | runs, Severe f-00 2 Missing by f-00 1, f-00 2",
            Range(8, [], Made.Need(Strength.Severe, Made.Choice(Made.Level(0))), Made.Need(Strength.Severe, Made.Choice(Made.Level(0, 2)))));
        Assert.Equal(
            "exactly runs by nothing", Range(8, [], Sometimes(Made.Need(Strength.Severe, Made.Choice(Made.Level(0))), Made.Level(0), appliesWhen: true)));
        Assert.Equal(
            "exactly does not run by nothing",
            Range(8, [Made.Gate(Made.Open(Made.Level(0)))], Sometimes(Made.Need(Strength.Must, Made.Choice(Made.Level(1), Support.No)), Made.Level(0), appliesWhen: true)));
    }

    [Fact]
    public void Counts_a_loss_once_that_follows_from_another_need()
    {
        var (missing, open) = (Made.Choice(Made.Level(0), Support.No), Made.Choice(Made.Level(0, 2)));
        Assert.Equal("exactly runs, Severe f-00 1 Missing by nothing", Range(8, [], Made.Need(Strength.Severe, missing), Made.Need(Strength.Severe, open)));
        Assert.Equal("exactly runs, Severe f-00 1 Missing by nothing", Range(8, [], Made.Need(Strength.Severe, open), Made.Need(Strength.Severe, missing)));
        Assert.Equal(
            "exactly runs, Severe f-00 1 Missing by nothing",
            Range(8, [], Made.Need(Strength.Severe, missing, Made.Choice(Made.Level(3), Support.No)), Made.Need(Strength.Severe, open, Made.Choice(Made.Level(3, 2), Support.No))));
    }

    [Theory]
    [InlineData(4, "exactly")]
    [InlineData(3, "within")]
    public void Is_bounded_where_a_part_has_more_completions_than_the_limit(int limit, string expected)
    {
        NeedTerm[] pairs = [Pair(0, 1, Strength.Severe), Pair(1, 0, Strength.Cosmetic)];
        Assert.StartsWith(expected, Range(limit, [], pairs), StringComparison.Ordinal);
    }

    [Fact]
    public void Has_an_exact_best_end_and_a_sound_worst_end_past_the_limit()
    {
        Assert.Equal(
            "within runs to runs, Severe f-00 1 Missing, Severe f-01 1 Missing by f-00 1, f-01 1",
            Range(1, [], Made.Need(Strength.Severe, Made.Choice(Made.Level(0)), Made.Choice(Made.Level(1))), Made.Need(Strength.Cosmetic, Made.Choice(Made.Level(1)))));
        Assert.Equal("within runs to does not run by f-00 1, f-01 1", Range(1, [], Pair(0, 1, Strength.Must)));
        Assert.Equal("within runs to does not run by f-00 1, f-01 1", Range(1, [], Pair(0, 1, Strength.Unknown)));
        Assert.Equal("within runs to does not run by f-00 1, f-01 1", Range(1, [], Pair(0, 1, Strength.Cosmetic, Strength.Must)));
        Assert.Equal("within runs to does not run by f-00 1", Range(1, [Made.Gate(Made.Open(Made.Level(0)))]));
        Assert.Equal("within runs to does not run by f-00 1, f-01 1", Range(1, [Made.Gate(Made.Open(Made.Level(0)))], Pair(0, 1, Strength.Severe)));
        Assert.Equal("within runs, Severe f-02 1 Missing to runs, Severe f-00 1 Missing, Severe f-02 1 Missing by f-00 1", Range(1, [], Made.Need(Strength.Severe, Made.Choice(Made.Level(0))), Made.Need(Strength.Severe, Made.Choice(Made.Level(2), Support.No))));
    }

    [Fact]
    public void Is_bounded_as_a_whole_where_one_part_is()
    {
        Assert.Equal(
            "within runs to runs, Severe f-00 1 Missing, Cosmetic f-02 1 Missing by f-00 1, f-01 1, f-02 1",
            Range(2, [], Pair(0, 1, Strength.Severe), Made.Need(Strength.Cosmetic, Made.Choice(Made.Level(2)))));
        Assert.Equal("within runs to does not run by f-02 1, f-00 1, f-01 1", Range(2, [Made.Gate(Made.Open(Made.Level(2)))], Pair(0, 1, Strength.Severe)));
    }

    [Theory]
    [InlineData(6, 64)]
    [InlineData(7, 0)]
    public void Lists_up_to_64_outcomes(int needs, int listed)
    {
        var range = new RouteRange(new Completions(8)).Of([], [.. Enumerable.Range(0, needs).Select(i => Made.Need(Strength.Cosmetic, Made.Choice(Made.Level(i))))]);
        Assert.Equal((listed, true, 0, needs, needs), (range.Outcomes.Count, range.IsExact, range.Best.Cosmetic, range.Worst.Cosmetic, range.Deciding.Count));
        Assert.Equal(Outcome.Works, range.Mildest);
    }

    /// <summary>A need met by either of two that are not known: three completions.</summary>
    private static NeedTerm Pair(int one, int other, Strength strength, Strength? whenBroken = null) => Made.Need(strength, whenBroken, Made.Choice(Made.Level(one)), Made.Choice(Made.Level(other)));

    private static NeedTerm Sometimes(NeedTerm need, Capability unknown, bool appliesWhen) =>
        need with { Applies = Applicability.Of([Made.Open(unknown)], yes => yes.Count > 0 == appliesWhen) };

    private static string Range(int limit, IReadOnlyList<Gate> gates, params NeedTerm[] needs)
    {
        var range = new RouteRange(new Completions(limit)).Of(gates, needs);
        var deciding = range.Deciding.Count == 0 ? "nothing" : string.Join(", ", range.Deciding.Cast<UnknownFact.Supply>().Select(unknown => unknown.Capability));
        return $"{(range.IsExact ? $"exactly {string.Join(" | ", range.Outcomes)}" : $"within {range.Best} to {range.Worst}")} by {deciding}";
    }
}

/// <summary>The features that an unknown is about.</summary>
public sealed class Features_of_an_unknown
{
    private static readonly Setup Setup = new(Parts.Heron16, Parts.Steady.Versions[0], Parts.Win98, Install.Listed);
    private static readonly Need Need = new() { Choices = [Parts.Fog.At(1), Parts.Direct3D.At(1), Parts.Direct3D.At(2)], Strength = Strength.Must, Evidence = Parts.Word };

    [Fact]
    public void Are_those_of_the_capability_or_of_the_need()
    {
        Assert.Equal([Parts.Fog], new UnknownFact.Supply(Parts.Fog.At(1), Parts.Heron, null, Setup.Driver, Setup.Os, Parts.Direct3D).Features);
        Assert.Equal([Parts.Fog], new UnknownFact.WrapperSupply(Parts.Fog.At(1), null!).Features);
        Assert.Equal([Parts.Fog], new UnknownFact.ObservedFeature(Made.Renderer, Setup, null, Parts.Fog.At(1)).Features);
        Assert.Equal([Parts.Fog, Parts.Direct3D], new UnknownFact.RunsWithout(Made.Renderer, Need).Features);
        Assert.Equal([Parts.Fog, Parts.Direct3D], new UnknownFact.RunsBroken(Made.Renderer, Need).Features);
        Assert.Equal([Parts.Fog, Parts.Direct3D], new UnknownFact.LossIsCosmetic(Made.Renderer, Need, false).Features);
    }

    [Fact]
    public void Are_none_where_it_is_about_something_else() => Assert.All(
        new UnknownFact[]
        {
            new UnknownFact.WrapperOs(null!, Setup.Os), new UnknownFact.Runtime(Setup.Os, Parts.Direct3D.At(1)), new UnknownFact.CardOs(Setup.Card, Setup.Os),
            new UnknownFact.DriverExists(Parts.Heron, Setup.Os), new UnknownFact.ForcedInstall(Setup.Driver, Setup.Card), new UnknownFact.FrameBuffer(Setup.Card, 1),
            new UnknownFact.Textures(Setup.Card, Made.Renderer), new UnknownFact.Preset(Setup.Card, Made.Renderer, "high"),
            new UnknownFact.DefectIsReal(Made.Renderer, new Defect(null, Scope.Everything, null, "", Parts.Word)), new UnknownFact.ObservedRun(Made.Renderer, Setup, null),
            new UnknownFact.ReachesFloor(Made.Renderer, Setup, null),
        },
        unknown => Assert.Empty(unknown.Features));
}
