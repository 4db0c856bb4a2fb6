using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using FeatureMatrix.Rendering.Tables;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>
/// An SVG drawing (W3C SVG 1.1) that grows element by element. It is drawn in the colour of the text around it; the site's style sheet gives
/// each of six looks a colour of its own, but shapes and dashes tell them apart without.
/// </summary>
internal sealed class Drawing
{
    /// <summary>How many lines can be told apart before looks repeat.</summary>
    public const int Looks = 6;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly string[] Dashes = ["", "9 4", "2 4", "12 4 2 4", "5 3", "1 3"];

    private readonly XElement _root;

    /// <summary>An empty drawing with its name and its alternative in words.</summary>
    /// <param name="id">Unique on the page: small letters, digits, hyphens.</param>
    /// <param name="width">In pixels.</param>
    /// <param name="height">In pixels.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="description">All that it shows, in words.</param>
    public Drawing(string id, double width, double height, string title, string description) => _root = new XElement(
        Svg + "svg",
        new XAttribute("class", "bench-chart"), new XAttribute("role", "img"), new XAttribute("fill", "currentColor"),
        new XAttribute("font-family", "sans-serif"), new XAttribute("font-size", "13"),
        new XAttribute("aria-labelledby", $"{id}-title {id}-desc"),
        new XAttribute("viewBox", $"0 0 {Number(width)} {Number(height)}"),
        new XAttribute("width", Number(width)), new XAttribute("height", Number(height)),
        new XElement(Svg + "title", new XAttribute("id", $"{id}-title"), TextTable.Clean(title)),
        new XElement(Svg + "desc", new XAttribute("id", $"{id}-desc"), TextTable.Clean(description)));

    /// <summary>The classes of a line's look.</summary>
    public static string Look(int look, string more) => $"look-{(look % Looks).ToString(CultureInfo.InvariantCulture)} {more}";

    /// <summary>A straight line.</summary>
    public void Line(double x1, double y1, double x2, double y2, string classes) =>
        Add("line", classes, ("x1", Number(x1)), ("y1", Number(y1)), ("x2", Number(x2)), ("y2", Number(y2)));

    /// <summary>A rectangle; a negative size is none.</summary>
    public void Rectangle(double x, double y, double width, double height, string classes) =>
        Add("rect", classes, ("x", Number(x)), ("y", Number(y)), ("width", Number(Math.Max(0, width))), ("height", Number(Math.Max(0, height))));

    /// <summary>A line through points, dashed by its look.</summary>
    public void Curve(IEnumerable<(double X, double Y)> points, int look)
    {
        var path = new StringBuilder();
        foreach (var (x, y) in points)
            path.Append(path.Length == 0 ? "M" : " L").Append(Number(x)).Append(' ').Append(Number(y));
        var dashes = Dashes[look % Looks];
        Add("path", Look(look, "line curve"), dashes.Length > 0 ? [("d", path.ToString()), ("stroke-dasharray", dashes)] : [("d", path.ToString())]);
    }

    /// <summary>A mean with its interval: a line with two end strokes.</summary>
    public void Whisker(double x, double low, double high, int look)
    {
        Line(x, low, x, high, Look(look, "line"));
        Line(x - 4, low, x + 4, low, Look(look, "line"));
        Line(x - 4, high, x + 4, high, Look(look, "line"));
    }

    /// <summary>The same, lying.</summary>
    public void LyingWhisker(double y, double low, double high, string classes)
    {
        Line(low, y, high, y, classes);
        Line(low, y - 5, low, y + 5, classes);
        Line(high, y - 5, high, y + 5, classes);
    }

    /// <summary>A single run.</summary>
    public void Run(double x, double y, int look) => Add("circle", Look(look, "line run"), ("cx", Number(x)), ("cy", Number(y)), ("r", "2.5"));

    /// <summary>The shape that belongs to a look, filled or hollow.</summary>
    public void Marker(double x, double y, int look, bool isFilled, double size = 5) => Add(
        "path", Look(look, $"line {(isFilled ? "solid" : "hollow")}"), ("d", Shape(x, y, look % Looks, size)), ("stroke-width", "2"));

    /// <summary>Text; the anchor is start, middle or end.</summary>
    public void Text(double x, double y, string text, string anchor = "start", string classes = "") =>
        _root.Add(new XElement(
            Svg + "text", new XAttribute("x", Number(x)), new XAttribute("y", Number(y)), new XAttribute("text-anchor", anchor),
            classes.Length > 0 ? new XAttribute("class", classes) : null, TextTable.Clean(text)));

    /// <summary>The drawing, one element a line, without a declaration, to stand in a page or in a file of its own.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        using (var writer = XmlWriter.Create(text, new XmlWriterSettings { OmitXmlDeclaration = true, Indent = true, IndentChars = " ", NewLineChars = "\n" }))
            _root.WriteTo(writer);
        return text.Append('\n').ToString();
    }

    private static string Shape(double x, double y, int look, double s)
    {
        (double X, double Y)[] corners = look switch
        {
            0 => [.. Enumerable.Range(0, 16).Select(i => (x + s * Math.Cos(i * Math.PI / 8), y + s * Math.Sin(i * Math.PI / 8)))],
            1 => [(x - s, y - s), (x + s, y - s), (x + s, y + s), (x - s, y + s)],
            2 => [(x, y - s * 1.2), (x + s * 1.1, y + s), (x - s * 1.1, y + s)],
            3 => [(x, y - s * 1.3), (x + s * 1.3, y), (x, y + s * 1.3), (x - s * 1.3, y)],
            4 => [(x - s * 1.1, y - s), (x + s * 1.1, y - s), (x, y + s * 1.2)],
            _ => [(x - s * .5, y - s), (x + s * .5, y - s), (x + s, y), (x + s * .5, y + s), (x - s * .5, y + s), (x - s, y)],
        };
        return $"M{string.Join(" L", corners.Select(corner => $"{Number(corner.X)} {Number(corner.Y)}"))} Z";
    }

    private void Add(string element, string classes, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var added = new XElement(
            Svg + element, new XAttribute("class", classes), new XAttribute("stroke", "currentColor"),
            new XAttribute("fill", classes.Contains("solid", StringComparison.Ordinal) ? "currentColor" : "none"));
        foreach (var (name, value) in attributes)
            added.Add(new XAttribute(name, value));
        _root.Add(added);
    }

    private static string Number(double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);
}
