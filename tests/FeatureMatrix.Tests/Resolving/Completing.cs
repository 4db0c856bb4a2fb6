using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving;

using Support = FeatureMatrix.Model.Support;

/// <summary>Walking the completions of some unknowns, each no or yes (rule R13): an unknown is asked for only where it matters.</summary>
public sealed class Completions_of_unknowns
{
    private static readonly UnknownFact[] Unknowns = [.. Enumerable.Range(0, 15).Select(i => new UnknownFact.CardOs(Parts.Heron16, new Os { Id = $"os-{i}", Name = "OS" }))];

    [Theory]
    [InlineData(8, true)]
    [InlineData(7, false)]
    [InlineData(1, false)]
    public void Are_all_walked_or_none_past_the_limit(int limit, bool walked)
    {
        var leaves = new Completions(limit).Walk<string>(settled => Letters(settled, 3));
        Assert.Equal(walked ? "nnn nny nyn nyy ynn yny yyn yyy" : null, leaves is null ? null : string.Join(' ', leaves.Select(leaf => leaf.Result)));
        Assert.All(leaves ?? [], leaf => Assert.Equal(leaf.Result, Letters(leaf.Settled, 3).Result));
    }

    [Fact]
    public void Are_tried_from_the_most_hopeful_on_until_nothing_can_be_better()
    {
        var tried = new List<string>();
        var best = Completions.Best<string>(settled => Noted(Letters(settled, 3), tried), string.CompareOrdinal, letters => letters[0] == 'n');
        Assert.Equal("nyy", best);
        Assert.Equal(["yyy", "yyn", "yny", "ynn", "nyy"], tried);
    }

    [Fact]
    public void Are_all_tried_where_something_might_be_better_and_the_first_of_equals_stays()
    {
        var tried = new List<string>();
        var best = Completions.Best<string>(settled => Noted(Letters(settled, 3), tried), (one, other) => Math.Sign(one.Count(letter => letter == 'y') % 3 - other.Count(letter => letter == 'y') % 3), _ => false);
        Assert.Equal("yyy", best);
        Assert.Equal(8, tried.Count);
    }

    [Fact]
    public void Are_tried_so_often_and_no_more()
    {
        var tried = new List<string>();
        var best = Completions.Best<string>(settled => Noted(Letters(settled, Unknowns.Length), tried), string.CompareOrdinal, _ => false);
        Assert.Equal(Completions.MostTries, tried.Count);
        Assert.Equal(tried.Min(StringComparer.Ordinal), best);
    }

    [Fact]
    public void Are_decided_by_what_alone_changes_the_result()
    {
        var leaves = new Completions(8).Walk<string>(settled => Letters(settled, 3))!;
        Assert.Equal([Unknowns[0], Unknowns[2]], Completions.Deciding(leaves, (one, other) => one[0] == other[0] && one[2] == other[2]));
        Assert.Empty(Completions.Deciding(leaves, (_, _) => true));
        Assert.Equal([Unknowns[0], Unknowns[2]], Completions.Parting(leaves, (one, other) => one[0] == other[0] && one[2] == other[2]));
    }

    [Fact]
    public void Are_decided_by_nothing_alone_where_two_must_change_together()
    {
        var leaves = new Completions(8).Walk<string>(settled => Letters(settled, 2))!.Where(leaf => leaf.Result is "nn" or "yy").ToList();
        Assert.Empty(Completions.Deciding(leaves, (one, other) => one == other));
    }

    /// <summary>The second is asked for only where the first is there, the third only where the first is not; the first contains the third.</summary>
    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void Are_decided_by_an_unknown_only_where_the_rest_can_be_the_same(bool contains, bool decides)
    {
        var ladder = new UnknownFact.Runtime(Parts.Win98, Parts.Direct3D.At(1));
        var same = ladder with { Level = contains ? Parts.Direct3D.At(2) : Parts.OpenGl.At(2) };
        UnknownFact first = Unknowns[0];
        List<Leaf<string>> leaves =
        [
            new(new Dictionary<UnknownFact, Support> { [first] = Support.No, [ladder] = Support.No }, "out"),
            new(new Dictionary<UnknownFact, Support> { [first] = Support.Yes, [same] = Support.Yes }, "in"),
        ];
        Assert.Equal(decides ? [first] : [], Completions.Deciding(leaves, (one, other) => one == other));
        leaves.Reverse();
        Assert.Equal(decides ? [first] : [], Completions.Deciding(leaves, (one, other) => one == other));
        Assert.Equal([first], Completions.Parting(leaves, (one, other) => one == other));
    }

