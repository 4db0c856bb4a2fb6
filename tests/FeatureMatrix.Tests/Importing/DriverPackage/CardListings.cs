using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.DriverPackage;

namespace FeatureMatrix.Tests.Importing.DriverPackage;

/// <summary>An invented package for one chip, device 0007 of vendor F0A1, and for one older chip.</summary>
public class Asking_a_package_for_a_card
{
    private const string Text = """
        [Version]
        Signature="$Chicago$"
        Class=Display
        [Manufacturer]
        %Maker%=Cards,NTx86.5.1
        [Cards]
        "Lantern 7"       = Lantern, PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2
        "Lantern 5"       = Lantern, PCI\VEN_F0A1&DEV_0005
        [Cards.NTx86.5.1]
        "Lantern 7"       = LanternXp, PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2, PCI\VEN_F0A1&DEV_0007&REV_0B
        "Any display"     = LanternXp, PCI\CC_0300
        [Lantern]
        CopyFiles=Files
        [LanternXp]
        CopyFiles=Files
        [LanternXp.Services]
        AddService=lantern
        [Strings]
        Maker="Greywater"
        """;

    private static readonly PciClass Vga = new(3, 0, 0);

    private static PciCard Board(ushort id, byte revision = 0x0A) =>
        new(new PciDevice(0xF0A1, 7), new PciSubsystem(id, 0xF0B2), revision, Vga);

    private static CardListing List(PciCard card, TargetWindows os, string text = Text) =>
        CardLister.List(InfReader.Read(Encoding.Latin1.GetBytes(text)), card, os);

    private static string Told(CardListing listing) => string.Join(
        "; ",
        [
            listing.Status.ToString(),
            .. listing.Hits.Select(h => $"{h.Device.Description} by {h.Specificity} {h.Rank:X4} -> {h.Install.Name}"),
            .. listing.Siblings.Select(s => $"sibling {s.Description} line {s.Line}"),
            .. listing.Doubts.Select(d => $"{d.Kind} {d.Line} {d.Subject}".TrimEnd()),
        ]);

    [Fact]
    public void Board_is_listed_by_its_subsystem() =>
        Assert.Equal("Listed; Lantern 7 by Board 0001 -> Lantern", Told(List(Board(0x1234), TargetWindows.Windows98)));

    [Fact]
    public void Other_board_of_the_chip_leaves_a_sibling_to_force() =>
        Assert.Equal("NotListed; sibling Lantern 7 line 7", Told(List(Board(0x9999), TargetWindows.Windows98)));

    [Fact]
    public void Further_device_numbers_of_the_chip_make_siblings() => Assert.Equal(
        "NotListed; sibling Lantern 7 line 7; sibling Lantern 5 line 8",
        Told(CardLister.List(
            InfReader.Read(Encoding.Latin1.GetBytes(Text)), Board(0x9999), TargetWindows.Windows98, new PciDevice(0xF0A1, 5))));

    [Fact]
    public void Class_alone_is_generic() => Assert.Equal(
        "Generic; Any display by Class 2006 -> LanternXp; sibling Lantern 7 line 10",
        Told(List(Board(0x9999), TargetWindows.WindowsXp)));

    // "Identifier Score": 0x1000 plus the position of the card's hardware ID where the file lists it as compatible.
    [Fact]
    public void Compatible_id_of_the_line_ranks_after_its_hardware_id() => Assert.Equal(
        "Listed; Lantern 7 by DeviceRevision 1002 -> LanternXp; Any display by Class 2006 -> LanternXp",
        Told(List(Board(0x9999, revision: 0x0B), TargetWindows.WindowsXp)));

    [Fact]
    public void Unread_subsystem_leaves_it_unknown() => Assert.Equal(
        @"Unknown; sibling Lantern 7 line 7; CardPartUnread 7 PCI\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2",
        Told(List(new PciCard(new PciDevice(0xF0A1, 7)), TargetWindows.Windows98)));

    [Fact]
    public void Unresolved_token_could_be_any_id() => Assert.Equal(
        "Unknown; UnresolvedId 6 %Nobody%",
        Told(List(Board(1), TargetWindows.Windows98, "[Version]\nSignature=$Chicago$\n[Manufacturer]\nM=S\n[S]\n\"X\"=I,%Nobody%\n[I]")));

