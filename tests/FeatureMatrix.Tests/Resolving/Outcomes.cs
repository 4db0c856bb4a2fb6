using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Outcomes written as letters: s severe, u ungraded, c cosmetic; "-" nothing lost, "x" does not run (rule R14).</summary>
public sealed class Outcomes_in_order
{
    private static readonly Feature[] Features = [.. Enumerable.Range(0, 8).Select(i => new Feature { Id = $"f-{i}", Name = "F", Family = "f", Levels = ["1", "2"], Evidence = Parts.Word })];

    [Theory]
    [InlineData("-", "c")]
    [InlineData("cccc", "s")]
    [InlineData("sccc", "ss")]
    [InlineData("ssss", "x")]
    [InlineData("c", "u")]
    [InlineData("uc", "ucc")]
    [InlineData("sc", "uu")]
    public void Are_the_worse_the_graver_their_losses(string better, string worse)
    {
        Assert.True(Outcome.CompareWorst(Of(better), Of(worse)) < 0);
        Assert.True(Outcome.CompareWorst(Of(worse), Of(better)) > 0);
        Assert.True(OutcomeCode.AtWorst(Of(better)) < OutcomeCode.AtWorst(Of(worse)));
        Assert.NotEqual(Of(better), Of(worse));
    }

    [Theory]
    [InlineData("uu", "s")]
    [InlineData("c", "uc")]
    [InlineData("c", "u")]
    [InlineData("ccc", "uuuu")]
    [InlineData("suu", "ss")]
    [InlineData("uuuuu", "x")]
    public void Count_what_nobody_graded_as_cosmetic_at_best(string better, string worse)
    {
        Assert.True(Outcome.CompareBest(Of(better), Of(worse)) < 0);
        Assert.True(Outcome.CompareBest(Of(worse), Of(better)) > 0);
        Assert.True(OutcomeCode.AtBest(Of(better)) < OutcomeCode.AtBest(Of(worse)));
    }

    [Fact]
    public void Are_level_where_only_the_kind_of_a_loss_differs()
    {
        Assert.Equal(0, Outcome.CompareAtWorst(Of("s"), Of("u")));
        Assert.True(Outcome.CompareWorst(Of("u"), Of("s")) < 0);
        Assert.Equal(0, Outcome.CompareAtBest(Of("u"), Of("c")));
        Assert.Equal(0, Outcome.CompareWorst(Of("sc"), Of("cs")));
    }

    [Fact]
    public void List_the_gravest_first_and_then_by_name_and_level()
    {
        var outcome = Outcome.RunsWith([Lost(3, Strength.Cosmetic), Lost(1, Strength.Ungraded, 2), Lost(1, Strength.Ungraded), Lost(2, Strength.Severe), Lost(0, Strength.Ungraded)]);
        Assert.Equal("runs, Severe f-2 1 Missing, Ungraded f-0 1 Missing, Ungraded f-1 1 Missing, Ungraded f-1 2 Missing, Cosmetic f-3 1 Missing", outcome.ToString());
        Assert.Equal((1, 3, 1), (outcome.Severe, outcome.Ungraded, outcome.Cosmetic));
        Assert.Equal("runs", Outcome.RunsWith([]).ToString());
        Assert.Same(Outcome.Works, Outcome.RunsWith([]));
        Assert.Equal("does not run", Outcome.DoesNotRun.ToString());
    }

    [Fact]
    public void Are_equal_where_the_same_is_lost_as_gravely_and_in_the_same_way()
    {
        var loss = Lost(0, Strength.Severe);
        Assert.Equal(loss, Lost(0, Strength.Severe));
        Assert.Equal(loss.GetHashCode(), Lost(0, Strength.Severe).GetHashCode());
        Assert.NotEqual(loss, loss with { Strength = Strength.Cosmetic });
        Assert.NotEqual(loss, loss with { Kind = LossKind.WrongPicture });
        Assert.NotEqual(loss, Lost(1, Strength.Severe));
        Assert.NotEqual(loss, Lost(0, Strength.Severe, 2));
        Assert.False(loss.Equals(null));
        Assert.Equal(Of("ss"), Of("ss"));
        Assert.Equal(Of("ss").GetHashCode(), Of("ss").GetHashCode());
        Assert.True(Of("s").Equals((object)Of("s")));
        Assert.False(Of("s").Equals(null));
        Assert.False(Of("s").Equals((object)"s"));
        Assert.NotEqual(Of("s"), Of("sc"));
        Assert.NotEqual(Outcome.Works, Outcome.DoesNotRun);
        Assert.NotEqual(Outcome.RunsWith([loss]), Outcome.RunsWith([loss with { Kind = LossKind.NotInHardware }]));
    }

    [Fact]
    public void Cannot_lose_a_must() => Assert.Throws<ArgumentOutOfRangeException>(() => Outcome.RunsWith([Lost(0, Strength.Must)]));

    [Fact]
    public void Add_up_in_codes()
    {
        Assert.Equal((1 << 10) + (2 << 5) + 1, OutcomeCode.AtWorst(Of("scc")));
        Assert.Equal((2 << 10) + (1 << 5) + 1, OutcomeCode.AtWorst(Of("suc")));
        Assert.Equal((1 << 10) + (2 << 5) + 1, OutcomeCode.AtBest(Of("suc")));
        Assert.Equal(OutcomeCode.AtWorst(Of("succ")), OutcomeCode.AtWorst(Of("su")) + OutcomeCode.AtWorst(Of("cc")));
        Assert.Equal(OutcomeCode.DoesNotRun, OutcomeCode.AtWorst(Outcome.DoesNotRun));
        Assert.Equal(OutcomeCode.DoesNotRun, OutcomeCode.AtBest(Outcome.DoesNotRun));
        Assert.Equal((true, false, true, false), (OutcomeCode.Runs(0x7FFF), OutcomeCode.Runs(0x8000), OutcomeCode.IsComplete(0), OutcomeCode.IsComplete(1)));
    }

    private static Outcome Of(string letters) => letters switch
    {
        "x" => Outcome.DoesNotRun,
        "-" => Outcome.Works,
        _ => Outcome.RunsWith(letters.Select((letter, i) => Lost(i, letter switch { 's' => Strength.Severe, 'u' => Strength.Ungraded, _ => Strength.Cosmetic }))),
    };

    private static Loss Lost(int feature, Strength strength, int step = 1)
    {
        Capability[] choices = [Features[feature].At(step)];
        return new Loss(choices, strength, LossKind.Missing, new Need { Choices = choices, Strength = strength, Evidence = Parts.Word });
    }
}
