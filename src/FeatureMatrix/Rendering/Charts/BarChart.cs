using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>A lying bar for each card, with its interval, its runs and the floor.</summary>
internal static class BarChart
{
    private const double Width = 780;
    private const double Left = 210;
    private const double Right = 560;
    private const double Top = 70;
    private const double RowHeight = 38;
    private const int NameWidth = 28;

    public static string Draw(CardBars bars, string id)
    {
        var bottom = Top + RowHeight * bars.Bars.Count;
        var drawing = new Drawing(id, Width, bottom + 34, bars.Subject, bars.Text);
        var highest = bars.Bars.Max(bar => Math.Max(bar.Speed.Runs.Max(), bar.Speed.Interval?.High ?? 0));
        var x = Scale.Round(0, Math.Max(highest, bars.Floor ?? 0), Left, Right);
        Frame.Headings(drawing, bars.Subject, $"frames per second; {bars.Setup}");
        Frame.Columns(drawing, x, Top, bottom);
        for (var i = 0; i < bars.Bars.Count; i++)
            Bar(drawing, x, bars.Bars[i], Top + RowHeight * (i + 0.5));
        if (bars.Floor is { } floor)
        {
            drawing.Line(x.At(floor), Top - 8, x.At(floor), bottom, "floor");
            drawing.Text(x.At(floor), Top - 12, $"floor {Scale.Text(floor)}", "middle", "faint");
        }

        return drawing.ToString();
    }

    private static void Bar(Drawing drawing, Scale x, SpeedBar bar, double y)
    {
        drawing.Rectangle(Left, y - 10, x.At(bar.Speed.Fps) - Left, 20, Drawing.Look(0, "line solid bar"));
        foreach (var run in bar.Speed.Runs)
            drawing.Run(x.At(run), y, 0);
        if (bar.Speed.Interval is { } interval)
            drawing.LyingWhisker(y, x.At(Math.Max(0, interval.Low)), x.At(interval.High), "axis");
        var name = Frame.Wrap(bar.Name, NameWidth);
        for (var line = 0; line < name.Count; line++)
            drawing.Text(Left - 10, y + 4 + (line - (name.Count - 1) / 2.0) * 15, name[line], "end");
        drawing.Text(Right + 14, y + 4, bar.Speed.Text);
    }
}
