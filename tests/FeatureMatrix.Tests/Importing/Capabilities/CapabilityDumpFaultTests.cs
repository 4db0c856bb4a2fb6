using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Capabilities;

namespace FeatureMatrix.Tests.Importing.Capabilities;

public sealed class CapabilityDumpFaultTests
{
    [Theory]
    [InlineData("text", ImportFaultKind.Missing, 5, "a key")]
    [InlineData("text name", ImportFaultKind.Missing, 10, "a quoted text")]
    [InlineData("text name Zephra", ImportFaultKind.BadText, 11, "Zephra")]
    [InlineData("text name \"Zephra", ImportFaultKind.BadText, 11, "\"Zephra")]
    [InlineData("text name \"a\\qb\"", ImportFaultKind.BadText, 13, "\\qb\"")]
    [InlineData("text name \"a\"b", ImportFaultKind.BadText, 14, "b")]
    [InlineData("text name \"a\" b", ImportFaultKind.Surplus, 14, " b")]
    [InlineData("text  name \"a\"", ImportFaultKind.Missing, 6, "a key")]
    [InlineData("number os-major x", ImportFaultKind.NotDecimal, 17, "x")]
    [InlineData("number os-major 4294967296", ImportFaultKind.NotDecimal, 17, "4294967296")]
    [InlineData("number os-major -1", ImportFaultKind.NotDecimal, 17, "-1")]
    [InlineData("field D3DCAPS9.RasterCaps 123", ImportFaultKind.NotHexadecimal, 27, "123")]
    [InlineData("field D3DCAPS9.RasterCaps 0x123", ImportFaultKind.NotHexadecimal, 27, "0x123")]
    [InlineData("field D3DCAPS9.RasterCaps 0x0000000G", ImportFaultKind.NotHexadecimal, 27, "0x0000000G")]
    [InlineData("field RasterCaps 0x00000001", ImportFaultKind.Missing, 7, "structure.field")]
    [InlineData("field D3DCAPS9.RasterCaps", ImportFaultKind.Missing, 26, "a word in hexadecimal")]
    [InlineData("formats texture 0x00000016 0x00000015", ImportFaultKind.Missing, 28, "yes")]
    [InlineData("formats texture 0x00000016 yes 0x00000015", ImportFaultKind.Missing, 42, "no")]
    [InlineData("query D3DQUERYTYPE_EVENT perhaps", ImportFaultKind.Missing, 26, "no")]
    [InlineData("mode 640 480 16", ImportFaultKind.Missing, 16, "hertz")]
    [InlineData("wobble 1", ImportFaultKind.UnknownKeyword, 1, "wobble")]
    [InlineData("text name \"caf\u00E9\"", ImportFaultKind.BadByte, 15, "0xE9")]
    [InlineData("section", ImportFaultKind.Missing, 8, "the kind of section")]
    [InlineData("section display zero", ImportFaultKind.NotDecimal, 17, "zero")]
    public void A_line_that_cannot_be_read_is_a_fault_at_its_place_and_is_kept(
        string line, ImportFaultKind kind, int column, string found)
    {
        var dump = Parse($"capability-dump 1\nsection system\n{line}\nnumber os-minor 10\nend\n");

        Assert.Equal([new ImportFault(kind, 3, column, found)], dump.Faults);
        Assert.Equal(
            [new DumpSection("system", new([]), 2, new([new UnknownEntry(3, line), new NumberEntry(4, "os-minor", 10)]))],
            dump.Sections);
        Assert.True(dump.IsComplete);
    }

    [Theory]
    [InlineData("")]
    [InlineData("capability-dump 2\nend\n")]
    [InlineData("\ncapability-dump 1\nend\n")]
    [InlineData("\0\u0001\u00FFnothing of the kind")]
    public void A_file_of_another_kind_is_one_fault(string text)
    {
        var dump = Parse(text);
        Assert.Equal([(ImportFaultKind.NotThisFormat, 1, 1)], dump.Faults.Select(f => (f.Kind, f.Line, f.Column)));
        Assert.Empty(dump.Sections);
    }

