namespace FeatureMatrix.Rendering.Charts;

/// <summary>What charts share: headings, grids and names beside their lines.</summary>
internal static class Frame
{
    private const double LineHeight = 16;

    /// <summary>Heading and the line below it.</summary>
    public static void Headings(Drawing drawing, string heading, string below)
    {
        drawing.Text(12, 22, heading, classes: "strong");
        if (below.Length > 0)
            drawing.Text(12, 40, below, classes: "faint");
    }

    /// <summary>Lines across with their values to the left.</summary>
    public static void Rows(Drawing drawing, Scale y, double left, double right)
    {
        foreach (var tick in y.Ticks())
        {
            drawing.Line(left, y.At(tick), right, y.At(tick), tick == 0 ? "axis" : "grid");
            drawing.Text(left - 8, y.At(tick) + 4, Scale.Text(tick), "end", "faint");
        }
    }

    /// <summary>Lines down with their values below.</summary>
    public static void Columns(Drawing drawing, Scale x, double top, double bottom)
    {
        foreach (var tick in x.Ticks())
        {
            drawing.Line(x.At(tick), top, x.At(tick), bottom, tick == 0 ? "axis" : "grid");
            drawing.Text(x.At(tick), bottom + 17, Scale.Text(tick), "middle", "faint");
        }
    }

    /// <summary>Texts cut into lines of some width, at blanks.</summary>
    public static IReadOnlyList<string> Wrap(string text, int width)
    {
        List<string> lines = [""];
        foreach (var word in text.Split(' '))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + word.Length > width)
                lines.Add(word);
            else
                lines[^1] = lines[^1].Length > 0 ? $"{lines[^1]} {word}" : word;
        }

        return lines;
    }

    /// <summary>Names beside the ends of lines, pushed apart so that none covers another, each tied to its line.</summary>
    public static void EndNames(Drawing drawing, double x, double bottom, IReadOnlyList<(double Y, string Name, int Look)> ends, int width)
    {
        var blocks = ends.OrderBy(end => end.Y).ThenBy(end => end.Look).Select(end => (end.Y, Lines: Wrap(end.Name, width), end.Look)).ToList();
        var tops = new double[blocks.Count];
        var next = double.NegativeInfinity;
        for (var i = 0; i < blocks.Count; i++)
        {
            tops[i] = Math.Max(next, blocks[i].Y - blocks[i].Lines.Count * LineHeight / 2);
            next = tops[i] + blocks[i].Lines.Count * LineHeight + 4;
        }

        next = bottom;
        for (var i = blocks.Count - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], next - blocks[i].Lines.Count * LineHeight);
            next = tops[i] - 4;
        }

        for (var i = 0; i < blocks.Count; i++)
        {
            var middle = tops[i] + blocks[i].Lines.Count * LineHeight / 2;
            drawing.Line(x + 4, blocks[i].Y, x + 18, middle, Drawing.Look(blocks[i].Look, "line"));
            for (var line = 0; line < blocks[i].Lines.Count; line++)
                drawing.Text(x + 22, tops[i] + 12 + line * LineHeight, blocks[i].Lines[line]);
        }
    }
}
