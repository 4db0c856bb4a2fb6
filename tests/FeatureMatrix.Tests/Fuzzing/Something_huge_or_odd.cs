using System.Text;
using FeatureMatrix.Rendering.Site;

namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>Inputs of 10 MB, one line each or all of one sign, and good ones in odd encodings: every reader answers and stays within bounds.</summary>
public sealed class Something_huge_or_odd
{
    private const int Size = 10_000_000;

    /// <summary>What reading 10 MB may make a reader allocate in all.</summary>
    private const long MostAllocated = 1_500_000_000;

    private static readonly string[] Shapes = ["a", "\0", " ", "\n", "\r", "[", "{", "(", "<", "\"", "'", "%", ",", ";", "{{", "- ", "a: ", "&a ", "\\\n", "0x", "\uFEFF", "\ud83d\ude00"];

    /// <summary>Those that the suite takes; the campaign takes all.</summary>
    private static readonly string[] Usual = ["a", "\0", "[", "\"", ",", "\\\n"];

    // A worksheet is a package, which A_hostile_workbook blows up in its own ways.
    public static TheoryData<string> TextFormats => new(FuzzFormats.All.Select(format => format.Name).Where(name => name != "XLSX worksheets"));

    public static TheoryData<string> Formats => new(FuzzFormats.All.Select(format => format.Name));

    [Theory]
    [MemberData(nameof(TextFormats))]
    public void Is_answered_within_bounds(string name) => Feed(name, Usual);

    [Theory, Trait("Category", "campaign")]
    [MemberData(nameof(TextFormats))]
    public void Of_every_shape_is_answered_within_bounds(string name) => Feed(name, Shapes);

    private static void Feed(string name, string[] shapes)
    {
        var format = FuzzFormats.All.Single(one => one.Name == name);
        var head = Head(name);
        foreach (var shape in shapes)
        {
            var piece = Encoding.UTF8.GetBytes(shape);
            var input = new byte[Size];
            head.CopyTo(input, 0);
            for (var at = head.Length; at < Size; at++)
                input[at] = piece[(at - head.Length) % piece.Length];
            var before = GC.GetAllocatedBytesForCurrentThread();
            format.Read(input);
            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.True(allocated <= MostAllocated, $"10 MB of '{shape}' made the reader of {name} allocate {allocated} bytes");
        }
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Is_answered_in_any_encoding_and_with_any_line_ends(string name)
    {
        var format = FuzzFormats.All.Single(one => one.Name == name);
        for (var number = 0; number < 5; number++)
        {
            var text = Encoding.Latin1.GetString(format.Input(number));
            byte[][] written =
            [
                Encoding.Unicode.GetBytes("\uFEFF" + text), Encoding.BigEndianUnicode.GetBytes("\uFEFF" + text), Encoding.UTF32.GetBytes(text), Encoding.Latin1.GetBytes(text + "\u00fc\u00df"),
                Encoding.UTF8.GetBytes("\uFEFF\uFEFF" + text), Encoding.Latin1.GetBytes(text.Replace("\n", "\r", StringComparison.Ordinal)),
                Encoding.Latin1.GetBytes(text.Replace("\n", number % 2 == 0 ? "\r\n" : "\n\r", StringComparison.Ordinal) + "\r"), [.. Encoding.Latin1.GetBytes(text), 0xC3],
            ];
            foreach (var bytes in written)
                format.Read(bytes);
        }
    }

    [Theory]
    [InlineData(">")]
    [InlineData("[")]
    [InlineData("![")]
    [InlineData("*")]
    [InlineData("_a ")]
    [InlineData("- ")]
    [InlineData("`")]
    [InlineData("<")]
    [InlineData("[a](")]
    [InlineData("# ")]
    [InlineData("1. ")]
    [InlineData("&#")]
    public void In_a_note_is_shown_or_left_as_text(string piece)
    {
        // The longest text that a collection may hold.
        var html = MarkdownText.ToHtml(string.Concat(Enumerable.Repeat(piece, 64 * 1024 / piece.Length)));
        Assert.InRange(html.Length, 1, 10_000_000);
    }

    /// <summary>What the format begins with, so that the reader goes on to the rest.</summary>
    private static byte[] Head(string name) => Encoding.UTF8.GetBytes(name switch
    {
        "run logs (CSV)" => "title,scene,card,width,height,run,fps\n",
        "INF" => "[Version]\nSignature=\"$Chicago$\"\n[x]\n",
        "capability dumps" => "capability-dump 1\nsection direct3d9 0\n",
        "OpenGL reports" => "OpenGL version string: 1.4\nOpenGL extensions:\n",
        "hardware IDs" => @"PCI\VEN_F0A1&DEV_",
        "PCI ID lists" => "f0a1  Greywater\n\t",
        "templates" => "{{ a = 1 }}{{ ",
        _ => "",
    });
}
