using System.Globalization;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>The decimal mark of a file, which its first number with one decides, and the faults found so far.</summary>
internal sealed class RunLogState
{
    /// <summary>A file with so many faults is not read on.</summary>
    public const int MostFaults = 1_000;

    public char? DecimalMark { get; set; }

    public List<RunLogFault> Faults { get; } = [];

    public bool IsHopeless => Faults.Count >= MostFaults;

    public void Add(RunLogFaultKind kind, int line, string column, string found, IEnumerable<string>? legal = null)
    {
        var words = new EquatableList<string>(legal ?? []);
        Faults.Add(new RunLogFault(kind, line, column, found, words, found.Length == 0 ? null : Nearest.To(found, words)));
    }
}

/// <summary>One cell, blanks around it removed. Each reading returns null, or nothing, for an empty cell and for a fault.</summary>
internal sealed record RunLogCell(string Value, int Line, string Column, RunLogState State)
{
    public string Text() => Value;

    public int? Whole(int lowest, int highest)
    {
        if (Value.Length == 0)
            return null;
        if (!Value.All(char.IsAsciiDigit))
            return Fault<int>(RunLogFaultKind.NotWhole);
        return Digits.Decimal(Value) is { } number
            && number >= lowest && number <= highest
            ? number
            : Fault<int>(RunLogFaultKind.OutOfRange, string.Create(CultureInfo.InvariantCulture, $"{lowest}..{highest}"));
    }

    public double? Number() => Number(Value, number => true, "");

    public double? Positive() => Number(Value, number => number > 0, "> 0");

    public double? NotNegative() => Number(Value, number => number >= 0, ">= 0");

    public bool? Either(string yes, string no) => Value.ToLowerInvariant() switch
    {
        "" => null,
        var word when word == yes => true,
        var word when word == no => false,
        _ => Fault<bool>(RunLogFaultKind.UnknownWord, yes, no),
    };

    public DateOnly? Date()
    {
        if (Value.Length == 0)
            return null;
        return DateOnly.TryParseExact(Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : Fault<DateOnly>(RunLogFaultKind.NotADate);
    }

    public EquatableList<RunLogPercentile> Percentiles() => new(
        from pair in Pairs().ToList()
        let percent = Number(pair.Name, number => number is > 0 and < 100, "> 0 and < 100")
        let fps = Number(pair.Value, number => number >= 0, ">= 0")
        where percent is not null && fps is not null
        select new RunLogPercentile(percent.Value, fps.Value));

    private IEnumerable<(string Name, string Value)> Pairs()
    {
        foreach (var piece in Value.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var sign = piece.IndexOf('=', StringComparison.Ordinal);
            if (sign < 1)
                State.Add(RunLogFaultKind.NotAPair, Line, Column, piece);
            else
                yield return (piece[..sign].TrimEnd(), piece[(sign + 1)..].TrimStart());
        }
    }

    private double? Number(string text, Func<double, bool> inRange, string range)
    {
        if (Value.Length == 0)
            return null;
        var digits = text.StartsWith('-') ? text[1..] : text;
        var marks = digits.Where(c => !char.IsAsciiDigit(c)).ToList();
        if (marks.Count > 1 || marks.Any(mark => mark is not ('.' or ',')) || !digits.Any(char.IsAsciiDigit))
            return Fault<double>(RunLogFaultKind.NotANumber);
        if (marks.Count == 1)
        {
            State.DecimalMark ??= marks[0];
            if (State.DecimalMark != marks[0])
                return Fault<double>(RunLogFaultKind.OtherDecimalMark, State.DecimalMark.Value.ToString());
        }

        var number = double.Parse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture);
        return double.IsFinite(number) && inRange(number) ? number : Fault<double>(RunLogFaultKind.OutOfRange, range);
    }

    private T? Fault<T>(RunLogFaultKind kind, params string[] legal)
        where T : struct
    {
        State.Add(kind, Line, Column, Value, legal);
        return null;
    }
}
