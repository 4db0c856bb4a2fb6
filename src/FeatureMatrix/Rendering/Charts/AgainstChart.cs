using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>Differences in percent with their intervals, a row for each mode.</summary>
internal static class AgainstChart
{
    private const double Width = 780;
    private const double Left = 150;
    private const double Right = 520;
    private const double Top = 84;
    private const double RowHeight = 46;
    private const int TextWidth = 36;

    public static string Draw(AgainstReport comparison, string id)
    {
        var bottom = Top + RowHeight * comparison.Rows.Count;
        var drawing = new Drawing(id, Width, bottom + 44, $"{comparison.Subject}: {comparison.Change.A} against {comparison.Change.B}", comparison.Text);
        var ends = comparison.Rows.Where(row => row.PercentInterval is not null)
            .SelectMany(row => new[] { row.PercentInterval!.Low, row.PercentInterval.High }).Concat([-1, 1]).ToList();
        var x = Scale.Round(ends.Min(), ends.Max(), Left, Right);
        Frame.Headings(drawing, comparison.Subject, $"{comparison.Change.A} against {comparison.Change.B}, percent; line: interval at 95 %");
        drawing.Text(x.At(0) - 8, Top - 12, "← slower", "end", "faint");
        drawing.Text(x.At(0) + 8, Top - 12, "faster →", "start", "faint");
        Frame.Columns(drawing, x, Top, bottom);
        for (var i = 0; i < comparison.Rows.Count; i++)
            Row(drawing, x, comparison.Rows[i], Top + RowHeight * (i + 0.5));
        return drawing.ToString();
    }

    private static void Row(Drawing drawing, Scale x, AgainstRow row, double y)
    {
        drawing.Text(Left - 14, y + 4, row.Mode, "end");
        if (row is { Percent: { } percent, PercentInterval: { } interval })
        {
            drawing.LyingWhisker(y, x.At(interval.Low), x.At(interval.High), Drawing.Look(row.IsShown ? 0 : 5, "line"));
            drawing.Marker(x.At(percent), y, row.IsShown ? 0 : 5, row.IsShown);
        }

        var words = Frame.Wrap(Names.Sentence(row.Text), TextWidth);
        for (var line = 0; line < words.Count; line++)
            drawing.Text(Right + 16, y + 4 + (line - (words.Count - 1) / 2.0) * 15, words[line], classes: line == 0 && row.IsShown ? "strong" : "");
    }
}
