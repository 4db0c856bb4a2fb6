using System.IO.Compression;
using System.Text;
using FeatureMatrix.Importing.Worksheets;

namespace FeatureMatrix.Tests.Importing.Worksheets;

/// <summary>Packages made to exhaust whoever opens them, and damaged ones that fuzzing found. Each is one clear fault.</summary>
public sealed class A_hostile_workbook
{
    private const string Sheet = "xl/worksheets/sheet1.xml";

    [Fact]
    public void That_unpacks_to_a_thousand_times_its_size_is_refused()
    {
        var bomb = With(Sheet, _ => new string(' ', 100_000_000) + "<a/>");
        Assert.InRange(bomb.Length, 0, 2_000_000);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(WorksheetFaultTexts.TooLarge, FaultOf(bomb));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200_000_000);
    }

    [Fact]
    public void Of_more_parts_than_anybody_needs_is_refused() => Assert.Equal(WorksheetFaultTexts.TooLarge, FaultOf(Changed(package =>
    {
        for (var i = 0; i < WorkbookLimits.Parts; i++)
            package.CreateEntry($"xl/more{i}.bin");
    })));

    [Fact]
    public void Nested_a_hundred_thousand_levels_deep_is_refused() => Assert.Equal(
        WorksheetFaultTexts.TooLarge,
        FaultOf(With(Sheet, _ => string.Concat(Enumerable.Repeat("<a>", 100_000)) + string.Concat(Enumerable.Repeat("</a>", 100_000)))));

    [Theory]
    [InlineData("<!DOCTYPE a [<!ENTITY x SYSTEM \"file:///etc/hostname\">]><a>&x;</a>")]
    [InlineData("<!DOCTYPE a [<!ENTITY x \"xxxxxxxxxx\"><!ENTITY y \"&x;&x;&x;&x;&x;&x;&x;&x;&x;&x;\">]><a>&y;</a>")]
    [InlineData("<!DOCTYPE a SYSTEM \"http://127.0.0.1:9/x.dtd\"><a/>")]
    public void With_a_document_type_is_no_workbook(string xml) => Assert.Equal(WorksheetFaultTexts.NoWorkbook, FaultOf(With(Sheet, _ => xml)));

    [Fact]
    public void In_which_many_cells_share_one_long_text_is_refused()
    {
        var text = new string('x', 30_000);
        var cells = string.Concat(Enumerable.Range(2, 1_000).Select(row => $"<row r=\"{row}\"><c r=\"A{row}\" t=\"inlineStr\"><is><t>{text}</t></is></c></row>"));
        var bomb = With(Sheet, _ => $"<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>{cells}</sheetData></worksheet>");
        Assert.Equal(WorksheetFaultTexts.TooLarge, FaultOf(bomb));
    }

    [Fact]
    public void In_which_many_cells_share_one_shared_text_is_refused()
    {
        var cells = string.Concat(Enumerable.Range(2, 1_000).Select(row => $"<row r=\"{row}\"><c r=\"A{row}\" t=\"s\"><v>0</v></c></row>"));
        var bomb = Changed(package =>
        {
            Replace(package, Sheet, _ => $"<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>{cells}</sheetData></worksheet>");
            Replace(package, "xl/sharedStrings.xml", _ => $"<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><si><t>{new string('x', 30_000)}</t></si></sst>");
        });
        Assert.Equal(WorksheetFaultTexts.TooLarge, FaultOf(bomb));
    }

    [Theory]
    [InlineData("<c r=\"A99999999999\"><v>1</v></c>")]
    [InlineData("<c r=\"ZZZZZZZZ1\"><v>1</v></c>")]
    [InlineData("<c r=\"\"><v>1</v></c>")]
    [InlineData("<c><v>1</v></c>")]
    [InlineData("<c r=\"B2\" t=\"s\"><v>4000000</v></c>")]
    [InlineData("<c r=\"B2\" t=\"s\"><v>-1</v></c>")]
    [InlineData("<c r=\"B2\"><v>1</v></c><c r=\"B2\"><v>2</v></c>")]
    public void With_cells_that_lie_nowhere_is_read_without_them(string cell)
    {
        var faults = WorksheetReader.Read(With(Sheet, _ =>
            $"<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"2\">{cell}</row></sheetData></worksheet>")).Faults;
        Assert.DoesNotContain(faults, fault => fault.Message is WorksheetFaultTexts.NoWorkbook or WorksheetFaultTexts.TooLarge);
    }

    /// <summary>Found by fuzzing: a relationship to a part that is not there, and parts that are no XML.</summary>
    [Theory]
    [InlineData("xl/_rels/workbook.xml.rels", "sheet1.xml", "nowhere.xml")]
    [InlineData("xl/workbook.xml", "<", "<<")]
    [InlineData("[Content_Types].xml", "worksheet+xml", "styles+xml")]
    public void Whose_parts_do_not_fit_together_is_no_workbook(string part, string old, string now) => Assert.Equal(
        WorksheetFaultTexts.NoWorkbook, FaultOf(With(part, text => text.Replace(old, now, StringComparison.Ordinal))));

    [Theory]
    [InlineData("")]
    [InlineData("PK")]
    [InlineData("PK\u0005\u0006\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0")]
    [InlineData("<html></html>")]
    public void That_is_something_else_is_no_workbook(string bytes) => Assert.Equal(WorksheetFaultTexts.NoWorkbook, FaultOf(Encoding.Latin1.GetBytes(bytes)));

    private static string FaultOf(byte[] workbook) => Assert.Single(WorksheetReader.Read(workbook).Faults).Message;

    private static byte[] With(string part, Func<string, string> change) => Changed(package => Replace(package, part, change));

    private static byte[] Changed(Action<ZipArchive> change)
    {
        var stream = new MemoryStream();
        stream.Write(FilledSheet.Empty);
        using (var package = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
            change(package);
        return stream.ToArray();
    }

    private static void Replace(ZipArchive package, string name, Func<string, string> change)
    {
        var entry = package.GetEntry(name)!;
        string text;
        using (var reader = new StreamReader(entry.Open()))
            text = reader.ReadToEnd();
        entry.Delete();
        using var writer = new StreamWriter(package.CreateEntry(name, CompressionLevel.Fastest).Open());
        writer.Write(change(text));
    }
}
