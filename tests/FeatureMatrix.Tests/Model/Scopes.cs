using FeatureMatrix.Model;
using static FeatureMatrix.Tests.Model.Parts;

namespace FeatureMatrix.Tests.Model;

/// <summary>What a statement's scope covers, and which of two is the narrower (rule R1).</summary>
public sealed class A_scope
{
    private static readonly Dictionary<string, Scope> Named = new()
    {
        ["everything"] = Scope.Everything,
        ["chip"] = new() { Chip = Heron },
        ["other chip"] = new() { Chip = Crane },
        ["card"] = new() { Card = Heron16 },
        ["other card"] = new() { Card = Crane16 },
        ["chip and card"] = new() { Chip = Heron, Card = Heron16 },
        ["versions 1 to 2"] = new() { Drivers = new(Steady, 1, 2) },
        ["versions 0 to 2"] = new() { Drivers = new(Steady, 0, 2) },
        ["versions 1 to 3"] = new() { Drivers = new(Steady, 1, 3) },
        ["versions 2 to 3"] = new() { Drivers = new(Steady, 2, 3) },
        ["version 1"] = new() { Drivers = DriverRange.Only(Steady.Versions[1]) },
        ["other branch"] = new() { Drivers = new(Moving, 0, 3) },
        ["moving 0"] = new() { Drivers = new(Moving, 0, 0) },
        ["moving 1"] = new() { Drivers = new(Moving, 1, 1) },
        ["moving 0 under 2000"] = new() { Drivers = new(Moving, 0, 0), Os = Win2000 },
        ["moving 2 to 3"] = new() { Drivers = new(Moving, 2, 3) },
        ["98"] = new() { Os = Win98 },
        ["2000"] = new() { Os = Win2000 },
        ["chip under 98"] = new() { Chip = Heron, Os = Win98 },
        ["Direct3D"] = new() { Api = Direct3D },
        ["OpenGL"] = new() { Api = OpenGl },
        ["98 by Direct3D"] = new() { Os = Win98, Api = Direct3D },
    };

    [Theory]
    [InlineData("chip", "everything")]
    [InlineData("card", "everything")]
    [InlineData("card", "chip")]
    [InlineData("chip and card", "chip")]
    [InlineData("version 1", "everything")]
    [InlineData("version 1", "versions 1 to 2")]
    [InlineData("versions 1 to 2", "versions 0 to 2")]
    [InlineData("versions 1 to 2", "versions 1 to 3")]
    [InlineData("versions 1 to 2", "98")]
    [InlineData("moving 0", "98")]
    [InlineData("moving 2 to 3", "2000")]
    [InlineData("moving 0 under 2000", "2000")]
    [InlineData("98", "everything")]
    [InlineData("chip under 98", "chip")]
    [InlineData("chip under 98", "98")]
    [InlineData("Direct3D", "everything")]
    [InlineData("98 by Direct3D", "Direct3D")]
    [InlineData("98 by Direct3D", "98")]
    public void Is_narrower_than_one_that_covers_all_its_setups_and_more(string narrow, string wide)
    {
        Assert.True(Named[narrow].IsWithin(Named[wide]));
        Assert.True(Named[narrow].IsNarrowerThan(Named[wide]));
        Assert.False(Named[wide].IsWithin(Named[narrow]));
        Assert.False(Named[wide].IsNarrowerThan(Named[narrow]));
    }

    [Theory]
    [InlineData("chip", "other chip")]
    [InlineData("chip", "other card")]
    [InlineData("card", "other card")]
    [InlineData("card", "other chip")]
    [InlineData("chip", "98")]
    [InlineData("chip", "versions 1 to 2")]
    [InlineData("versions 0 to 2", "versions 1 to 3")]
    [InlineData("version 1", "versions 2 to 3")]
    [InlineData("version 1", "other branch")]
    [InlineData("other branch", "98")]
    [InlineData("moving 1", "98")]
    [InlineData("moving 0 under 2000", "98")]
    [InlineData("moving 2 to 3", "98")]
    [InlineData("98", "2000")]
    [InlineData("Direct3D", "OpenGL")]
    [InlineData("98 by Direct3D", "2000")]
    [InlineData("98 by Direct3D", "OpenGL")]
    [InlineData("98 by Direct3D", "chip under 98")]
    public void Is_as_wide_as_one_that_covers_other_setups(string one, string other)
    {
        Assert.False(Named[one].IsWithin(Named[other]));
        Assert.False(Named[other].IsWithin(Named[one]));
        Assert.False(Named[one].IsNarrowerThan(Named[other]));
        Assert.False(Named[other].IsNarrowerThan(Named[one]));
    }

    [Theory]
    [InlineData("card", "chip and card")]
    [InlineData("98", "98")]
    [InlineData("versions 1 to 2", "versions 1 to 2")]
    public void Is_no_narrower_than_one_that_covers_the_same(string one, string other)
    {
        Assert.True(Named[one].IsWithin(Named[other]));
        Assert.True(Named[other].IsWithin(Named[one]));
        Assert.False(Named[one].IsNarrowerThan(Named[other]));
    }

    [Theory]
    [InlineData("everything", true)]
    [InlineData("chip", true)]
    [InlineData("other chip", false)]
    [InlineData("card", true)]
    [InlineData("other card", false)]
    [InlineData("version 1", true)]
    [InlineData("versions 0 to 2", true)]
    [InlineData("versions 2 to 3", false)]
    [InlineData("other branch", false)]
    [InlineData("98", true)]
    [InlineData("2000", false)]
    [InlineData("Direct3D", true)]
    [InlineData("OpenGL", false)]
    [InlineData("98 by Direct3D", true)]
    public void Covers_a_setup_that_has_all_it_names(string scope, bool covers) =>
        Assert.Equal(covers, Named[scope].Covers(Heron16, Steady.Versions[1], Win98, Direct3D));

    [Fact]
    public void Of_a_card_does_not_cover_its_sister() => Assert.False(Named["chip and card"].Covers(Heron8, Steady.Versions[1], Win98, Direct3D));
}

/// <summary>A run of versions of one branch, both ends included.</summary>
public sealed class A_run_of_versions
{
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    public void Has_its_ends_and_what_is_between(int order, bool inside)
    {
        Assert.Equal(inside, new DriverRange(Steady, 1, 2).Contains(Steady.Versions[order]));
        Assert.False(new DriverRange(Steady, 1, 2).Contains(Moving.Versions[order]));
    }

    [Theory]
    [InlineData(0, 0, "windows-98se")]
    [InlineData(0, 1, null)]
    [InlineData(1, 1, null)]
    [InlineData(1, 2, null)]
    [InlineData(2, 3, "windows-2000")]
    [InlineData(0, 3, null)]
    public void Needs_a_system_where_all_of_it_is_made_for_that_one_alone(int first, int last, string? os) =>
        Assert.Equal(os, new DriverRange(Moving, first, last).OnlyOs()?.Id);

    [Fact]
    public void Needs_none_where_versions_are_made_for_different_ones()
    {
        var branch = new DriverBranch { Id = "turning", Name = "Turning" };
        branch.Link([Moving.Versions[0], Moving.Versions[2], Moving.Versions[3]]);
        Assert.Null(new DriverRange(branch, 0, 2).OnlyOs());
        Assert.Null(new DriverRange(branch, 0, 1).OnlyOs());
    }
}