    [Fact]
    public void A_file_that_stops_names_the_last_step_and_keeps_what_it_has()
    {
        var dump = Parse("capability-dump 1\nsection direct3d8 0\nstep IDirect3D8::GetDeviceCaps\nfield D3DCAPS8.Caps 0x000");

        Assert.False(dump.IsComplete);
        Assert.Equal(
            [
                new ImportFault(ImportFaultKind.NotHexadecimal, 4, 21, "0x000"),
                new ImportFault(ImportFaultKind.NoEnd, 4, 1, "IDirect3D8::GetDeviceCaps"),
            ],
            dump.Faults);
        Assert.Equal("field D3DCAPS8.Caps 0x000", Assert.IsType<UnknownEntry>(dump.Sections[0].Entries[1]).Content);
    }

    [Fact]
    public void Repeats_are_faults_and_the_first_word_counts()
    {
        var dump = Parse(
            """
            capability-dump 1
            number lost 1
            section direct3d9 0
            field D3DCAPS9.RasterCaps 0x00000001
            field D3DCAPS9.RasterCaps 0x00000002
            section direct3d9 0
            end
            number late 1

            """);

        Assert.Equal(
            [
                new ImportFault(ImportFaultKind.OutsideSection, 2, 1, "number"),
                new ImportFault(ImportFaultKind.RepeatedField, 5, 7, "D3DCAPS9.RasterCaps"),
                new ImportFault(ImportFaultKind.RepeatedSection, 6, 1, "direct3d9"),
                new ImportFault(ImportFaultKind.AfterEnd, 8, 1, "number late 1"),
            ],
            dump.Faults);
        Assert.Equal(1u, dump.Sections[0].Field("D3DCAPS9", "RasterCaps"));
    }

    [Fact]
    public void A_structure_that_does_not_fit_its_public_definition_is_a_fault()
    {
        var dump = Parse(
            """
            capability-dump 1
            section direct3d9 0
            size D3DCAPS9 300
            size D3DCAPS9 304
            field D3DCAPS9.RasterCaps 0x0001
            end

            """);

        Assert.Equal(
            [
                new ImportFault(ImportFaultKind.WrongStructureSize, 3, 6, "D3DCAPS9"),
                new ImportFault(ImportFaultKind.WrongFieldWidth, 5, 7, "D3DCAPS9.RasterCaps"),
            ],
            dump.Faults);
        Assert.Null(dump.Sections[0].Field("D3DCAPS9", "RasterCaps"));
    }

    [Fact]
    public void Faults_lines_and_files_without_bound_are_cut()
    {
        var many = Parse("capability-dump 1\nsection system\n" + string.Concat(Enumerable.Repeat("?\n", 5000)) + "end\n");
        Assert.Equal(101, many.Faults.Count);
        Assert.Equal(new ImportFault(ImportFaultKind.More, 103, 1, ""), many.Faults[^1]);

        var wide = Parse("capability-dump 1\nsection system\ntext a \"" + new string('x', 9000) + "\"\nend\n");
        Assert.Equal([new ImportFault(ImportFaultKind.LineTooLong, 3, 8193, "")], wide.Faults);
        Assert.Equal(400, Assert.IsType<UnknownEntry>(wide.Sections[0].Entries[0]).Content.Length);

        var long5 = Parse("capability-dump 1\nsection system\n" + string.Concat(Enumerable.Repeat("# fill\n", 800_000)) + "end\n");
        Assert.Equal(ImportFaultKind.FileTooLong, Assert.Single(long5.Faults).Kind);
        Assert.False(long5.IsComplete);
    }

    private static CapabilityDump Parse(string text) =>
        CapabilityDump.Parse(Encoding.Latin1.GetBytes(text.ReplaceLineEndings("\n")));
}
