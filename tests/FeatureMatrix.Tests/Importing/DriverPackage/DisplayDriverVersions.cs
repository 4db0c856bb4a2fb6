using FeatureMatrix.Importing.DriverPackage;

namespace FeatureMatrix.Tests.Importing.DriverPackage;

/// <summary>The table of the Windows driver documentation, "Version Numbers for Display Drivers", both ends of each row.</summary>
public class Reading_a_display_driver_version
{
    [Theory]
    [InlineData("4.01.00.0000", DisplayDriverSystem.Windows95, 0)] // the page's own example of no DirectX
    [InlineData("4.02.00.0094", DisplayDriverSystem.Windows95, 0)]
    [InlineData("4.02.00.0095", DisplayDriverSystem.Windows95, 1)]
    [InlineData("4.03.00.1095", DisplayDriverSystem.Windows95, 1)]
    [InlineData("4.03.00.1096", DisplayDriverSystem.Windows95, 2)]
    [InlineData("4.03.00.2030", DisplayDriverSystem.Windows95, 3)]
    [InlineData("4.03.00.2100-12.34.56", DisplayDriverSystem.Windows95, 3)] // the page's example of a maker's own number
    [InlineData("4.05.00.0000", DisplayDriverSystem.Windows98, 5)]
    [InlineData("4.05.00.9999", DisplayDriverSystem.Windows98, 5)]
    [InlineData("4.10.10.0000", DisplayDriverSystem.Windows9x, 5)]
    [InlineData("4.11.10.9999", DisplayDriverSystem.Windows9x, 6)]
    [InlineData("4.12.10.0000", DisplayDriverSystem.Windows98AndMe, 7)]
    [InlineData("4.13.10.9999", DisplayDriverSystem.Windows98AndMe, 8)]
    [InlineData("4.14.10.0000", DisplayDriverSystem.Windows98AndMe, 9)]
    [InlineData("5.12.10.9999", DisplayDriverSystem.Windows2000, 7)]
    [InlineData("5.13.10.0000", DisplayDriverSystem.Windows2000, 8)]
    [InlineData("5.14.10.0000", DisplayDriverSystem.Windows2000, 9)]
    [InlineData("6.12.10.0000", DisplayDriverSystem.WindowsXp, 7)]
    [InlineData("6.13.10.0000", DisplayDriverSystem.WindowsXp, 8)]
    [InlineData("6.14.01.0000", DisplayDriverSystem.WindowsXp, 9)]
    public void Documented_range_reads(string version, DisplayDriverSystem system, int directX) =>
        Assert.Equal(new DisplayDriverVersion(system, directX), DisplayDriverVersion.Of(version));

    [Theory]
    [InlineData("")]
    [InlineData("4.13")]
    [InlineData("4.13.10.x")]
    [InlineData("4.00.00.0095")]
    [InlineData("4.04.00.0000")]
    [InlineData("4.13.11.0000")]
    [InlineData("5.11.10.0000")]
    [InlineData("9.0.0.0")]
    [InlineData("4.13.10.10000")]
    [InlineData("4.13.10.99999999999")]
    public void Anything_else_is_unknown(string version) =>
        Assert.Equal(new DisplayDriverVersion(DisplayDriverSystem.Unknown, null), DisplayDriverVersion.Of(version));
}
