using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>Differences in percent with their intervals, a row for each mode.</summary>
internal static class AgainstChart
{
    private const double Width = 800;
    private const double Left = 110;
    private const double Right = 500;
    private const double Top = 84;
    private const double LineHeight = 16;
    private const int TextWidth = 38;

    public static string Draw(AgainstReport comparison, string id)
    {
        var words = comparison.Rows.Select(WordsOf).ToList();
        var heights = words.Select(lines => Math.Max(44, lines.Count * LineHeight + 14)).ToList();
        var bottom = Top + heights.Sum();
        var drawing = new Drawing(id, Width, bottom + 34, $"{comparison.Subject}: {comparison.Change.A} against {comparison.Change.B}", comparison.Text);
        var ends = comparison.Rows.Where(row => row.PercentInterval is not null)
            .SelectMany(row => new[] { row.PercentInterval!.Low, row.PercentInterval.High }).Concat([-1, 1]).ToList();
        var x = Scale.Round(ends.Min(), ends.Max(), Left, Right);
        Frame.Headings(drawing, comparison.Subject, $"{comparison.Change.A} against {comparison.Change.B}, percent; line: interval at 95 %");
        drawing.Text(x.At(0) - 8, Top - 12, "← slower", "end", "faint");
        drawing.Text(x.At(0) + 8, Top - 12, "faster →", "start", "faint");
        Frame.Columns(drawing, x, Top, bottom);
        var y = Top;
        for (var i = 0; i < comparison.Rows.Count; i++)
        {
            Row(drawing, x, comparison.Rows[i], words[i], y + heights[i] / 2);
            y += heights[i];
        }

        return drawing.ToString();
    }

    private static List<(string Text, string Classes)> WordsOf(AgainstRow row) =>
    [
        .. Frame.Wrap(Names.Sentence(row.Result), TextWidth).Select(line => (line, row.IsShown ? "strong" : "")),
        .. row.Caveat.Length > 0 ? Frame.Wrap(Names.Sentence(row.Caveat), TextWidth + 4).Select(line => (line, "faint")) : [],
    ];

    private static void Row(Drawing drawing, Scale x, AgainstRow row, List<(string Text, string Classes)> words, double y)
    {
        drawing.Text(Left - 14, y + 4, row.Mode, "end");
        if (row is { Percent: { } percent, PercentInterval: { } interval })
        {
            drawing.LyingWhisker(y, x.At(interval.Low), x.At(interval.High), Drawing.Look(row.IsShown ? 0 : 5, "line"));
            drawing.Marker(x.At(percent), y, row.IsShown ? 0 : 5, row.IsShown);
        }

        for (var line = 0; line < words.Count; line++)
            drawing.Text(Right + 16, y + 4 + (line - (words.Count - 1) / 2.0) * LineHeight, words[line].Text, classes: words[line].Classes);
    }
}
