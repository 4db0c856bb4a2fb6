using System.Globalization;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Tests.Rendering.Workbook;

/// <summary>Colours by the formulas of WCAG 2.2 (relative luminance and contrast ratio, W3C Recommendation of 2023-10-05).</summary>
public sealed class Colours_of_cells
{
    public static TheoryData<CellTone> Tones => new(Enum.GetValues<CellTone>());

    [Theory]
    [MemberData(nameof(Tones))]
    public void Are_far_enough_apart_to_read_the_words(CellTone tone)
    {
        var (fill, ink) = Look.Colours(tone);
        Assert.InRange(Contrast(fill, ink), 7, 21);
    }

    [Fact]
    public void Tell_good_from_bad_in_greyscale_too()
    {
        // From nothing lost to does not run the fills only get darker; what is not known is the lightest of all.
        var severity = new[] { CellTone.Works, CellTone.Ungraded, CellTone.Severe, CellTone.DoesNotRun }
            .Select(tone => Luminance(Look.Colours(tone).Fill)).ToList();
        Assert.Equal(severity.OrderDescending(), severity);
        Assert.All(Enum.GetValues<CellTone>().Where(tone => tone != CellTone.NotKnown),
            tone => Assert.True(Luminance(Look.Colours(tone).Fill) < Luminance(Look.Colours(CellTone.NotKnown).Fill)));
        Assert.True(Contrast(Look.Colours(CellTone.Works).Fill, Look.Colours(CellTone.DoesNotRun).Fill) > 4.5);
    }

    [Fact]
    public void Are_measured_as_the_standard_says()
    {
        Assert.Equal(21, Contrast("#000000", "#FFFFFF"), 9);
    }

    private static double Contrast(string one, string other)
    {
        var (high, low) = (Math.Max(Luminance(one), Luminance(other)), Math.Min(Luminance(one), Luminance(other)));
        return (high + 0.05) / (low + 0.05);
    }

    private static double Luminance(string colour) =>
        (0.2126 * Channel(colour[1..3])) + (0.7152 * Channel(colour[3..5])) + (0.0722 * Channel(colour[5..7]));

    private static double Channel(string hex)
    {
        var value = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
