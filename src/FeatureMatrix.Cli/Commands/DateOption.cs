using System.CommandLine;
using System.Globalization;

namespace FeatureMatrix.Cli.Commands;

/// <summary>A day on the command line. No command takes one from the clock, so that output repeats.</summary>
internal static class DateOption
{
    /// <summary>The option <c>--date</c>.</summary>
    public static Option<string?> Create(string description) => new("--date") { Description = description, HelpName = "yyyy-mm-dd" };

    /// <summary>The day that was given; null where none was.</summary>
    /// <exception cref="UsageException">It is no day.</exception>
    public static DateOnly? Day(this ParseResult parsed, Option<string?> option)
    {
        if (parsed.GetValue(option) is not { } text)
            return null;
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw new UsageException($"{option.Name} {text}: write it as year-month-day, for example 2026-03-14.");
    }
}
