using FeatureMatrix.Importing;

namespace FeatureMatrix.Tests.Importing;

public class Reading_a_hardware_id
{
    // Example of the Windows driver documentation, "Identifiers for PCI Devices".
    private const string Documented = @"PCI\VEN_102C&DEV_00E0&SUBSYS_00000000&REV_04";

    [Fact]
    public void Documented_example_reads_and_writes_back()
    {
        Assert.True(HardwareId.TryParse(Documented, out var id, out _));
        Assert.Equal(new HardwareId(0x102C, 0x00E0, new PciSubsystem(0, 0), 4), id);
        Assert.Equal(Documented, id!.ToString());
    }

    [Fact]
    public void Subsystem_id_stands_before_its_vendor()
    {
        Assert.True(HardwareId.TryParse(@"pci\ven_f0a1&dev_0007&subsys_1234f0b2", out var id, out _));
        Assert.Equal(new PciSubsystem(Id: 0x1234, Vendor: 0xF0B2), id!.Subsystem);
    }

    [Theory]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007&REV_0A")]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007")]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007&CC_030000")]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007&CC_0300")]
    [InlineData(@"PCI\VEN_F0A1&CC_030000")]
    [InlineData(@"PCI\VEN_F0A1")]
    [InlineData(@"PCI\CC_030000")]
    [InlineData(@"PCI\CC_0300")]
    public void Every_documented_form_writes_back(string text)
    {
        Assert.True(HardwareId.TryParse(text.ToLowerInvariant(), out var id, out _));
        Assert.Equal(text, id!.ToString());
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData(@"ISA\VEN_F0A1", 0)]
    [InlineData(@"PCI\", 4)]
    [InlineData(@"PCI\DEV_0007", 4)]
    [InlineData(@"PCI\VEN_F0A", 4)]
    [InlineData(@"PCI\VEN_F0A1&", 12)]
    [InlineData(@"PCI\VEN_F0A1&DEV_002&SUBSYS_00000000", 12)]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007&SUBSYS_0000000G", 21)]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007&REV_01&SUBSYS_00000000", 28)]
    [InlineData(@"PCI\VEN_F0A1&SUBSYS_00000000", 12)]
    [InlineData(@"PCI\VEN_F0A1&DEV_0007 ", 12)]
    [InlineData("PCI\\VEN_F0A1&DEV_0007&REV_0\0", 21)] // the framework would read the zero character as nothing
    public void What_does_not_fit_is_pointed_at(string text, int at)
    {
        Assert.False(HardwareId.TryParse(text, out var id, out var faultAt));
        Assert.Null(id);
        Assert.Equal(at, faultAt);
    }
}

public class Listing_the_ids_of_a_card
{
    private static readonly PciCard Full =
        new(new PciDevice(0x102C, 0x00E0), new PciSubsystem(0, 0), 4, new PciClass(3, 0, 0));

    // Order and forms: Windows driver documentation, "Identifiers for PCI Devices".
    [Fact]
    public void Hardware_ids_run_from_the_board_to_the_class() => Assert.Equal(
        [
            @"PCI\VEN_102C&DEV_00E0&SUBSYS_00000000&REV_04",
            @"PCI\VEN_102C&DEV_00E0&SUBSYS_00000000",
            @"PCI\VEN_102C&DEV_00E0&REV_04",
            @"PCI\VEN_102C&DEV_00E0",
            @"PCI\VEN_102C&DEV_00E0&CC_030000",
            @"PCI\VEN_102C&DEV_00E0&CC_0300",
        ],
        Full.HardwareIds().Select(i => i.ToString()));

    [Fact]
    public void Compatible_ids_end_with_the_bare_class() => Assert.Equal(
        [
            @"PCI\VEN_102C&DEV_00E0&REV_04",
            @"PCI\VEN_102C&DEV_00E0",
            @"PCI\VEN_102C&CC_030000",
            @"PCI\VEN_102C&CC_0300",
            @"PCI\VEN_102C",
            @"PCI\CC_030000",
            @"PCI\CC_0300",
        ],
        Full.CompatibleIds().Select(i => i.ToString()));

    [Fact]
    public void Unread_parts_leave_their_forms_out() => Assert.Equal(
        [@"PCI\VEN_102C&DEV_00E0"],
        new PciCard(Full.Device).HardwareIds().Select(i => i.ToString()));

    [Fact]
    public void Id_of_a_class_names_no_card() => Assert.Null(PciCard.From(new HardwareId(0x102C)));
}
