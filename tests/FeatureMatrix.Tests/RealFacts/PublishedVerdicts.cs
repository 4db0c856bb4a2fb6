using System.Globalization;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.RealFacts;

/// <summary>
/// Real chips and real programs (tests/FeatureMatrix.Tests/RealFacts/collection, every statement with its document): the
/// verdicts that the documents themselves state or that follow from two of them.
/// </summary>
public sealed class PublishedVerdicts
{
    private static readonly Lazy<LoadResult> Loaded = new(Load);

    private static Catalog Catalog
    {
        get
        {
            Assert.NotNull(Loaded.Value.Catalog);
            return Loaded.Value.Catalog;
        }
    }

    [Fact]
    public void The_collection_loads_without_fault_or_unsourced_fact() =>
        Assert.True(Loaded.Value.Faults.Count == 0, string.Join('\n', Loaded.Value.Faults));

    [Theory]

    // savage(4), DESCRIPTION: 3D on all chips but the Savage2000; pulsar(6x), DESCRIPTION: it requires OpenGL.
    [InlineData("pulsar", "savage2000-board", "Mesa 7.10.2", "does not run")]
    [InlineData("pulsar", "sr9", "Mesa 7.10.2", "runs")]

    // torcs(6), -s: very old cards do without multitexturing; Mesa 7.10.2 sets two texture units for Savage4 and G400.
    [InlineData("torcs", "sr9", "Mesa 7.10.2", "runs")]
    [InlineData("torcs", "millennium-g400-16", "Mesa 7.10.2", "runs")]

    // mplayer(1), gl: a video must fit in the largest texture; Mesa 7.10.2 gives the Banshee 9 levels, 256 texels.
    [InlineData("mplayer-gl", "banshee-board", "Mesa 7.10.2", "does not run")]

    // mplayer(1), gl:yuv=2: needs GL_ARB_fragment_program and three texture units.
    [InlineData("mplayer-gl-yuv2", "banshee-board", "Mesa 7.10.2", "does not run")]
    [InlineData("mplayer-gl-yuv2", "millennium-g400-32", "Mesa 7.10.2", "does not run")]
    [InlineData("mplayer-gl-yuv2", "sr9", "Mesa 7.10.2", "does not run")]

    // FooBillard++ README: with less than 50 to 80 MB of video memory the picture may be spoilt.
    [InlineData("foobillardplus", "millennium-g400-32", "Mesa 7.10.2", "runs, Severe mem-local 64 Missing")]

    // Neverball's manual: on weak hardware the setting for anisotropic filtering has no effect, which is no loss.
    [InlineData("neverball", "millennium-g400-16", "Mesa 7.10.2", "runs")]
    public void Documents_and_resolver_agree(string title, string card, string driver, string verdict)
    {
        var range = Verdict(title, card, driver).Headline.Range;
        Assert.True(range.IsCertain, $"{range.Best} to {range.Worst}, decided by {string.Join(", ", range.Deciding)}");
        Assert.Equal(verdict, range.Best.ToString());
    }

    [Theory]

    // Mesa 7.10.2 sets one texture unit for Savage3D, G200 and Banshee, two for the VSA-100.
    [InlineData("torcs", "savage3d-board", "Mesa 7.10.2", "runs, Ungraded mt-units 2 Missing")]
    [InlineData("torcs", "g200-board", "Mesa 7.10.2", "runs, Ungraded mt-units 2 Missing")]
    [InlineData("torcs", "banshee-board", "Mesa 7.10.2", "runs, Ungraded mt-units 2 Missing")]
    [InlineData("torcs", "vsa-100-board", "Mesa 7.10.2", "runs")]

    // DRI User Guide 10.1.4: with trilinear filtering the Banshee sometimes miscolours the lowest mip level; GLtron's changelog:
    // one chooses between bilinear and trilinear.
    [InlineData("gltron", "banshee-board", "XFree86 4.2", "runs, Ungraded filter-trilinear WrongPicture")]

    // DRI User Guide 10.1.4 and 10.1.2: stencil by software on the Banshee, by hardware (8 bits at 32 bits a pixel) on the VSA-100;
    // BZFlag 2.0.14: one stencil plane for stencil shadows. Emulated stencil meets the need.
    [InlineData("bzflag", "banshee-board", "XFree86 4.2", "runs")]
    [InlineData("bzflag", "vsa-100-board", "XFree86 4.2", "runs")]

