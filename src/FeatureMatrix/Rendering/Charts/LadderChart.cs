using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>Frames per second over megapixels, a curve for each ladder.</summary>
internal static class LadderChart
{
    private const double Width = 780;
    private const double Left = 54;
    private const double Right = 552;
    private const double Top = 62;
    private const double Bottom = 356;
    private const double Height = 430;
    private const int NameWidth = 28;
    private const double RoomForKnee = 1.12;

    public static string Draw(SceneReport scene)
    {
        var drawing = new Drawing($"ladder-{scene.Id}", Width, Height, $"Resolution ladders of {scene.Subject}", scene.Text);
        var modes = scene.Ladders.SelectMany(ladder => ladder.Rungs).Select(rung => rung.Mode).DistinctBy(mode => mode.Pixels).OrderBy(mode => mode.Pixels).ToList();
        var fastest = scene.Ladders.SelectMany(ladder => ladder.Rungs).Max(rung => Math.Max(rung.Speed.Runs.Max(), rung.Speed.Interval?.High ?? 0));
        var margin = (modes[^1].Pixels - modes[0].Pixels) * 0.04;
        var x = new Scale(modes[0].Pixels - margin, modes[^1].Pixels + margin, Left, Right);
        var y = Scale.Round(0, fastest * RoomForKnee, Bottom, Top);
        Frame.Headings(drawing, scene.Subject, $"{scene.Shared}{(scene.Shared.Length > 0 ? "; " : "")}frames per second by mode, higher is faster");
        Frame.Rows(drawing, y, Left, Right);
        Modes(drawing, x, modes);
        for (var i = 0; i < scene.Ladders.Count; i++)
            Ladder(drawing, x, y, scene.Ladders[i], i, scene.Ladders.Count);
        Frame.EndNames(
            drawing, Right, Bottom + 20,
            scene.Ladders.Select((ladder, i) => (y.At(ladder.Curve.Count > 0 ? ladder.Curve[^1].Fps : ladder.Rungs[^1].Speed.Fps), ladder.Name, i)).ToList(), NameWidth);
        Key(drawing);
        return drawing.ToString();
    }

    private static void Ladder(Drawing drawing, Scale x, Scale y, LadderReport ladder, int look, int ladders)
    {
        var points = ladder.Curve.Count > 0
            ? ladder.Curve.Select(point => (x.At(point.Pixels), y.At(point.Fps)))
            : ladder.Rungs.Select(rung => (x.At(rung.Mode.Pixels), y.At(rung.Speed.Fps)));
        drawing.Curve(points, look);
        if (ladder.Fit?.Knee is { Value: { } knee } estimate)
            Knee(drawing, x, y, ladder, look, knee, estimate.Interval);
        foreach (var rung in ladder.Predicted)
        {
            var (px, py) = (x.At(rung.Mode.Pixels), y.At(rung.Speed.Fps));
            drawing.Line(px - 3, py - 3, px + 3, py + 3, Drawing.Look(look, "line"));
            drawing.Line(px - 3, py + 3, px + 3, py - 3, Drawing.Look(look, "line"));
        }

        // Ladders that share a mode stand a little apart, so that no interval hides another.
        var aside = (look - (ladders - 1) / 2.0) * 5;
        foreach (var rung in ladder.Rungs)
        {
            var at = x.At(rung.Mode.Pixels) + aside;
            foreach (var run in rung.Speed.Runs)
                drawing.Run(at, y.At(run), look);
            if (rung.Speed.Interval is { } interval)
                drawing.Whisker(at, y.At(Math.Max(0, interval.Low)), y.At(interval.High), look);
            drawing.Marker(at, y.At(rung.Speed.Fps), look, rung.Bound == Bound.Card, rung.Bound == Bound.NotKnown ? 3.5 : 5);
            if (rung.Bound == Bound.Mixed)
                drawing.Marker(at, y.At(rung.Speed.Fps), look, isFilled: true, size: 1.5);
        }
    }

    private static void Knee(Drawing drawing, Scale x, Scale y, LadderReport ladder, int look, double knee, Interval interval)
    {
        var fps = ladder.Curve.MinBy(point => Math.Abs(point.Pixels - knee * 1e6))!.Fps;
        var (at, over) = (x.At(knee * 1e6), y.At(fps) - 16);
        drawing.LyingWhisker(over, x.At(Math.Max(x.Low, interval.Low * 1e6)), x.At(Math.Min(x.High, interval.High * 1e6)), Drawing.Look(look, "line"));
        drawing.Line(at, over, at, y.At(fps), Drawing.Look(look, "line"));
        drawing.Text(at, over - 8, "knee", "middle", "faint");
    }

    /// <summary>A tick for each measured mode; names too close to the last one go a line lower.</summary>
    private static void Modes(Drawing drawing, Scale x, IReadOnlyList<Mode> modes)
    {
        var (last, low) = (double.NegativeInfinity, false);
        foreach (var mode in modes)
        {
            var at = x.At(mode.Pixels);
            low = at - last < 66 && !low;
            drawing.Line(at, Bottom, at, Bottom + (low ? 20 : 5), "axis");
            drawing.Text(at, Bottom + (low ? 33 : 18), mode.ToString(), "middle", "faint");
            last = at;
        }
    }

    private static void Key(Drawing drawing)
    {
        const double Y = Height - 12;
        var x = Left;
        foreach (var (filled, dot, text) in new[] { (false, false, "processor-bound"), (false, true, "mixed"), (true, false, "card-bound") })
        {
            drawing.Marker(x, Y - 4, 5, filled);
            if (dot)
                drawing.Marker(x, Y - 4, 5, isFilled: true, size: 1.5);
            drawing.Text(x + 10, Y, text, classes: "faint");
            x += 28 + text.Length * 6.4;
        }

        drawing.Marker(x, Y - 4, 5, isFilled: false, size: 3.5);
        drawing.Text(x + 10, Y, "limit not known", classes: "faint");
        drawing.Text(x + 122, Y, "× predicted   ○ one run   ⌶ mean at 95 %", classes: "faint");
    }
}
