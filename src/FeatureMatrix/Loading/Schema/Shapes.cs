using System.Globalization;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Schema;

/// <summary>Shapes that many kinds share. Patterns repeat what <see cref="Quantities"/> reads.</summary>
internal static class Shapes
{
    private const string Amount = "[0-9]{1,9}(\\.[0-9]{1,6})?";

    public static readonly Shape Text = new Shape.Any();
    public static readonly Shape Size = new Shape.Form(Amount + "\\s*(KiB|MiB|GiB)");
    public static readonly Shape Clock = new Shape.Form(Amount + "\\s*(kHz|MHz|GHz)");
    public static readonly Shape Refresh = new Shape.Form(Amount + "\\s*Hz");
    public static readonly Shape Rate = new Shape.Form(Amount + "\\s*(MB/s|GB/s)");
    public static readonly Shape Mode = new Shape.Form("[1-9][0-9]{1,4}\\s*x\\s*[1-9][0-9]{1,4}");
    public static readonly Shape Date = new Shape.Form("[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])");
    public static readonly Shape Money = new Shape.Form("[0-9]{1,9}(\\.[0-9]{1,2})?(\\s*\\.\\.\\s*[0-9]{1,9}(\\.[0-9]{1,2})?)?\\s+[A-Z]{3}");
    public static readonly Shape Link = new Shape.Form("[Hh][Tt][Tt][Pp][Ss]?://.+");
    public static readonly Shape Sha256 = new Shape.Form("[0-9A-Fa-f]{64}");
    public static readonly Shape Bits = new Shape.Either([new Shape.Form("0x[0-9A-Fa-f]{1,8}"), Whole(0, uint.MaxValue)]);
    public static readonly Shape Volts = new Shape.Either([Number(0.000001, 12), new Shape.Form(Amount + "\\s*V?")]);
    public static readonly Shape Year = Whole(1970, 2100);
    public static readonly Shape YesNo = Word(Words.YesNo);
    public static readonly Shape YesNoUnknown = Word(Words.YesNoUnknown);
    public static readonly Shape Grade = Word(Words.Grades);
    public static readonly Shape Depth = new Shape.Word(["8", "15", "16", "24", "32"]);
    public static readonly Shape Speed = new Shape.Word(["1", "2", "4", "8", "16"]);
    public static readonly Shape Os = new Shape.Named("os");
    public static readonly Shape Api = new Shape.Named("api");
    public static readonly Shape Capability = new Shape.Named("capability");

    public static readonly Shape HardwareId = new Shape.Form(
        "[Pp][Cc][Ii]\\\\[Vv][Ee][Nn]_[0-9A-Fa-f]{4}&[Dd][Ee][Vv]_[0-9A-Fa-f]{4}"
        + "(&[Ss][Uu][Bb][Ss][Yy][Ss]_[0-9A-Fa-f]{8})?(&[Rr][Ee][Vv]_[0-9A-Fa-f]{2})?");

    /// <summary>The evidence that entities and long statements may carry.</summary>
    public static readonly IReadOnlyList<Key> Evidence =
    [
        new("source", new Shape.Named("source-named"), "Who says so: the id of a source, a text, or a map with text, link and grade. Inherited by everything inside."),
        new("grade", Grade, "How good the evidence is: measured, documented, inferred or hearsay. If absent: the source's, else documented; without any source, inferred."),
    ];

    /// <summary>A text by itself, or a list of them.</summary>
    public static Shape ListOf(Shape item) => new Shape.Either([item, new Shape.List(item)]);

    public static Shape Word<T>(IReadOnlyList<(string Word, T Value)> legal) => new Shape.Word([.. legal.Select(one => one.Word)]);

    public static Shape Whole(double least, double most) => new Shape.Number(least, most, IsWhole: true);

    public static Shape Number(double least, double most) => new Shape.Number(least, most, IsWhole: false);

    /// <summary>A number as it stands in a schema.</summary>
    public static string Print(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
