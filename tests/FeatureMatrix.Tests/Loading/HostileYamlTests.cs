using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>Files that nobody wrote as a collection. Each gives a fault, none an exception, and none takes long.</summary>
public sealed class A_hostile_file
{
    private static string Faults(string text) => string.Join('\n', CollectionLoader.Load([new SourceText("x.yaml", text)]).Faults);

    [Fact]
    public void With_aliases_that_multiply_is_refused_at_the_first()
    {
        var bomb = "a: &a [x, x]\n" + string.Join('\n', Enumerable.Range(1, 40).Select(i => $"b{i}: &b{i} [*a, *a]"));

        Assert.Equal(
            "x.yaml(1,4): error FM004: uses an anchor or alias (& or *); the format shares by 'like', engines and inherited sources; a text that starts so needs quotes",
            Faults(bomb));
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    public void With_ten_thousand_levels_is_refused(string opening)
    {
        var faults = Faults(string.Concat(Enumerable.Repeat(opening, 10_000)));

        Assert.EndsWith("error FM002: is nested deeper than 32 levels; the format needs about ten", faults, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', faults);
    }

    [Fact]
    public void With_a_huge_text_is_refused() => Assert.Equal(
        "x.yaml(2,2): error FM002: a text is longer than 65,536 characters", Faults($"chips:\n '{new string('a', 65_537)}'"));

    [Fact]
    public void That_is_huge_is_refused() => Assert.Equal(
        "x.yaml: error FM002: is larger than 4 MiB; split it into several files", Faults(new string(' ', (4 << 20) + 1)));

    [Fact]
    public void With_a_NUL_is_refused() => Assert.Equal(
        "x.yaml: error FM001: holds a NUL character, so it is no text; save it as UTF-8", Faults("chips: {}\0"));

    [Theory]
    [InlineData("\\u0001", "0001")]
    [InlineData("\\x1b", "001B")]
    [InlineData("\\uFFFF", "FFFF")]
    public void With_a_character_that_no_output_can_show_is_refused(string escape, string code) => Assert.Equal(
        $"x.yaml(1,20): error FM001: holds the character U+{code}, which no output can show",
        Faults($"chips: {{c: {{name: \"a{escape}\"}}}}".Replace("{name: ", "{name:  ")));

    [Theory]
    [InlineData("a: !!binary x", "x.yaml(1,4): error FM004: uses a tag (!); every value is text here; a text that starts so needs quotes")]
    [InlineData("chips: {}\n---\nchips: {}", "x.yaml(2,1): error FM004: holds a second document (---); use a second file")]
    [InlineData("? [a, b]\n: c", "x.yaml(1,1): error FM004: a key is no text")]
    [InlineData("a: *b", "x.yaml(1,4): error FM004: uses an anchor or alias (& or *); the format shares by 'like', engines and inherited sources; a text that starts so needs quotes")]
    public void With_YAML_that_the_format_does_not_use_is_refused(string text, string fault) => Assert.Equal(fault, Faults(text));

    [Theory]
    [InlineData("a: b: c")]
    [InlineData("a: [")]
    [InlineData("a: 'x")]
    [InlineData("%YAML 9.9\n---\na")]
    [InlineData("a: \"\\q\"")]
    [InlineData("a: |99\n x")]
    [InlineData("@")]
    public void That_is_no_YAML_is_one_fault(string text)
    {
        var faults = Faults(text);

        Assert.Contains("error FM003: cannot be read as YAML: ", faults, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', faults);
    }

    [Theory]
    [InlineData("a:\n\tb: c", 2, 1)]
    [InlineData("a:\n  b: c\n  \td: e", 3, 3)]
    public void Indented_with_a_tab_is_told_where_the_tab_stands(string text, int line, int column) =>
        Assert.Equal($"x.yaml({line},{column}): error FM003: a tab at the beginning of a line; YAML is indented with spaces", Faults(text));

    [Fact]
    public void Of_random_pieces_never_throws()
    {
        string[] pieces =
        [
            "chips", "cards", "titles", ": ", "\n", "\n  ", "\n    ", "- ", "{", "}", "[", "]", ", ", "'", "\"", "#", "|", ">", "!", "&a ", "*a ",
            "? ", "%", "---", "...", "name", "yes", "1.0", "\t", "\\", "\u00e9", "\ud83d\ude00", "\ud800", "\u0085", "supply", "drivers", "versions", "@",
        ];
        var random = new Random(1);
        for (var i = 0; i < 2_000; i++)
        {
            var text = string.Concat(Enumerable.Range(0, random.Next(1, 30)).Select(_ => pieces[random.Next(pieces.Length)]));
            var result = CollectionLoader.Load([new SourceText("x.yaml", text)]);
            Assert.True(result.Catalog is not null ^ result.Faults.Any(fault => fault.Severity == Severity.Error));
        }
    }
}

public sealed class A_collection_with_slips
{
    /// <summary>
    /// Damages a collection that has one of everything in 1,000 ways (words swapped, lines and characters lost, values
    /// replaced by lists and maps). Whatever comes of it is a catalog or a list of errors.
    /// </summary>
    [Fact]
    public void Never_throws()
    {
        string[] words = ["[]", "{}", "[a, b]", "{a: b}", "", "null", "none", "yes", "unknown", "1", "-1", "1.4", "nl-4", "direct3d 6", "x@y", "16 MiB", "'@ '"];
        var random = new Random(2);
        for (var i = 0; i < 1_000; i++)
        {
            var text = A_world_with_one_of_everything.World;
            for (var damage = random.Next(1, 4); damage > 0; damage--)
                text = Damage(text, random, words);
            var result = CollectionLoader.Load([new SourceText("v.yaml", Worlds.Vocabulary), new SourceText("x.yaml", text)]);
            Assert.True(result.Catalog is not null ^ result.Faults.Any(fault => fault.Severity == Severity.Error), text);
        }
    }

    private static string Damage(string text, Random random, string[] words)
    {
        var at = random.Next(text.Length);
        switch (random.Next(4))
        {
            case 0:
                return text.Remove(at, Math.Min(random.Next(1, 12), text.Length - at));
            case 1:
                var line = text.IndexOf('\n', at);
                return line < 0 ? text : text.Remove(line, Math.Max(0, text.IndexOf('\n', line + 1) - line));
            case 2:
                var value = text.IndexOf(": ", at, StringComparison.Ordinal);
                var end = value < 0 ? -1 : text.IndexOfAny([',', '}', ']', '\n'], value);
                return end < 0 ? text : text[..(value + 2)] + words[random.Next(words.Length)] + text[end..];
            default:
                return text.Insert(at, words[random.Next(words.Length)]);
        }
    }
}

public sealed class A_harmless_file
{
    [Theory]
    [InlineData("")]
    [InlineData("# only a comment\n")]
    [InlineData("---\n")]
    [InlineData("chips:\n")]
    [InlineData("\uFEFFchips: {}\r\n")]
    public void That_holds_nothing_loads(string text)
    {
        var result = CollectionLoader.Load([new SourceText("x.yaml", text)]);

        Assert.Equal(("", 0), (string.Join('\n', result.Faults), result.Catalog!.Chips.Count));
    }

    [Fact]
    public void With_other_endings_is_passed_over() =>
        Assert.Empty(CollectionLoader.Load([new SourceText("notes.txt", "\0"), new SourceText("a.csv", "")]).Faults);

    [Fact]
    public void Keeps_letters_of_all_scripts()
    {
        var result = CollectionLoader.Load([new SourceText("x.yaml", "chips: {c: {name: 'Süd 漢字 \U0001F600 <b>&'}}")]);

        Assert.Equal("Süd 漢字 \U0001F600 <b>&", result.Catalog!.Chips[0].Name);
    }
}
