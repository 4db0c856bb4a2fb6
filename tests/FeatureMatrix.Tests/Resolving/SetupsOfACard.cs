using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Which drivers a card can have where (rules R7, R9 and R13), best first.</summary>
public sealed class Setups_of_a_card
{
    private static readonly Os Dos = new() { Id = "dos", Name = "MS-DOS", IsDos = true };

    [Fact]
    public void Are_listed_ones_before_forced_ones_before_unrecorded_ones_then_by_system_branch_and_newest_version() => Assert.Equal(
        [
            "beta@2 on windows-2000 Listed", "alpha@1 on windows-98se Listed", "beta@2 on windows-98se Listed", "beta@1 on windows-98se Listed",
            "gamma@1 on windows-2000 Forced", "gamma@1 on windows-98se Forced",
            "unrecorded@dos on dos Unrecorded", "unrecorded@windows-2000 on windows-2000 Unrecorded", "unrecorded@windows-98se on windows-98se Unrecorded",
        ],
        SetupsOf(
            Parts.Heron16,
            Branch("gamma", DriverKind.Package, [Parts.Heron8], [Parts.Win98, Parts.Win2000]),
            Branch("beta", DriverKind.Package, [Parts.Heron16], [Parts.Win98], [Parts.Win98, Parts.Win2000]),
            Branch("alpha", DriverKind.Package, [Parts.Heron16, Parts.Heron8], [Parts.Win98])));

    [Fact]
    public void Hold_no_driver_that_lists_neither_it_nor_a_card_of_its_chip() => Assert.Equal(
        ["unrecorded@dos on dos Unrecorded", "unrecorded@windows-2000 on windows-2000 Unrecorded", "unrecorded@windows-98se on windows-98se Unrecorded"],
        SetupsOf(Parts.Heron16, Branch("crane", DriverKind.Package, [Parts.Crane16], [Parts.Win98])));

    [Fact]
    public void Hold_a_driver_that_lists_a_sister_beside_cards_of_other_chips() => Assert.Contains(
        "mixed@1 on windows-98se Forced", SetupsOf(Parts.Heron16, Branch("mixed", DriverKind.Package, [Parts.Crane16, Parts.Heron8], [Parts.Win98])));

    [Fact]
    public void Hold_neither_the_BIOS_nor_the_extension_of_a_sister() => Assert.Equal(
        ["unrecorded@dos on dos Unrecorded", "unrecorded@windows-2000 on windows-2000 Unrecorded", "unrecorded@windows-98se on windows-98se Unrecorded"],
        SetupsOf(Parts.Heron16, Branch("heron-8-bios", DriverKind.Bios, [Parts.Heron8], [Dos]), Branch("heron-8-vbe", DriverKind.VbeExtension, [Parts.Heron8], [Dos])));

    [Fact]
    public void Hold_nothing_unrecorded_in_DOS_where_the_BIOS_is_recorded() => Assert.Equal(
        ["heron-16-bios@1 on dos Listed", "unrecorded@windows-2000 on windows-2000 Unrecorded", "unrecorded@windows-98se on windows-98se Unrecorded"],
        SetupsOf(Parts.Heron16, Branch("heron-16-bios", DriverKind.Bios, [Parts.Heron16], [Dos])));

    [Fact]
    public void Hold_something_unrecorded_in_DOS_where_only_an_extension_is_recorded() => Assert.Equal(
        ["vbe@1 on dos Listed", "unrecorded@dos on dos Unrecorded", "unrecorded@windows-2000 on windows-2000 Unrecorded", "unrecorded@windows-98se on windows-98se Unrecorded"],
        SetupsOf(Parts.Heron16, Branch("vbe", DriverKind.VbeExtension, [Parts.Heron16], [Dos])));

    [Fact]
    public void Hold_nothing_unrecorded_where_the_list_is_declared_complete()
    {
        var card = new Card { Id = "heron-32", Name = "Heron 32", Chip = Parts.Heron, DriversCompleteFor = new HashSet<Os> { Dos, Parts.Win98 }, Evidence = Parts.Word };
        Assert.Equal(["unrecorded@windows-2000 on windows-2000 Unrecorded"], SetupsOf(card));
    }

    [Fact]
    public void Stand_on_an_unrecorded_driver_that_is_a_branch_of_its_own()
    {
        var setup = new SetupFinder(new Catalog { Oses = [Parts.Win98] }).Of(Parts.Heron16).Single();
        Assert.Equal((DriverKind.Unrecorded, "unrecorded", 0), (setup.Driver.Kind, setup.Driver.Branch.Id, setup.Driver.Order));
        Assert.Equal([setup.Driver], setup.Driver.Branch.Versions);
        Assert.Equal([Parts.Win98], setup.Driver.Oses);
    }

    private static IEnumerable<string> SetupsOf(Card card, params DriverBranch[] branches) =>
        new SetupFinder(new Catalog { Oses = [Parts.Win98, Dos, Parts.Win2000], Branches = branches }).Of(card).Select(setup => $"{setup.Driver} on {setup.Os} {setup.Install}");

