using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Cli.Import;
using FeatureMatrix.Tests.Importing.Measuring;
using FeatureMatrix.Tests.Importing.OpenGl;
using FeatureMatrix.Tests.Loading;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>Every format of text or bytes that a stranger may hand to the program.</summary>
internal static class FuzzFormats
{
    private static readonly IReadOnlyList<Feature> Vocabulary = Vocabularies.Ours();
    private static readonly PciCard Card = new(new PciDevice(0xF0A1, 7), null, null, new PciClass(3, 0, 0));

    /// <summary>The formats with their shares of a campaign.</summary>
    public static IReadOnlyList<FuzzFormat> All { get; } =
    [
        Text("YAML", 130_000, Yaml, [A_world_with_one_of_everything.World, .. Pieces(A_world_with_one_of_everything.World), .. Pieces(OneRunCollections)],
            "fog-table tex-pal8 nl-3 nl-4 nl-9x 1.0 2.10 yes no unknown broken emulated 16 -1 direct3d opengl windows-98se x@y 16MiB [] {} null manual bench chip card"),
        Text("run logs (CSV)", 170_000, RunLog, [RunLogSeed, RunLogSeed.Replace(',', ';'), RunLogSeed.Replace("\n", "\r\n", StringComparison.Ordinal)], "640 480 0 -1 1e9 48,9 31.25 on off yes no none 2026-13-40 fps score better higher salt-marsh"),
        Text("frame times", 60_000, FrameTimes, ["# ms\n16.7\n16.6\n33.3\n17.0\n", "16,7\n16,9\n\n15,1\n"], "16.7 16,7 0 -1 1e99 NaN #"),
        Text("INF", 170_000, Inf, [OneRun.Inf, InfSeed], "Version Manufacturer Strings NTx86 NT.5.1 %M% %% PCI\\VEN_F0A1 12/31/2001 ; = , \\ CopyFiles Models"),
        Text("capability dumps", 120_000, Dump, [OneRun.Dump, DumpSeed], "section field text number version formats samples pixel-format yes no 0x00000100 0x01 4294967295 direct3d9 direct3d7 opengl depth texture end"),
        Text("OpenGL reports", 100_000, OpenGl, [OpenGlReportTests.Invented], "GL_EXT_fog_coord GL_ARB_shadow 1.4 4.5 0 -1 Mesa llvmpipe : , OpenGL version string GLX extensions limits"),
        new("hardware IDs", 200_000, HardwareIds, HardwareIdOf),
        Text("PCI ID lists", 50_000, IdList, [OneRun.Ids, "# c\n\nC 03  Display\n\t00  VGA\n\t\t00  VGA\nffff  Illegal\n"], "f0a1 0007 1234 C 03 ffff zzzz Greywater"),
        FuzzTemplates.Format(70_000),
        FuzzWorksheets.Format(30_000),
        .. FuzzPictures.Formats(100_000),
    ];

    private static string[] OneRunCollections => ["chips:\n  ox-4: {name: OX-4, source: A book}\ncards:\n  ox4: {name: Ostrel 4, chip: ox-4, source: A book}\nfacts:\n  - {card: ox4, api: direct3d, source: A book, fog-table: yes}\n"];

    private const string RunLogSeed =
        "title,scene,renderer,wrapper,card,driver,os,width,height,depth,run,fps,min-fps,vsync,date,by,note\n"
        + "salt-marsh,ferry,direct3d,none,nl4-retail,nl-9x 2.10,windows-98se,640,480,16,1,48.9,31,off,2026-03-14,Ada,\"a \"\"b\"\", c\"\n"
        + "salt-marsh,ferry,direct3d,none,nl4-retail,nl-9x 2.10,windows-98se,800,600,16,2,40.1,30,off,2026-03-14,Ada,\n";

    private const string InfSeed =
        "[Version]\r\nSignature=\"$Chicago$\"\r\nDriverVer=12/31/2001,6.13.10.1\r\n[Manufacturer]\r\n%M%=S,NTx86.5.1\r\n[S]\r\n"
        + "\"D\"=I,PCI\\VEN_F0A1&DEV_0007&SUBSYS_1234F0B2,\\\r\n  PCI\\CC_0300\r\n[S.NTx86.5.1]\r\n%M%=I,%N%\r\n[I]\r\na=b ; c\r\n[Strings]\r\nM=\"m\"\r\n";

    private const string DumpSeed =
        "capability-dump 1\nsection direct3d9 0\nversion driver-version 6 14 10 1\nfield D3DCAPS9.RasterCaps 0x00000100\nfield D3DCAPS9.PixelShaderVersion 0xFFFF0200\n"
        + "formats depth 0x00000016 yes 0x0000004B no 0x00000047\nsamples 0x00000016 yes 2 4 no 8\nquery D3DQUERYTYPE_OCCLUSION yes\n"
        + "section direct3d7 0 0\nfield D3DDEVICEDESC7.dwDevCaps 0x00080000\npixel-format texture 0x00000041 0x00000000 0x00000010 0x00000F00 0x000000F0 0x0000000F 0x0000F000\n"
        + "section opengl 0\ntext version \"1.4 x\"\nextension gl \"GL_ARB_multitexture\"\nlimit GL_MAX_TEXTURE_SIZE 2048\nend\n";

