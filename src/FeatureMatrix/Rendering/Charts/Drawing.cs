using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using FeatureMatrix.Rendering.Tables;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>
/// An SVG drawing (W3C SVG 1.1) that grows element by element. Everything is drawn in the colour of the text around it, or in one of six
/// line colours that the style sheet within names; shapes and dashes tell lines apart without them.
/// </summary>
internal sealed class Drawing
{
    /// <summary>How many lines can be told apart before looks repeat.</summary>
    public const int Looks = 6;

    private const string Style =
        """
        .bench-chart{font:13px/1.3 system-ui,sans-serif;fill:currentColor;max-width:100%;height:auto}
        .bench-chart .axis{stroke:currentColor;stroke-width:1}
        .bench-chart .grid{stroke:currentColor;stroke-width:1;opacity:.16}
        .bench-chart .faint{opacity:.72;font-size:12px}
        .bench-chart .strong{font-weight:600}
        .bench-chart .curve{fill:none;stroke-width:2}
        .bench-chart .bar{fill-opacity:.28;stroke-width:1.5}
        .bench-chart .floor{stroke:currentColor;stroke-width:1.5;stroke-dasharray:7 4}
        .bench-chart .run{fill:none;stroke-width:1;opacity:.6}
        .bench-chart .hollow{fill:var(--paper,#fff)}
        .bench-chart .look-0{--look:#0072b2}.bench-chart .look-1{--look:#b84f00}.bench-chart .look-2{--look:#00795a}
        .bench-chart .look-3{--look:#9c4a7b}.bench-chart .look-4{--look:#7d6d00}.bench-chart .look-5{--look:#4d5562}
        @media screen and (prefers-color-scheme:dark){
        .bench-chart .look-0{--look:#56b4e9}.bench-chart .look-1{--look:#f08a3c}.bench-chart .look-2{--look:#2fb98c}
        .bench-chart .look-3{--look:#d58fb8}.bench-chart .look-4{--look:#d6c437}.bench-chart .look-5{--look:#b9bfc9}}
        .bench-chart .line{stroke:var(--look)}.bench-chart .solid{fill:var(--look)}
        """;

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
        new XAttribute("class", "bench-chart"), new XAttribute("role", "img"),
        new XAttribute("aria-labelledby", $"{id}-title {id}-desc"),
        new XAttribute("viewBox", $"0 0 {Number(width)} {Number(height)}"),
        new XAttribute("width", Number(width)), new XAttribute("height", Number(height)),
        new XElement(Svg + "title", new XAttribute("id", $"{id}-title"), TextTable.Clean(title)),
        new XElement(Svg + "desc", new XAttribute("id", $"{id}-desc"), TextTable.Clean(description)),
        new XElement(Svg + "style", Style));

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
        var added = new XElement(Svg + element, new XAttribute("class", classes));
        foreach (var (name, value) in attributes)
            added.Add(new XAttribute(name, value));
        _root.Add(added);
    }

    private static string Number(double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);
}
