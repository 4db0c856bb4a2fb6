using System.Globalization;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>A column of a run log: how its cell is read into a row and written from one.</summary>
internal sealed record RunLogColumn(string Name, Func<RunLogRow, RunLogCell, RunLogRow> Read, Func<RunLogRow, RunLogText> Write)
{
    public bool Required { get; init; }
}

/// <summary>The text of a cell; only free text needs to be kept from looking like a formula.</summary>
internal readonly record struct RunLogText(string Text, bool IsFree)
{
    public static implicit operator RunLogText(string text) => new(text, true);

    public static implicit operator RunLogText(double? number) =>
        new(number?.ToString("R", CultureInfo.InvariantCulture) ?? "", false);
}

/// <summary>All columns of a run log, in the order in which they are written. They may be read in any order.</summary>
internal static class RunLogColumns
{
    private const int WidestMode = 16384;

    public static IReadOnlyList<RunLogColumn> All { get; } =
    [
        new("title", (row, cell) => row with { Title = cell.Text() }, row => row.Title) { Required = true },
        new("scene", (row, cell) => row with { Scene = cell.Text() }, row => row.Scene),
        new("renderer", (row, cell) => row with { Renderer = cell.Text() }, row => row.Renderer),
        new("wrapper", (row, cell) => row with { Wrapper = cell.Text() }, row => row.Wrapper),
        new("card", (row, cell) => row with { Card = cell.Text() }, row => row.Card) { Required = true },
        new("specimen", (row, cell) => row with { Specimen = cell.Text() }, row => row.Specimen),
        new("driver", (row, cell) => row with { Driver = cell.Text() }, row => row.Driver),
        new("os", (row, cell) => row with { Os = cell.Text() }, row => row.Os),
        new("rig", (row, cell) => row with { Rig = cell.Text() }, row => row.Rig),
        new("width", (row, cell) => row with { Width = cell.Whole(1, WidestMode) }, row => row.Width),
        new("height", (row, cell) => row with { Height = cell.Whole(1, WidestMode) }, row => row.Height),
        new("depth", (row, cell) => row with { Depth = cell.Whole(1, 64) }, row => row.Depth),
        new("refresh", (row, cell) => row with { Refresh = cell.Positive() }, row => row.Refresh),
        new("samples", (row, cell) => row with { Samples = cell.Whole(1, 64) }, row => row.Samples),
        new("filtering", (row, cell) => row with { Filtering = cell.Text() }, row => row.Filtering),
        new("preset", (row, cell) => row with { Preset = cell.Text() }, row => row.Preset),
        new("vsync", (row, cell) => row with { Vsync = cell.Either("on", "off") }, row => Word(row.Vsync, "on", "off")),
        new("sound", (row, cell) => row with { Sound = cell.Either("on", "off") }, row => Word(row.Sound, "on", "off")),
        new("factor", (row, cell) => row with { Factor = cell.Text() }, row => row.Factor),
        new("run", (row, cell) => row with { Run = cell.Whole(1, 100_000) }, row => row.Run),
        new("fps", (row, cell) => row with { Fps = cell.Positive() }, row => row.Fps),
        new("min-fps", (row, cell) => row with { MinFps = cell.NotNegative() }, row => row.MinFps),
        new("percentiles", (row, cell) => row with { Percentiles = cell.Percentiles() }, row => string.Join('|', row.Percentiles.Select(Pair))),
        new("frame-times", (row, cell) => row with { FrameTimes = cell.Text() }, row => row.FrameTimes),
        new("score", (row, cell) => row with { Score = cell.Number() }, row => row.Score),
        new("unit", (row, cell) => row with { Unit = cell.Text() }, row => row.Unit),
        new("better", (row, cell) => row with { HigherIsBetter = cell.Either("higher", "lower") }, row => Word(row.HigherIsBetter, "higher", "lower")),
        new("discarded", (row, cell) => row with { Discarded = cell.Text() }, row => row.Discarded),
        new("date", (row, cell) => row with { Date = cell.Date() }, row => row.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""),
        new("by", (row, cell) => row with { By = cell.Text() }, row => row.By),
        new("note", (row, cell) => row with { Note = cell.Text() }, row => row.Note),
    ];

    public static EquatableList<string> Names { get; } = new(All.Select(column => column.Name));

    /// <summary>The column that a heading names; capitals, spaces, hyphens and underscores do not matter. Null for none.</summary>
    public static RunLogColumn? Named(string heading)
    {
        var plain = Plain(heading);
        return All.FirstOrDefault(column => Plain(column.Name) == plain);
    }

    private static string Plain(string heading) =>
        string.Concat(heading.Where(c => c is not (' ' or '-' or '_'))).ToLowerInvariant();

    private static string Word(bool? value, string yes, string no) => value switch
    {
        true => yes,
        false => no,
        null => "",
    };

    private static string Pair(RunLogPercentile percentile) =>
        string.Create(CultureInfo.InvariantCulture, $"{percentile.Percent:R}={percentile.Fps:R}");
}
