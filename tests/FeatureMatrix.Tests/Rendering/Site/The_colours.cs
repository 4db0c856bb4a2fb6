using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Site;

/// <summary>
/// Contrast of the style sheet's colours, worked out from its tokens by the definition of relative luminance and contrast ratio
/// in WCAG 2.2 (w3.org/TR/WCAG22, glossary). Nothing is rounded before it is compared.
/// </summary>
public sealed partial class The_colours
{
    private static readonly IReadOnlyDictionary<string, string>[] Schemes = Read();

    public static TheoryData<int, string, string> Texts => Pairs(
        ("ink", "paper"), ("ink", "sheet"), ("soft", "paper"), ("soft", "sheet"), ("link", "paper"), ("link", "sheet"), ("paper", "ink"),
        ("works-ink", "works"), ("works-ink", "paper"), ("cosmetic-ink", "cosmetic"), ("ungraded-ink", "ungraded"), ("severe-ink", "severe"),
        ("unknown-ink", "paper"), ("software-ink", "software"), ("fails-ink", "fails"), ("works-edge", "paper"));

    public static TheoryData<int, string, string> Edges => Pairs(
        ("works-edge", "paper"), ("works-edge", "works"), ("cosmetic-edge", "paper"), ("cosmetic-edge", "cosmetic"), ("ungraded-edge", "paper"), ("ungraded-edge", "ungraded"),
        ("severe-edge", "paper"), ("severe-edge", "severe"), ("unknown-edge", "paper"), ("software-edge", "paper"), ("software-edge", "software"),
        ("fails-edge", "paper"), ("rule", "paper"), ("rule", "sheet"));

    // FACTS table J: published values of the formula, so that the check itself is checked.
    [Theory]
    [InlineData("#000000", "#ffffff", 21.0)]
    [InlineData("#0000ff", "#ffffff", 8.59)]
    [InlineData("#0000ff", "#ff0000", 2.15)]
    [InlineData("#767676", "#ffffff", 4.54)]
    public void Are_measured_as_published(string one, string other, double ratio) => Assert.Equal(ratio, Contrast(one, other), 2);

    [Theory]
    [MemberData(nameof(Texts))]
    public void Let_text_be_read(int scheme, string text, string ground) =>
        Assert.True(Contrast(Schemes[scheme][text], Schemes[scheme][ground]) >= 4.5, $"{text} on {ground}: {Contrast(Schemes[scheme][text], Schemes[scheme][ground])}");

    [Theory]
    [MemberData(nameof(Edges))]
    public void Let_edges_be_seen(int scheme, string edge, string ground) =>
        Assert.True(Contrast(Schemes[scheme][edge], Schemes[scheme][ground]) >= 3, $"{edge} on {ground}: {Contrast(Schemes[scheme][edge], Schemes[scheme][ground])}");

    private static TheoryData<int, string, string> Pairs(params (string One, string Other)[] pairs)
    {
        var data = new TheoryData<int, string, string>();
        for (var scheme = 0; scheme < 2; scheme++)
        {
            foreach (var (one, other) in pairs)
                data.Add(scheme, one, other);
        }

        return data;
    }

    // Light is the first block of tokens, dark the second, which overrides it.
    private static IReadOnlyDictionary<string, string>[] Read()
    {
        var css = File.ReadAllText(Repository.PathTo("templates", "site", "style.css"));
        var blocks = css.Split(":root {").Skip(1).Select(block => Token().Matches(block[..block.IndexOf('}', StringComparison.Ordinal)])
            .ToDictionary(match => match.Groups["name"].Value, match => match.Groups["colour"].Value, StringComparer.Ordinal)).ToList();
        var dark = new Dictionary<string, string>(blocks[0], StringComparer.Ordinal);
        foreach (var (name, colour) in blocks[1])
            dark[name] = colour;
        return [blocks[0], dark];
    }

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        var hex = colour.Length == 4 ? string.Concat(colour.Skip(1).Select(c => $"{c}{c}")) : colour[1..];
        return (0.2126 * Linear(hex[..2])) + (0.7152 * Linear(hex[2..4])) + (0.0722 * Linear(hex[4..]));
    }

    private static double Linear(string hex)
    {
        var value = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    [GeneratedRegex("--(?<name>[a-z-]+): (?<colour>#[0-9a-f]+);", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Token();
}
