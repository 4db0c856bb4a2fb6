using System.Globalization;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>A piece of a bar.</summary>
/// <param name="Tone">The tone, kebab-case.</param>
/// <param name="Text">Count and tone in words.</param>
/// <param name="Count">Titles.</param>
/// <param name="Start">Where it begins, in percent of the bar.</param>
/// <param name="Width">How wide it is, in percent of the bar: its share of the weight.</param>
public sealed record BarPiece(string Tone, string Text, int Count, string Start, string Width);

/// <summary>A card's or setup's titles by tone, as wide as they weigh, from good to bad.</summary>
/// <param name="Pieces">The pieces; tones that do not occur are left out.</param>
/// <param name="Text">All of it in words.</param>
public sealed record Bar(IReadOnlyList<BarPiece> Pieces, string Text)
{
    /// <summary>The bar of a column.</summary>
    public static Bar Of(CoverageColumn column)
    {
        var all = column.Weight.Values.Sum();
        var tones = Enum.GetValues<CellTone>().Where(tone => column.Counts[tone] > 0).ToList();
        var pieces = new List<BarPiece>();
        var start = 0.0;
        foreach (var tone in tones)
        {
            var width = all > 0 ? column.Weight[tone] / all * 100 : 0;
            pieces.Add(new BarPiece(Tile.Kebab(tone), CellWording.Count(tone, column.Counts[tone]), column.Counts[tone], Percent(start), Percent(width)));
            start += width;
        }

        return new Bar(pieces, string.Join("; ", pieces.Select(piece => piece.Text)));
    }

    private static string Percent(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