    private static FuzzFormat Text(string name, int share, Func<byte[], bool> read, IReadOnlyList<string> seeds, string words) =>
        new(name, share, read, new Mutator([.. seeds.Select(Encoding.UTF8.GetBytes)], [.. words.Split(' ').Select(Encoding.UTF8.GetBytes)]).Input);

    /// <summary>The top-level entries of a text one by one: small inputs are read faster, and more of them get far.</summary>
    private static IEnumerable<string> Pieces(params string[] texts) =>
        texts.SelectMany(text => text.Split('\n').Aggregate(new List<StringBuilder>(), (pieces, line) =>
        {
            if (pieces.Count == 0 || (line.Length > 0 && line[0] is not (' ' or '#')))
                pieces.Add(new StringBuilder());
            pieces[^1].Append(line).Append('\n');
            return pieces;
        })).Select(piece => piece.ToString());

    // The first stage is YAML itself: FM001 to FM004 say that a file is no text, too large, no YAML, or YAML that is not used.
    private static bool Yaml(byte[] input)
    {
        var result = CollectionLoader.Load([new SourceText("v.yaml", Worlds.Vocabulary), new SourceText("x.yaml", Encoding.UTF8.GetString(input))]);
        Assert.True(result.Catalog is not null ^ result.Faults.Any(fault => fault.Severity == Severity.Error));
        return result.Faults.All(fault => string.CompareOrdinal(fault.Code, "FM005") > 0);
    }

    private static bool RunLog(byte[] input)
    {
        var log = RunLogReader.Read(Encoding.UTF8.GetString(input));
        Assert.All(log.Faults, fault => Assert.True(fault.Line >= 1));
        return log.Faults.All(fault => fault.Kind != RunLogFaultKind.NotARunLog);
    }

    private static bool FrameTimes(byte[] input) => FrameTimeReader.Read(Encoding.UTF8.GetString(input)).Milliseconds is { Count: > 0 } times && times.All(time => time > 0);

    private static bool Inf(byte[] input)
    {
        var package = InfReader.Read(input);
        Assert.InRange(package.Faults.Count, 0, InfLimits.Faults + 1);
        foreach (var os in TargetWindows.All)
        {
            var listing = CardLister.List(package, Card, os);
            Assert.False(listing.Status == ListingStatus.Unknown && listing.Doubts.Count == 0);
        }

        return package.Document.Sections.Count > 0;
    }

    private static bool Dump(byte[] input)
    {
        var dump = CapabilityDump.Parse(input);
        _ = MeasuredSupply.Of(dump, Vocabulary);
        _ = CapabilityDifference.Between(dump, dump);
        _ = CapabilityDecoder.Decode(dump);
        foreach (var section in dump.SectionsOf("opengl"))
            _ = MeasuredSupply.Of(OpenGlDumpSection.ToReport(section), Vocabulary);
        return dump.Faults.All(fault => fault.Kind != ImportFaultKind.NotThisFormat);
    }

    private static bool OpenGl(byte[] input)
    {
        var report = OpenGlReport.Parse(input);
        _ = MeasuredSupply.Of(report, Vocabulary);
        return report.Faults.All(fault => fault.Kind != ImportFaultKind.NotThisFormat);
    }

    private static bool HardwareIds(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        var isId = HardwareId.TryParse(text, out var id, out var at);
        Assert.True(isId == (id is not null) && at >= 0 && at <= text.Length);
        return isId || at > "PCI\\".Length;
    }

    /// <summary>Parts in their order, each there or not, most with the right number of digits; a third with one slip.</summary>
    private static byte[] HardwareIdOf(int number)
    {
        var random = new Random(number);
        (string Name, int Digits)[] parts = [("VEN_", 4), ("&DEV_", 4), ("&SUBSYS_", 8), ("&REV_", 2), ("&CC_", 6)];
        var text = "PCI\\" + string.Concat(parts.Where((_, i) => i < 2 || random.Next(2) == 0)
            .Select(part => part.Name + string.Concat(Enumerable.Range(0, part.Digits + (random.Next(12) == 0 ? random.Next(-2, 3) : 0)).Select(_ => "0123456789abcdefABCDEF"[random.Next(22)]))));
        if (random.Next(3) == 0)
            text = text.Remove(random.Next(text.Length), 1).Insert(random.Next(text.Length), ((char)random.Next(1, 0x250)).ToString());
        return Encoding.UTF8.GetBytes(text);
    }

    private static bool IdList(byte[] input) => PciIdList.Read(new StringReader(Encoding.UTF8.GetString(input))).Any();
}
