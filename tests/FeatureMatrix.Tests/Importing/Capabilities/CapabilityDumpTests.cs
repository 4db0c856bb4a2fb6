using System.Text;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Tests.Importing.Measuring;

namespace FeatureMatrix.Tests.Importing.Capabilities;

public sealed class CapabilityDumpTests
{
    /// <summary>One line of each kind; the card and its numbers are invented.</summary>
    internal const string EachKind =
        """
        capability-dump 1
        # An invented card.
        text made-by "hand"
        section system
        number os-major 4
        text os-extra " A\"\\\xE9"
        file "zephra.drv" 4 5 0 12
        hardware-id PCI "VEN_F00D&DEV_0001&SUBSYS_00000000&REV_02"
        step LoadLibrary: d3d9.dll
        absent d3d9.dll
        section direct3d8 0
        version driver-version 4 5 0 12
        pci 0x0000F00D 0x00000001 0x00000000 0x00000002
        size D3DCAPS8 212
        field D3DCAPS8.RasterCaps 0x00000101
        field GUID.Data2 0xBEEF
        mode 640 480 16 60 0x00000017
        mode 800 600 16 75
        formats texture 0x00000017 yes 0x00000017 no 0x00000015 0x00000029
        samples 0x00000017 yes no 2 4
        query D3DQUERYTYPE_OCCLUSION no
        memory local 8388608 6291456
        fourcc 0x32595559
        pixel-format texture 0x00000040 0x00000000 0x00000010 0x0000F800 0x000007E0 0x0000001F 0x00000000
        failed CreateDevice 0x8876086A
        section opengl 0
        extension gl "GL_ARB_multitexture"
        extension-length gl 19
        limit GL_MAX_VIEWPORT_DIMS 2048 2048
        end

        """;

    [Fact]
    public void Each_kind_of_line_is_read_as_it_says()
    {
        var expected = new CapabilityDump(
            new([
                new DumpSection("system", new([]), 4, new([
                    new NumberEntry(5, "os-major", 4),
                    new TextEntry(6, "os-extra", " A\"\\\u00E9"),
                    new FileEntry(7, "zephra.drv", new([4, 5, 0, 12])),
                    new HardwareIdEntry(8, "PCI", "VEN_F00D&DEV_0001&SUBSYS_00000000&REV_02"),
                    new StepEntry(9, "LoadLibrary: d3d9.dll"),
                    new AbsentEntry(10, "d3d9.dll"),
                ])),
                new DumpSection("direct3d8", new([0]), 11, new([
                    new VersionEntry(12, "driver-version", new([4, 5, 0, 12])),
                    new PciEntry(13, 0xF00D, 1, 0, 2),
                    new SizeEntry(14, "D3DCAPS8", 212),
                    new FieldEntry(15, "D3DCAPS8", "RasterCaps", 0x101, 4),
                    new FieldEntry(16, "GUID", "Data2", 0xBEEF, 2),
                    new ModeEntry(17, 640, 480, 16, 60, 23),
                    new ModeEntry(18, 800, 600, 16, 75, 0),
                    new FormatsEntry(19, "texture", 23, new([23]), new([21, 41])),
                    new SamplesEntry(20, 23, new([]), new([2, 4])),
                    new QueryEntry(21, "D3DQUERYTYPE_OCCLUSION", false),
                    new MemoryEntry(22, "local", 8388608, 6291456),
                    new FourCcEntry(23, new([0x32595559])),
                    new PixelFormatEntry(24, "texture", 0x40, 0, 16, 0xF800, 0x7E0, 0x1F, 0),
                    new FailedEntry(25, "CreateDevice", 0x8876086A),
                ])),
                new DumpSection("opengl", new([0]), 26, new([
                    new ExtensionEntry(27, "gl", "GL_ARB_multitexture"),
                    new ExtensionLengthEntry(28, "gl", 19),
                    new LimitEntry(29, "GL_MAX_VIEWPORT_DIMS", new([2048, 2048])),
                ])),
            ]),
            "hand",
            true,
            new([]));

        Assert.Equal(expected, Parse(EachKind));
        // The line ends of Windows and a byte-order mark of an editor change nothing.
        Assert.Equal(expected, Parse("\u00EF\u00BB\u00BF" + EachKind.ReplaceLineEndings("\r\n"), keepLineEnds: true));
    }

    [Fact]
    public void The_flat_list_names_each_bit_once_whether_set_or_not()
    {
        var dump = Parse(
            """
            capability-dump 1
            section direct3d8 0
            field D3DCAPS8.CursorCaps 0x80000001
            field D3DCAPS8.MaxVertexW 0x461C4000
            field D3DCAPS8.PixelShaderVersion 0xFFFF0104
            field D3DCAPS8.FVFCaps 0x00080008
            end

            """);

        Assert.Equal(
            [
                "D3DCURSORCAPS_COLOR set",
                "D3DCURSORCAPS_LOWRES clear",
                "bit 0x80000000 set",
                "D3DCAPS8.MaxVertexW 10000",
                "D3DFVFCAPS_TEXCOORDCOUNTMASK 8",
                "D3DFVFCAPS_DONOTSTRIPELEMENTS set",
                "D3DFVFCAPS_PSIZE clear",
                "D3DCAPS8.PixelShaderVersion 1.4",
            ],
            CapabilityDecoder.Decode(dump).Select(c => c switch
            {
                CapabilityFlag flag => $"{flag.Constant?.Name ?? $"bit 0x{flag.Bit:X8}"} {(flag.IsSet ? "set" : "clear")}",
                CapabilityLimit { Member.Kind: MemberKind.ShaderVersion } limit =>
                    $"{limit.Name} {limit.ShaderVersion.Major}.{limit.ShaderVersion.Minor}",
                CapabilityLimit limit => $"{limit.Name} {limit.Amount}",
                _ => throw new InvalidOperationException(),
            }));
    }

    [Fact]
    public void Random_bytes_and_mutated_dumps_never_throw()
    {
        var random = new Random(1999);
        var vocabulary = Vocabularies.Ours();
        var sound = Encoding.Latin1.GetBytes(EachKind.ReplaceLineEndings("\n"));
        for (var i = 0; i < 2000; i++)
        {
            byte[] file;
            if (i % 4 == 0)
            {
                file = new byte[random.Next(400)];
                random.NextBytes(file);
            }
            else
            {
                file = [.. sound];
                for (var n = random.Next(1, 12); n > 0; n--)
                    file[random.Next(file.Length)] = i % 2 == 0 ? (byte)random.Next(256) : sound[random.Next(sound.Length)];
            }

            var dump = CapabilityDump.Parse(file);
            _ = CapabilityDecoder.Decode(dump);
            Assert.Empty(CapabilityDifference.Between(dump, dump));
            if (i % 10 == 1)
                _ = MeasuredSupply.Of(dump, vocabulary);
            Assert.All(dump.Faults, f => Assert.True(f is { Line: >= 1, Column: >= 1, Found.Length: <= 60 }));
        }
    }

    private static CapabilityDump Parse(string text, bool keepLineEnds = false) =>
        CapabilityDump.Parse(Encoding.Latin1.GetBytes(keepLineEnds ? text : text.ReplaceLineEndings("\n")));
}
