using System.Globalization;
using FeatureMatrix.Rendering.Charts;

namespace FeatureMatrix.Benchmarks;

/// <summary>
/// Growth curves on logarithmic axes: cells to the right, seconds of the processors upwards. They come from the table of the results, so
/// that figures and picture cannot part.
/// </summary>
internal static class GrowthChart
{
    private const double Left = 80;
    private const double Right = 560;
    private const double Top = 70;
    private const double Bottom = 430;

    /// <summary>Draws the table of a document that begins with the row <c>| engine |</c>; its columns are S, M, L and XL.</summary>
    public static void Write(string document, string picture)
    {
        double[] cells = [500, 100_000, 5_000_000, 100_000_000];
        var curves = File.ReadLines(document).SkipWhile(line => !line.StartsWith("| engine |", StringComparison.Ordinal)).Skip(2)
            .TakeWhile(line => line.StartsWith('|')).Select(line => line.Trim('|').Split('|').Select(cell => cell.Trim()).ToList())
            .Select(row => (Name: row[0], Points: row.Skip(1).Zip(cells, (text, at) => (At: at, Seconds: Seconds(text))).Where(point => point.Seconds > 0).ToList())).ToList();
        var all = curves.SelectMany(curve => curve.Points).Select(point => Math.Log10(point.Seconds)).ToList();
        var x = new Scale(Math.Log10(cells[0]), Math.Log10(cells[^1]), Left, Right);
        var y = new Scale(Math.Floor(all.Min()), Math.Ceiling(all.Max()), Bottom, Top);
        var drawing = new Drawing(
            "growth", 860, Bottom + 50, "How the time of each engine grows", string.Join(' ', curves.Select(curve =>
                $"{curve.Name}: {string.Join(", ", curve.Points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.Seconds} s for {point.At:#,0} cells")))}.")));
        Frame.Headings(drawing, "Seconds of processors against cells", "both axes logarithmic: one step is ten times");
        for (var power = y.Low; power <= y.High; power++)
        {
            drawing.Line(Left, y.At(power), Right, y.At(power), "grid");
            drawing.Text(Left - 8, y.At(power) + 4, string.Create(CultureInfo.InvariantCulture, $"{Math.Pow(10, power):0.###} s"), "end", "faint");
        }

        foreach (var (size, at) in new[] { "S", "M", "L", "XL" }.Zip(cells))
        {
            drawing.Line(x.At(Math.Log10(at)), Top, x.At(Math.Log10(at)), Bottom, "grid");
            drawing.Text(x.At(Math.Log10(at)), Bottom + 17, string.Create(CultureInfo.InvariantCulture, $"{size}: {at:#,0}"), "middle", "faint");
        }

        for (var look = 0; look < curves.Count; look++)
        {
            var places = curves[look].Points.Select(point => (X: x.At(Math.Log10(point.At)), Y: y.At(Math.Log10(point.Seconds)))).ToList();
            drawing.Curve(places, look);
            drawing.Line(places[^1].X, places[^1].Y, Right, places[^1].Y, "grid");
            foreach (var place in places)
                drawing.Marker(place.X, place.Y, look, isFilled: look < Drawing.Looks);
        }

        Frame.EndNames(drawing, Right, Bottom, [.. curves.Select((curve, look) => (y.At(Math.Log10(curve.Points[^1].Seconds)), curve.Name, look))], 30);
        File.WriteAllText(picture, drawing.ToString());
    }

    private static double Seconds(string text) => double.TryParse(text.Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) ? seconds : 0;
}