    [Fact]
    public void No_section_for_the_system_is_unknown() => Assert.Equal(
        "Unknown; NoSectionForSystem  S",
        Told(List(Board(1), TargetWindows.Windows98, "[Version]\nSignature=$Chicago$\n[Manufacturer]\nM=S,NTx86\n[S.NTx86]")));

    [Fact]
    public void Random_bytes_are_unknown() => Assert.Equal(
        "Unknown; FileIncomplete; NoManufacturer", Told(CardLister.List(InfReader.Read([0xFF, 0xFE, 0]), Board(1), TargetWindows.Windows98)));

    [Fact]
    public void Line_without_install_section_is_no_evidence() => Assert.Equal(
        "Unknown; NoInstallSection 6 I",
        Told(List(Board(1), TargetWindows.Windows98, "[Version]\nSignature=$Chicago$\n[Manufacturer]\nM=S\n[S]\nX=I,PCI\\VEN_F0A1&DEV_0007\n[I.NT]")));

    [Fact]
    public void Undecorated_section_meant_for_nt_is_no_evidence_for_98() => Assert.Equal(
        "Unknown; OtherFamily 6 I",
        Told(List(Board(1), TargetWindows.Windows98, "[Version]\nSignature=\"$Windows NT$\"\n[Manufacturer]\nM=S\n[S]\nX=I,PCI\\VEN_F0A1&DEV_0007\n[I]\na=b\n[I.Services]\nAddService=x")));

    [Fact]
    public void Section_without_a_service_is_no_evidence_for_nt() => Assert.Equal(
        "Unknown; OtherFamily 6 I",
        Told(List(Board(1), TargetWindows.WindowsXp, "[Version]\nSignature=$Chicago$\n[Manufacturer]\nM=S\n[S]\nX=I,PCI\\VEN_F0A1&DEV_0007\n[I]\na=b")));

    // "INF DDInstall Section": the architecture's section before NT's before the undecorated one; 9x reads the last alone.
    [Theory]
    [InlineData("[I]\n[I.NT]\n[I.NTx86]", "I.NTx86", "I")]
    [InlineData("[I]\n[I.NT]", "I.NT", "I")]
    [InlineData("[I]", "I", "I")]
    [InlineData("[I.NT]", "I.NT", null)]
    public void Install_section_is_the_closest_to_the_system(string sections, string? onXp, string? on98)
    {
        var package = InfReader.Read(Encoding.Latin1.GetBytes("[Manufacturer]\nM=S\n[S]\nX=I,PCI\\VEN_F0A1\n" + sections));
        var device = package.Manufacturers.Single().Models.Single().Devices!.Single();
        Assert.Equal(
            (onXp, on98),
            (package.InstallFor(device, TargetWindows.WindowsXp).Name, package.InstallFor(device, TargetWindows.Windows98).Name));
    }

    [Theory]
    [InlineData("X=I,PCI\\VEN_F0A1&DEV_0007", "Listed; X by Device 0003 -> I")]
    [InlineData("", "Unknown; DocumentationDisagrees")]
    public void Windows_2000_is_certain_only_where_both_readings_agree(string undecorated, string told) => Assert.Equal(
        told,
        Told(List(Board(1), TargetWindows.Windows2000, $"""
            [Version]
            Signature=$Chicago$
            [Manufacturer]
            M=S,NTx86
            [S]
            {undecorated}
            [S.NTx86]
            X=I,PCI\VEN_F0A1&DEV_0007
            [I]
            [I.Services]
            """)));

    [Fact]
    public void Certain_hit_outweighs_a_doubt_elsewhere() => Assert.Equal(
        "Listed; X by Device 0003 -> I; UnresolvedId 7 %Nobody%",
        Told(List(Board(1), TargetWindows.Windows98, "[Version]\nSignature=$Chicago$\n[Manufacturer]\nM=S\n[S]\nX=I,PCI\\VEN_F0A1&DEV_0007\nY=I,%Nobody%\n[I]")));
}
