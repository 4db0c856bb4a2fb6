using FeatureMatrix.Model;
using static FeatureMatrix.Tests.Model.Parts;
using State = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Model;

/// <summary>What a statement about one level of a ladder says of each of its three levels (rules R1 and R2).</summary>
public sealed class A_statement_about_a_level
{
    [Theory]
    [InlineData(Reach.UpTo, State.Yes, "Yes Yes No")]
    [InlineData(Reach.UpTo, State.Broken, "Broken Broken No")]
    [InlineData(Reach.UpTo, State.No, "No No No")]
    [InlineData(Reach.AtLeast, State.Yes, "Yes Yes Unknown")]
    [InlineData(Reach.AtLeast, State.Emulated, "Emulated Emulated Unknown")]
    [InlineData(Reach.At, State.Yes, "Unknown Yes Unknown")]
    [InlineData(Reach.At, State.Broken, "Unknown Broken Unknown")]
    [InlineData(Reach.At, State.No, "Unknown No No")]
    public void Says_of_each_level_no_more_than_follows(Reach reach, State support, string claims)
    {
        var fact = new SupplyFact(Scope.Everything, Direct3D.At(2), reach, support, Word);
        Assert.Equal(claims, string.Join(' ', new[] { 1, 2, 3 }.Select(step => fact.ClaimFor(Direct3D.At(step)))));
        Assert.Equal(State.Unknown, fact.ClaimFor(OpenGl.At(2)));
    }
}

/// <summary>Evidence for something less direct than what it was written for (rule R9).</summary>
public sealed class Capped_evidence
{
    [Theory]
    [InlineData(Grade.Hearsay, Grade.Hearsay)]
    [InlineData(Grade.Inferred, Grade.Inferred)]
    [InlineData(Grade.Documented, Grade.Inferred)]
    [InlineData(Grade.Measured, Grade.Inferred)]
    public void Is_never_better_than_its_limit(Grade grade, Grade expected) =>
        Assert.Equal(Word with { Grade = expected }, (Word with { Grade = grade }).AtMost(Grade.Inferred));

    [Fact]
    public void Is_the_same_where_it_is_no_better() => Assert.Same(Word, Word.AtMost(Word.Grade));
}

/// <summary>Levels of a feature.</summary>
public sealed class A_ladder
{
    [Fact]
    public void Has_a_step_for_each_level_and_a_flag_has_one()
    {
        Assert.Equal(["5", "6", "7"], Enumerable.Range(1, Direct3D.Steps).Select(step => Direct3D.At(step).Level));
        Assert.Equal((1, "", "fog-table"), (Fog.Steps, Fog.At(1).Level, Fog.At(1).ToString()));
        Assert.Equal("direct3d 6", Direct3D.At(2).ToString());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void Has_no_step_beyond_its_ends(int step) => Assert.Throws<ArgumentOutOfRangeException>(() => Direct3D.At(step));

    [Fact]
    public void Finds_a_level_by_its_name_and_none_by_another()
    {
        Assert.Equal(Direct3D.At(3), Direct3D.At("7"));
        Assert.Equal(Direct3D.At(1), Direct3D.At("5"));
        Assert.Null(Direct3D.At("8"));
    }
}

/// <summary>Small parts of a catalog whose values follow from others.</summary>
public sealed class What_follows_from_a_record
{
    [Fact]
    public void Split_memory_is_its_two_pools_together()
    {
        var split = new VideoMemory.Split(4 << 20, 8 << 20);
        Assert.Equal((4 << 20, 12 << 20), (split.FramePool, split.Total));
        var unified = new VideoMemory.Unified(8 << 20);
        Assert.Equal((8 << 20, 8 << 20), (unified.FramePool, unified.Total));
    }

    [Theory]
    [InlineData(null, false)]
    [InlineData(Strength.Cosmetic, true)]
    [InlineData(Strength.Bonus, true)]
    public void An_entry_is_a_must_have_where_it_states_a_tolerance(Strength? tolerance, bool mustHave)
    {
        var title = new Title { Id = "bay", Name = "Bay", Evidence = Word };
        Assert.Equal(mustHave, new LibraryEntry { Title = title, MustHaveTolerance = tolerance }.IsMustHave);
    }

    [Theory]
    [InlineData("Ada Example", true, "Ada Example")]
    [InlineData("Ada Example", false, "ada")]
    [InlineData("", true, "ada")]
    public void A_person_is_called_by_name_only_where_that_may_be_shown(string name, bool mayBeShown, string expected) =>
        Assert.Equal(expected, new Person("ada", name, mayBeShown).CalledBy);

    [Fact]
    public void A_policy_that_states_nothing_permits_all_but_forcing_and_software_on_one_driver_for_each_system()
    {
        var wrapper = new Wrapper { Id = "veil", Name = "Veil" };
        var plain = new Policy();
        Assert.Equal(
            (true, true, false, false, true, 1, 0.5, 0.8),
            (plain.Allows(Win98), plain.Allows(wrapper), plain.AllowForced, plain.AllowSoftware, plain.OneDriverPerOs,
                plain.Samples, plain.SevereWorth, plain.CosmeticWorth));
    }

    [Fact]
    public void A_policy_permits_just_what_its_lists_hold()
    {
        var (veil, mist) = (new Wrapper { Id = "veil", Name = "Veil" }, new Wrapper { Id = "mist", Name = "Mist" });
        var policy = Policy.Default with { Oses = [Win98], Wrappers = [veil] };
        Assert.Equal((true, false, true, false), (policy.Allows(Win98), policy.Allows(Win2000), policy.Allows(veil), policy.Allows(mist)));
    }

    [Fact]
    public void A_list_equals_one_with_the_same_members_in_the_same_order()
    {
        var list = new EquatableList<int>([1, 2, 3]);
        var same = new EquatableList<int>([1, 2, 3]);
        Assert.True(list.Equals(same));
        Assert.True(list.Equals((object)same));
        Assert.Equal(list.GetHashCode(), same.GetHashCode());
        Assert.False(list.Equals(new EquatableList<int>([1, 3, 2])));
        Assert.False(list.Equals(new EquatableList<int>([1, 2])));
        Assert.False(list.Equals(null));
        Assert.False(list.Equals((object)"[1, 2, 3]"));
        Assert.NotEqual(list.GetHashCode(), new EquatableList<int>([3, 2, 1]).GetHashCode());
        Assert.Equal("[1, 2, 3]", list.ToString());
    }
}
