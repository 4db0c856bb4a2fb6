using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Tests.Importing.Fuzzing;

namespace FeatureMatrix.Tests.Importing.DriverPackage;

public class Feeding_an_inf_reader_rubbish
{
    private static readonly byte[] Seed = Encoding.Latin1.GetBytes(
        "[Version]\r\nSignature=\"$Chicago$\"\r\nDriverVer=12/31/2001,6.13.10.1\r\n[Manufacturer]\r\n%M%=S,NTx86.5.1\r\n[S]\r\n"
        + "\"D\"=I,PCI\\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2,\\\r\n  PCI\\CC_0300\r\n[S.NTx86.5.1]\r\n%M%=I,%N%\r\n[I]\r\na=b ; c\r\n[Strings]\r\nM=\"m\"\r\n");

    private static readonly PciCard Card = new(new PciDevice(0xF0A1, 7), null, null, new PciClass(3, 0, 0));

    [Fact]
    public void Answers_for_every_input() => Run(1500);

    [Fact, Trait("Category", "campaign")]
    public void Answers_for_every_input_of_a_long_campaign() => Run(300_000);

    private static void Run(int inputs) => Rubbish.Feed(inputs, Seed, bytes =>
    {
        var package = InfReader.Read(bytes);
        Assert.InRange(package.Faults.Count, 0, InfLimits.Faults + 1);
        Assert.All(package.Faults, f => Assert.True(f is { Line: >= 1, Column: >= 1 }));
        foreach (var os in TargetWindows.All)
        {
            var listing = CardLister.List(package, Card, os);
            Assert.Equal(listing.Status is ListingStatus.Listed or ListingStatus.Generic, listing.Hits.Count > 0 && listing.Status != ListingStatus.Unknown);
            Assert.False(listing.Status == ListingStatus.Unknown && listing.Doubts.Count == 0);
        }
    });
}