    private static DriverBranch Branch(string id, DriverKind kind, Card[] lists, params IReadOnlyList<Os>[] versions)
    {
        var branch = new DriverBranch { Id = id, Name = id };
        branch.Link([.. versions.Select((oses, order) => new Driver
        {
            Id = $"{id}@{order + 1}",
            Kind = kind,
            Branch = branch,
            Version = $"{order + 1}",
            Order = order,
            Oses = oses,
            Lists = lists,
            Evidence = Parts.Word,
        })]);
        return branch;
    }
}

/// <summary>Which of two equally good routes comes first (rule R16): each pair differs in one thing, or in a weightier one the other way round.</summary>
public sealed class Of_two_equally_good_routes
{
    private static readonly Title Bay = new() { Id = "bay", Name = "Bay", Evidence = Parts.Word };
    private static readonly Renderer A = new() { Id = "a", Title = Bay, Oses = [] };
    private static readonly Renderer B = new() { Id = "b", Title = Bay, Oses = [] };
    private static readonly WrapperVersion[] Mist = Versions("mist");
    private static readonly WrapperVersion[] Veil = Versions("veil");
    private static readonly Route Base = new(A, new Setup(Parts.Heron16, Parts.Steady.Versions[1], Parts.Win98, Install.Listed), null);

    private static readonly Route[] InOrder =
    [
        Base with { Setup = Base.Setup with { Os = Parts.Win2000 }, Renderer = B },
        Base with { Setup = Base.Setup with { Driver = Parts.Moving.Versions[1] } },
        Base with { Setup = Base.Setup with { Driver = Parts.Moving.Versions[0] } },
        Base with { Setup = Base.Setup with { Driver = Parts.Steady.Versions[2] }, Renderer = B },
        Base,
        Base with { Renderer = B },
        Base with { Setup = Base.Setup with { Driver = Parts.Steady.Versions[0] } },
        Base with { Setup = Base.Setup with { Os = Parts.Win2000, Install = Install.Forced } },
        Base with { Setup = Base.Setup with { Install = Install.Unrecorded } },
        Base with { Setup = Base.Setup with { Os = Parts.Win2000 }, Wrapper = Veil[0] },
        Base with { Wrapper = Mist[1] },
        Base with { Wrapper = Mist[0] },
        Base with { Wrapper = Veil[1] },
        Base with { Renderer = B, Wrapper = Mist[1] },
        Base with { Setup = Base.Setup with { Install = Install.Forced }, Wrapper = Mist[1] },
    ];

    [Fact]
    public void The_one_comes_first_that_is_native_then_listed_then_by_system_and_branch_then_newer_then_by_name()
    {
        for (var i = 0; i < InOrder.Length; i++)
        {
            Assert.Equal(0, Route.ComparePreference(InOrder[i], InOrder[i] with { }));
            for (var j = i + 1; j < InOrder.Length; j++)
            {
                Assert.True(Route.ComparePreference(InOrder[i], InOrder[j]) < 0, $"{InOrder[i]} before {InOrder[j]}");
                Assert.True(Route.ComparePreference(InOrder[j], InOrder[i]) > 0, $"{InOrder[j]} after {InOrder[i]}");
            }
        }
    }

    [Fact]
    public void Each_names_its_parts()
    {
        Assert.Equal("bay/a on heron-16 + steady@1 on windows-98se", Base.ToString());
        Assert.Equal("bay/a on heron-16 + steady@1 on windows-98se through mist@2", (Base with { Wrapper = Mist[1] }).ToString());
    }

    [Theory]
    [InlineData(Install.Listed, false, Forbidden.Nothing)]
    [InlineData(Install.Forced, false, Forbidden.Forcing)]
    [InlineData(Install.Unrecorded, false, Forbidden.Nothing)]
    [InlineData(Install.Listed, true, Forbidden.Nothing)]
    public void Each_is_permitted_by_a_policy_that_states_nothing_unless_forced(Install install, bool wrapped, Forbidden expected) =>
        Assert.Equal(expected, Terms.Default.Forbids(Base with { Setup = Base.Setup with { Install = install }, Wrapper = wrapped ? Veil[0] : null }));

    [Fact]
    public void Each_is_permitted_where_its_system_its_wrapper_and_forcing_are()
    {
        var terms = Terms.Default with { Policy = Policy.Default with { Oses = [Parts.Win98], Wrappers = [Veil[0].Wrapper], AllowForced = true } };
        Assert.Equal(Forbidden.Nothing, terms.Forbids(Base));
        Assert.Equal(Forbidden.Nothing, terms.Forbids(Base with { Setup = Base.Setup with { Install = Install.Forced }, Wrapper = Veil[1] }));
        Assert.Equal(Forbidden.Wrapper, terms.Forbids(Base with { Wrapper = Mist[0] }));
        Assert.Equal(Forbidden.Os, terms.Forbids(Base with { Setup = Base.Setup with { Os = Parts.Win2000 }, Wrapper = Mist[0] }));
    }

    private static WrapperVersion[] Versions(string id)
    {
        var wrapper = new Wrapper { Id = id, Name = id };
        wrapper.Link([.. new[] { "1", "2" }.Select(version => new WrapperVersion
        {
            Id = $"{id}@{version}",
            Wrapper = wrapper,
            Version = version,
            Offers = [],
            Target = Parts.Direct3D.At(1),
            Runtime = Parts.Direct3D.At(1),
            Evidence = Parts.Word,
        })]);
        return [.. wrapper.Versions];
    }
}
