using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

using Support = FeatureMatrix.Model.Support;

/// <summary>What settling one unknown says about another (rules R2 and R13): 1.4 of a ladder contains 1.1, palettes with alpha contain palettes.</summary>
public sealed class Unknowns_that_imply_each_other
{
    private static readonly Catalog World = Worlds.Load(
        WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md"),
        """
        chips: {crane: {name: Crane, source: manual}}
        wrappers: {veil: {name: Veil, versions: [{version: "1", offers: {glide: "2"}, on: direct3d 7, source: readme}, {version: "2", offers: {glide: "2"}, on: direct3d 7, source: readme}]}}
        """);

    private static readonly UnknownFact.Supply Plain = new(Of("tex-pal8"), World.Chips[0], null, World.Drivers.First(), World.Oses[0], Api("direct3d"));
    private static readonly UnknownFact.Supply Alpha = Plain with { Capability = Of("tex-pal-alpha") };

    [Theory]
    [InlineData(Support.Yes, Support.No, true)]
    [InlineData(Support.Broken, Support.No, true)]
    [InlineData(Support.Yes, Support.Yes, false)]
    [InlineData(Support.No, Support.No, false)]
    [InlineData(Support.No, Support.Yes, false)]
    public void Cannot_be_together_only_where_the_stronger_is_there_and_the_weaker_is_not(Support alpha, Support plain, bool excluded)
    {
        Assert.Equal(excluded, Implications.Exclude(Alpha, alpha, Plain, plain));
        Assert.Equal(excluded, Implications.Exclude(Plain, plain, Alpha, alpha));
    }

    [Fact]
    public void Leave_the_weaker_present_or_the_stronger_missing()
    {
        Support[] all = [Support.No, Support.Broken, Support.Yes];
        Assert.Equal([Support.Broken, Support.Yes], Implications.Consistent(Plain, all, Settled(Alpha, Support.Yes)));
        Assert.Equal(all, Implications.Consistent(Plain, all, Settled(Alpha, Support.No)));
        Assert.Equal([Support.No], Implications.Consistent(Alpha, all, Settled(Plain, Support.No)));
        Assert.Equal(all, Implications.Consistent(Alpha, all, Settled(Plain, Support.Yes)));
    }

    [Fact]
    public void Leave_all_where_nothing_possible_would_be_left() =>
        Assert.Equal([Support.No], Implications.Consistent(Plain, [Support.No], Settled(Alpha, Support.Yes)));

    [Fact]
    public void Still_leave_it_present_after_what_says_nothing()
    {
        var settled = new Dictionary<UnknownFact, Support> { [Alpha] = Support.Yes, [Plain with { Capability = Of("fog-table") }] = Support.Yes, [Alpha with { Capability = Of("tex-dxt1") }] = Support.No };
        Assert.Equal([Support.Yes], Implications.Consistent(Plain, [Support.No, Support.Yes], settled));
    }

    [Fact]
    public void Leave_the_same_where_two_say_it()
    {
        var bits = Enumerable.Range(1, 3).Select(step => Plain with { Capability = Api("stencil-bits").At(step) }).ToList();
        Support[] all = [Support.No, Support.Yes];
        Assert.Equal([Support.Yes], Implications.Consistent(bits[0], all, new Dictionary<UnknownFact, Support> { [bits[1]] = Support.Yes, [bits[2]] = Support.Yes }));
        Assert.Equal([Support.No], Implications.Consistent(bits[2], all, new Dictionary<UnknownFact, Support> { [bits[0]] = Support.No, [bits[1]] = Support.No }));
    }

    [Fact]
    public void Are_linked_in_both_directions_and_to_themselves()
    {
        Assert.True(Implications.AreLinked(Alpha, Plain));
        Assert.True(Implications.AreLinked(Plain, Alpha));
        Assert.True(Implications.AreLinked(Plain, Plain));
        Assert.False(Implications.AreLinked(Plain, Plain with { Capability = Of("tex-dxt1") }));
    }

    [Fact]
    public void Are_about_the_same_chip_card_driver_system_and_interface()
    {
        Assert.False(Implications.AreLinked(Alpha, Plain with { Chip = World.Chips[1] }));
        Assert.False(Implications.AreLinked(Alpha, Plain with { Card = World.Cards[0] }));
        Assert.False(Implications.AreLinked(Alpha, Plain with { Driver = World.Drivers.Last() }));
        Assert.False(Implications.AreLinked(Alpha, Plain with { Os = World.Oses[1] }));
        Assert.False(Implications.AreLinked(Alpha, Plain with { Api = Api("glide") }));
    }

    [Fact]
    public void Are_about_the_same_wrapper_version()
    {
        var versions = World.WrapperVersions.ToList();
        var alpha = new UnknownFact.WrapperSupply(Alpha.Capability, versions[0]);
        Assert.True(Implications.AreLinked(alpha, new UnknownFact.WrapperSupply(Plain.Capability, versions[0])));
        Assert.False(Implications.AreLinked(alpha, new UnknownFact.WrapperSupply(Plain.Capability, versions[1])));
        Assert.False(Implications.AreLinked(alpha, Plain));
    }

    [Fact]
    public void Are_runtimes_of_the_same_system()
    {
        var eight = new UnknownFact.Runtime(World.Oses[0], Api("direct3d").At(6));
        Assert.True(Implications.AreLinked(eight, new UnknownFact.Runtime(World.Oses[0], Api("direct3d").At(5))));
        Assert.False(Implications.AreLinked(eight, new UnknownFact.Runtime(World.Oses[1], Api("direct3d").At(5))));
        Assert.False(Implications.AreLinked(eight, new UnknownFact.Runtime(World.Oses[0], Api("directdraw").At(1))));
    }

    [Fact]
    public void Are_tied_through_others()
    {
        var implications = new Implications(World.Features);
        Assert.Equal(["tex-pal-alpha", "tex-pal8"], implications.TiedTo(Plain.Capability).Select(one => one.Feature.Id).Order(StringComparer.Ordinal));
        Assert.Equal(["tex-pal-alpha", "tex-pal8"], implications.TiedTo(Alpha.Capability).Select(one => one.Feature.Id).Order(StringComparer.Ordinal));
        Assert.Equal([1, 2, 3], implications.TiedTo(Api("stencil-bits").At(2)).Select(one => one.Step).Order());
        Assert.Equal([1, 2], implications.WeakerThan(Api("stencil-bits").At(3)).Select(one => one.Step));
        Assert.Equal([2, 3], implications.StrongerThan(Api("stencil-bits").At(1)).Select(one => one.Step));
    }

    private static Dictionary<UnknownFact, Support> Settled(UnknownFact unknown, Support state) => new() { [unknown] = state };

    private static Capability Of(string id) => Api(id).At(1);

    private static Feature Api(string id) => World.Features.Single(feature => feature.Id == id);
}