    // Mesa 7.10.2 gives the VSA-100 12 levels, 2048 texels.
    [InlineData("mplayer-gl", "vsa-100-board", "Mesa 7.10.2", "runs")]
    [InlineData("pulsar", "savage3d-board", "Mesa 7.10.2", "runs")]
    public void They_agree_on_all_but_the_memory_that_no_document_gives(string title, string card, string driver, string atBest)
    {
        var range = Verdict(title, card, driver).Headline.Range;
        Assert.Equal(atBest, range.Best.ToString());
        Assert.Equal(["does not run", atBest], range.Outcomes.Select(outcome => outcome.ToString()!).Order(StringComparer.Ordinal));
        Assert.Equal([card], range.Deciding.Cast<UnknownFact.FrameBuffer>().Select(unknown => unknown.Card.Id));
    }

    [Theory]

    // mplayer(1), gl:rectangle=2 asks for GL_ARB_texture_non_power_of_two; no document read says whether this chip has it.
    [InlineData("mplayer-gl-npot", "millennium-g400-16", "Mesa 7.10.2", "tex-npot")]

    // The DRI User Guide says nothing of trilinear filtering on the G400.
    [InlineData("gltron", "millennium-g400-16", "XFree86 4.2", "filter-trilinear")]
    public void What_no_document_says_stays_unknown(string title, string card, string driver, string decidedBy)
    {
        var range = Verdict(title, card, driver).Headline.Range;
        Assert.False(range.IsCertain);
        Assert.Equal([decidedBy], range.Deciding.Cast<UnknownFact.Supply>().Select(unknown => unknown.Capability.ToString()));
    }

    [Theory] // Vendor, device and subsystem lines of pci.ids, Debian package pci.ids; its subsystem lines give the vendor first.
    [InlineData("millennium-g400-16", "102b", "0525", "102b 0328  Millennium G400 16Mb SDRAM")]
    [InlineData("millennium-g400-32", "102b", "0525", "102b 0378  Millennium G400 32Mb SDRAM")]
    [InlineData("sr9", "5333", "8a22", "105d 0018  SR9 8Mb SDRAM")]
    public void Boards_carry_the_ids_and_memory_of_the_public_list(string id, string vendor, string device, string subsystem)
    {
        var lines = File.ReadAllLines(External.File("/usr/share/misc/pci.ids", "pci.ids"));
        var board = lines.SkipWhile(line => !line.StartsWith(vendor + "  ", StringComparison.Ordinal))
            .SkipWhile(line => !line.StartsWith($"\t{device}  ", StringComparison.Ordinal)).Skip(1)
            .TakeWhile(line => line.StartsWith("\t\t", StringComparison.Ordinal)).Single(line => line == "\t\t" + subsystem);
        var card = Catalog.Cards.Single(c => c.Id == id);
        Assert.Equal(
            [$@"PCI\VEN_{vendor}&DEV_{device}&SUBSYS_{board[7..11]}{board[2..6]}".ToUpperInvariant()],
            card.HardwareIds.Select(hardwareId => hardwareId.ToUpperInvariant()));
        var megabytes = int.Parse(board.Split(' ').Single(word => word.EndsWith("Mb", StringComparison.Ordinal))[..^2], CultureInfo.InvariantCulture);
        Assert.Equal(new VideoMemory.Unified(megabytes * 1024L * 1024), card.Memory);
    }

    [Fact]
    public void Enough_of_the_trade_is_real()
    {
        var catalog = Catalog;
        Assert.Equal(
            ["banshee", "g200", "g400", "savage2000", "savage3d", "savage4", "vsa-100"],
            catalog.Chips.Select(chip => chip.Id).Order(StringComparer.Ordinal));
        Assert.Equal(9, catalog.Titles.Count);
        Assert.All(catalog.Facts, fact => Assert.NotNull(fact.Evidence.Source));
        Assert.All(catalog.Titles.SelectMany(t => t.Renderers).SelectMany(r => r.Needs), need => Assert.NotNull(need.Evidence.Source));
    }

    private static Verdict Verdict(string title, string card, string driver)
    {
        var catalog = Catalog;
        var resolver = new Resolver(catalog);
        var setup = resolver.SetupsOf(catalog.Cards.Single(c => c.Id == card)).Single(s => s.Driver.Version == driver);
        return resolver.Resolve(catalog.Titles.Single(t => t.Id == title), setup);
    }

    private static LoadResult Load()
    {
        var texts = CollectionFolder.Read(
            Repository.PathTo("tests", "FeatureMatrix.Tests", "RealFacts", "collection"), Repository.PathTo("data", "vocabulary"));
        return CollectionLoader.Load(texts.Files, texts.Faults);
    }
}
