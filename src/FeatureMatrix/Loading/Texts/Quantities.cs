using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Texts;

/// <summary>
/// Numbers with their units, dates and modes. A unit is obligatory wherever a number could be read in two ways.
/// All readers return null and add a fault where the text is not what they want. Decimal point, no group marks.
/// </summary>
internal static partial class Quantities
{
    /// <summary>Units of sizes, in bytes.</summary>
    internal static readonly (string Unit, double Factor)[] SizeUnits = [("KiB", 1L << 10), ("MiB", 1L << 20), ("GiB", 1L << 30)];

    /// <summary>A size in bytes.</summary>
    public static long? Bytes(Scalar word, string label, FaultList faults)
    {
        var bytes = WithUnit(word, label, Forms.Size, SizeUnits, faults);
        return bytes is { } b ? (long)Math.Round(b) : null;
    }

    /// <summary>A size in whole MiB.</summary>
    public static int? Mebibytes(Scalar word, string label, FaultList faults) =>
        Bytes(word, label, faults) is { } bytes ? (int)(bytes >> 20) : null;

    /// <summary>A clock in MHz.</summary>
    public static double? Megahertz(Scalar word, string label, FaultList faults) =>
        WithUnit(word, label, Forms.Clock, [("kHz", 0.001), ("MHz", 1), ("GHz", 1000)], faults);

    /// <summary>A refresh rate in Hz.</summary>
    public static double? Hertz(Scalar word, string label, FaultList faults) =>
        WithUnit(word, label, Forms.Refresh, [("Hz", 1)], faults);

    /// <summary>A transfer rate in MB/s of 10^6 bytes.</summary>
    public static double? MegabytesPerSecond(Scalar word, string label, FaultList faults) =>
        WithUnit(word, label, Forms.Rate, [("MB/s", 1), ("GB/s", 1000)], faults);

    /// <summary>A voltage; the unit may be left out because nothing else is meant.</summary>
    public static double? Volts(Scalar word, string label, FaultList faults)
    {
        var text = word.Text.Trim();
        var number = text.EndsWith('V') ? text[..^1].TrimEnd() : text;
        if (Parse(number) is { } volts and > 0 and <= 12)
            return volts;
        faults.Add(FaultTexts.WrongForm(word.Origin, label, text, Forms.Voltage));
        return null;
    }

    /// <summary>A whole number within bounds.</summary>
    public static Func<Scalar, string, FaultList, int?> Whole(int least, int most) => (word, label, faults) =>
    {
        var text = word.Text.Trim();
        var isNegative = text.StartsWith('-');
        if (Digits.Decimal(text.AsSpan(isNegative ? 1 : 0)) is { } amount && (isNegative ? -amount : amount) is var number
            && number >= least && number <= most)
        {
            return number;
        }

        faults.Add(FaultTexts.WrongForm(word.Origin, label, word.Text, Forms.Whole(least, most)));
        return null;
    };

    /// <summary>A number within bounds.</summary>
    public static Func<Scalar, string, FaultList, double?> Number(double least, double most) => (word, label, faults) =>
    {
        if (Parse(word.Text.Trim()) is { } number && number >= least && number <= most)
            return number;
        faults.Add(FaultTexts.WrongForm(word.Origin, label, word.Text, Forms.Number(least, most)));
        return null;
    };

    /// <summary>A year.</summary>
    public static int? Year(Scalar word, string label, FaultList faults) => Whole(1970, 2100)(word, label, faults);

    /// <summary>A day.</summary>
    public static DateOnly? Date(Scalar word, string label, FaultList faults)
    {
        if (DateOnly.TryParseExact(word.Text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            return date;
        faults.Add(FaultTexts.WrongForm(word.Origin, label, word.Text, Forms.Date));
        return null;
    }

    /// <summary>A size in pixels.</summary>
    public static Mode? Mode(Scalar word, string label, FaultList faults)
    {
        var match = ModeForm().Match(word.Text.Trim());
        if (match.Success)
            return new Mode(Part("width"), Part("height"));
        faults.Add(FaultTexts.WrongForm(word.Origin, label, word.Text, Forms.Mode));
        return null;

        int Part(string name) => int.Parse(match.Groups[name].ValueSpan, CultureInfo.InvariantCulture);
    }

    /// <summary>A colour depth in bits.</summary>
    public static int? Depth(Scalar word, string label, FaultList faults) =>
        Words.Read(word, label, [("8", 8), ("15", 15), ("16", 16), ("24", 24), ("32", 32)], faults);

    /// <summary>A range of money, both ends being equal for one figure.</summary>
    public static (decimal Low, decimal High, string Currency)? Money(Scalar word, string label, FaultList faults)
    {
        var text = word.Text.Trim();
        var match = MoneyForm().Match(text);
        if (match.Success)
        {
            var low = Figure(match.Groups["low"]);
            var high = match.Groups["high"].Success ? Figure(match.Groups["high"]) : low;
            if (low <= high)
                return (low, high, match.Groups["currency"].Value);
        }

        faults.Add(NumberOnly().IsMatch(text)
            ? FaultTexts.WrongUnit(word.Origin, label, text, Forms.Money)
            : FaultTexts.WrongForm(word.Origin, label, text, Forms.Money));
        return null;

        static decimal Figure(Group group) => decimal.Parse(group.ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }

    private static double? WithUnit(
        Scalar word, string label, string form, IReadOnlyList<(string Unit, double Factor)> units, FaultList faults)
    {
        var text = word.Text.Trim();
        var match = NumberAndUnit().Match(text);
        if (WithUnit(match, units) is { } quantity)
            return quantity;
        faults.Add(match.Success ? FaultTexts.WrongUnit(word.Origin, label, text, form) : FaultTexts.WrongForm(word.Origin, label, text, form));
        return null;
    }

    /// <summary>A number times its unit; null where it is no number with one of the units.</summary>
    internal static double? WithUnit(string text, IReadOnlyList<(string Unit, double Factor)> units) => WithUnit(NumberAndUnit().Match(text.Trim()), units);

    private static double? WithUnit(Match match, IReadOnlyList<(string Unit, double Factor)> units)
    {
        foreach (var (unit, factor) in units)
        {
            if (match.Success && unit == match.Groups["unit"].Value)
                return Parse(match.Groups["number"].Value) * factor;
        }

        return null;
    }

    private static double? Parse(string text) =>
        PlainNumber().IsMatch(text) ? double.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@"^(?<number>[0-9]{1,9}(\.[0-9]{1,6})?)\s*(?<unit>[A-Za-z/]*)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex NumberAndUnit();

    [GeneratedRegex(@"^[0-9]{1,9}(\.[0-9]{1,6})?$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PlainNumber();

    [GeneratedRegex(@"^[0-9. ]+$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex NumberOnly();

    [GeneratedRegex(@"^(?<width>[1-9][0-9]{1,4})\s*x\s*(?<height>[1-9][0-9]{1,4})$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex ModeForm();

    [GeneratedRegex(
        @"^(?<low>[0-9]{1,9}(\.[0-9]{1,2})?)(\s*\.\.\s*(?<high>[0-9]{1,9}(\.[0-9]{1,2})?))?\s+(?<currency>[A-Z]{3})$",
        RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex MoneyForm();
}
