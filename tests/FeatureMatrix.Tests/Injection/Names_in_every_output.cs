using System.Text.Json;
using FeatureMatrix.Cli;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Injection;

/// <summary>
/// Text that somebody put into the data stays text in each context that a result has. Pages as a whole: Hostile_names; charts
/// (SVG): Bench_charts; the workbook: Any_workbook; run logs: Run_log_files.
/// </summary>
public sealed class Names_in_every_output
{
    private const string Escape = "\u001b]0;owned\u0007\u001b[2J\u009b31m";

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1+cmd")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    public void Csv_cells_are_no_formulas(string text)
    {
        var cell = CsvTable.Write(TableOf(text)).Split('\n', 2)[1];
        Assert.StartsWith("'" + text[0], cell.TrimStart('"'), StringComparison.Ordinal);
    }

    [Fact]
    public void Csv_cells_do_not_end_early() => Assert.Equal("Name\n\"a\"\",\nb\"\n", CsvTable.Write(TableOf("a\",\nb")));

    [Theory]
    [InlineData("<img src=x onerror=alert(1)>", @"\<img src=x onerror=alert(1)\>")]
    [InlineData("[x](javascript:alert(1))", @"\[x\](javascript:alert(1))")]
    [InlineData("a | b", @"a \| b")]
    [InlineData("![x](http://127.0.0.1/x.png)", @"\!\[x\](http://127.0.0.1/x.png)")]
    [InlineData("`x` &lt;", @"\`x\` \&lt;")]
    [InlineData("a\nb", "a b")]
    public void Markdown_cells_hold_no_markup(string text, string written) =>
        Assert.Equal($"| {written} |", MarkdownTable.Write(TableOf(text)).Split('\n')[4]);

    [Theory]
    [InlineData("[url=http://127.0.0.1]x[/url]", "(url=http://127.0.0.1)x(/url)")]
    [InlineData("[/code][img]x[/img]", "(/code)(img)x(/img)")]
    public void Forum_text_opens_and_closes_no_tags(string text, string written)
    {
        var forum = ForumTable.Write(TableOf(text) with { Title = text, Note = text });
        Assert.Equal([$"[b]{written}[/b]", written, "[code]"], forum.Split('\n')[..3]);
        Assert.Equal(4, forum.Count(c => c == '['));
    }

    [Fact]
    public void Text_tables_do_not_steer_a_terminal() => AssertHarmless(TextTable.Write(TableOf(Escape) with { Title = Escape, Note = Escape }));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Nothing_a_command_prints_steers_a_terminal(bool useColour)
    {
        using var results = new StringWriter { NewLine = "\n" };
        using var messages = new StringWriter { NewLine = "\n" };
        var terminal = new Terminal(results, messages, useColour: false, new StringReader("\n"));
        terminal.Print($"a {Escape}\tb\n");
        terminal.Tell($"a {Escape}\n");
        terminal.Print(new ExplanationLine(LineKind.Statement, $"a {Escape}"));
        terminal.Ask($"a {Escape}", Escape);
        AssertHarmless(results + messages.ToString());
        Assert.Contains("\tb\n", results.ToString(), StringComparison.Ordinal);

        // With colours, the only escapes are our own.
        using var coloured = new StringWriter { NewLine = "\n" };
        new Terminal(coloured, messages, useColour).Print(new ExplanationLine(LineKind.Loss, $"a {Escape}"));
        AssertHarmless(coloured.ToString().Replace("\u001b[33m", "", StringComparison.Ordinal).Replace("\u001b[0m", "", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("</script><script>alert(1)</script>")]
    [InlineData("\"); alert(1); (\"")]
    [InlineData("\\\"); alert(1); //")]
    [InlineData("line\u2028separator\u2029s")]
    public void Scripts_with_tables_hold_one_call_with_the_tables(string text)
    {
        var script = FeatureMatrix.Rendering.Site.TableFiles.Of("tables/cards-x.js", [new FeatureMatrix.Rendering.Site.NamedTable("cards-x", "tables/cards-x.js", TableOf(text))]);
        var call = System.Text.Encoding.UTF8.GetString(script.Bytes);
        Assert.DoesNotContain('<', call);
        Assert.DoesNotContain('\u2028', call);
        using var argument = JsonDocument.Parse(call["featureMatrixTables(".Length..^");\n".Length]);
        Assert.Equal(text, argument.RootElement.GetProperty("cards-x")[3][0][0].GetString());
    }

    /// <summary>Every page, read by an XML reader that knows no HTML: a name that broke out of its element or attribute would add one.</summary>
    [Theory]
    [InlineData("<b>&\"'", "\" onmouseover=\"alert(1)")]
    [InlineData("<b>&\"'", "' onmouseover='alert(1)")]
    [InlineData("<b>&\"'", "--><script>alert(1)</script><!--")]
    [InlineData("<b>&\"'", "</title></style></textarea><script>alert(1)</script>")]
    [InlineData("<b>&\"'", "{{ 7 * 7 }} javascript:alert(1)")]
    public void Pages_have_the_same_elements_and_attributes_as_with_plain_names(string usual, string hostile)
    {
        Assert.Equal(SmallEdition.Hostile, usual);
        var plain = Shapes(SmallEdition.Site(SmallEdition.With("plain ")));
        var attacked = Shapes(SmallEdition.Site(SmallEdition.With(hostile)));
        Assert.Equal(plain.Keys.Order(StringComparer.Ordinal), attacked.Keys.Order(StringComparer.Ordinal));
        foreach (var (path, shape) in plain)
            Assert.True(shape == attacked[path], $"{path}: {attacked[path]}");
    }

    /// <summary>Names of elements and attributes in their order; the texts between and within them left out.</summary>
    private static Dictionary<string, string> Shapes(IReadOnlyList<FeatureMatrix.Rendering.OutputFile> files) => files
        .Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal))
        .ToDictionary(file => file.Path, file => HtmlShape.Of(System.Text.Encoding.UTF8.GetString(file.Bytes)));

    private static void AssertHarmless(string printed) => Assert.DoesNotContain(printed, c => char.IsControl(c) && c is not ('\n' or '\t'));

    private static Table TableOf(string text) => new("Title", "", [new("Name")], [[new TableCell(text)]]);
}
