using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>Two columns, before and after, with a line from mean to mean for each mode.</summary>
internal static class BeforeAfterChart
{
    private const double Width = 720;
    private const double Before = 170;
    private const double After = 420;
    private const double Top = 112;
    private const double Bottom = 360;
    private const double LineHeight = 14;
    private const int NameWidth = 26;

    public static string Draw(AgainstReport comparison, string id)
    {
        var drawing = new Drawing(id, Width, Bottom + 24, $"{comparison.Subject}: before and after", comparison.Text);
        var all = comparison.Rows.SelectMany(row => new[] { row.A, row.B }).ToList();
        var y = Scale.Round(0, all.Max(speed => Math.Max(speed.Runs.Max(), speed.Interval?.High ?? 0)), Bottom, Top);
        Frame.Headings(drawing, comparison.Subject, $"frames per second; what changed: {comparison.Change.What}");
        Frame.Rows(drawing, y, 54, After + 40);
        Heading(drawing, Before, comparison.Change.B);
        Heading(drawing, After, comparison.Change.A);
        for (var i = 0; i < comparison.Rows.Count; i++)
        {
            var row = comparison.Rows[i];
            drawing.Curve([(Before, y.At(row.B.Fps)), (After, y.At(row.A.Fps))], i);
            Side(drawing, y, Before, row.B, i, row.IsShown);
            Side(drawing, y, After, row.A, i, row.IsShown);
            if (!comparison.Rows.Take(i).Any(above => Math.Abs(y.At(above.B.Fps) - y.At(row.B.Fps)) < LineHeight))
                drawing.Text(Before - 14, y.At(row.B.Fps) + 4, SpeedWording.Number(row.B.Fps), "end");
        }

        Frame.EndNames(drawing, After + 12, Bottom, comparison.Rows.Select((row, i) =>
            (y.At(row.A.Fps), $"{SpeedWording.Number(row.A.Fps)} at {row.Mode}, {row.Short}", i)).ToList(), NameWidth);
        return drawing.ToString();
    }

    private static void Heading(Drawing drawing, double x, string text)
    {
        var lines = Frame.Wrap(text, NameWidth);
        for (var line = 0; line < lines.Count; line++)
            drawing.Text(x, Top - 14 - (lines.Count - 1 - line) * 16, lines[line], "middle", "strong");
    }

    private static void Side(Drawing drawing, Scale y, double x, MeanSpeed speed, int look, bool isFilled)
    {
        foreach (var run in speed.Runs)
            drawing.Run(x, y.At(run), look);
        if (speed.Interval is { } interval)
            drawing.Whisker(x, y.At(Math.Max(0, interval.Low)), y.At(interval.High), look);
        drawing.Marker(x, y.At(speed.Fps), look, isFilled);
    }
}