    [Fact]
    public void Are_decided_by_an_unknown_of_which_other_levels_are_settled_alike()
    {
        var (low, high) = (new UnknownFact.Runtime(Parts.Win98, Parts.Direct3D.At(1)), new UnknownFact.Runtime(Parts.Win98, Parts.Direct3D.At(2)));
        List<Leaf<string>> leaves =
        [
            new(new Dictionary<UnknownFact, Support> { [Unknowns[0]] = Support.No, [Unknowns[1]] = Support.Yes, [low] = Support.Yes }, "out"),
            new(new Dictionary<UnknownFact, Support> { [Unknowns[0]] = Support.Yes, [high] = Support.Yes }, "in"),
        ];
        Assert.Equal([Unknowns[0]], Completions.Deciding(leaves, (one, other) => one == other));
    }

    private static (string? Result, Question? Ask) Letters(IReadOnlyDictionary<UnknownFact, Support> settled, int count)
    {
        var letters = "";
        foreach (var unknown in Unknowns.Take(count))
        {
            if (!settled.TryGetValue(unknown, out var state))
                return (null, new Question(unknown, [Support.No, Support.Yes]));
            letters += state == Support.Yes ? 'y' : 'n';
        }

        return (letters, null);
    }

    private static (string? Result, Question? Ask) Noted((string? Result, Question? Ask) step, List<string> tried)
    {
        if (step.Result is { } result)
            tried.Add(result);
        return step;
    }
}

/// <summary>A need that applies only under some answers (rule R11): the first answer is the lowest bit of the table.</summary>
public sealed class A_need_that_applies_sometimes
{
    private static readonly Answer[] Open =
        [.. Enumerable.Range(0, 3).Select(i => Answer.YesOrNo(new UnknownFact.CardOs(Parts.Heron16, new Os { Id = $"os-{i}", Name = "OS" })))];

    [Fact]
    public void Is_tabled_over_the_answers_that_change_something()
    {
        var first = Applicability.Of(Open, yes => yes.Contains(Open[0]) && !yes.Contains(Open[2]));
        Assert.Equal([Open[0], Open[2]], first.Open);
        Assert.Equal([false, true, false, false], first.When);
        Assert.Equal([true], Applicability.Of(Open, _ => true).When);
        Assert.Empty(Applicability.Of(Open, _ => true).Open);
        Assert.Equal([true], Applicability.Certain(true).When);
    }

    [Theory]
    [InlineData(Support.No, Support.No, false)]
    [InlineData(Support.Yes, Support.No, true)]
    [InlineData(Support.No, Support.Yes, false)]
    [InlineData(Support.Yes, Support.Yes, false)]
    [InlineData(Support.Broken, Support.No, false)]
    public void Is_looked_up_once_they_are_settled(Support one, Support other, bool applies)
    {
        var need = Applicability.Of(Open, yes => yes.Contains(Open[0]) && !yes.Contains(Open[2]));
        var settled = new Dictionary<UnknownFact, Support> { [Open[0].Open!] = one, [Open[2].Open!] = other };
        Assert.Equal(applies, need.Holds(settled, out var ask));
        Assert.Null(ask);
    }

    [Fact]
    public void Asks_for_the_first_that_is_not_settled()
    {
        var need = Applicability.Of(Open, yes => yes.Count > 0);
        Assert.False(need.Holds(new Dictionary<UnknownFact, Support> { [Open[0].Open!] = Support.Yes }, out var ask));
        Assert.Same(Open[1], ask);
    }
}
