using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>Every run of a bench log as it was measured, discarded ones included.</summary>
public static class RunTable
{
    /// <summary>The runs as a table, in the order of the log.</summary>
    public static Table Of(Catalog catalog) => new(
        "Runs", $"{Names.Count(catalog.Runs.Count, "run")}, none left out: a discarded one says why. Speeds in frames a second.",
        [
            new("Title"), new("Card"), new("Scene"), new("Path"), new("Wrapper"), new("Board"), new("Driver"), new("System"), new("Rig"), new("Mode"),
            new("Depth", true), new("Settings"), new("Run", true), new("Average", true), new("Lowest", true), new("Score", true), new("Unit"),
            new("Discarded"), new("Date"), new("By"), new("Note"),
        ],
        catalog.Runs.Select(Row).ToList());

    private static IReadOnlyList<TableCell> Row(Run run) =>
    [
        new TableCell(run.Title.Name), new TableCell(run.Card.Name), new TableCell(run.Scene),
        new TableCell(run.Renderer is { } renderer ? Names.Of(renderer) : ""), new TableCell(run.Wrapper is { } wrapper ? Names.Of(wrapper) : ""),
        new TableCell(run.Specimen?.Id ?? ""), new TableCell(run.Driver is { } driver ? Names.Of(driver) : ""), new TableCell(run.Os?.Name ?? ""),
        new TableCell(run.Rig?.Name ?? ""), new TableCell(run.Mode?.ToString() ?? ""), Number(run.Depth),
        new TableCell(string.Join(", ", run.Settings.Select(setting => $"{setting.Key} {setting.Value}"))), Number(run.Number),
        Number(run.Fps), Number(run.LowestFps), Number(run.Score?.Value), new TableCell(run.Score?.Unit ?? ""), new TableCell(run.Discarded),
        new TableCell(run.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""), new TableCell(run.Evidence.Source?.Text ?? ""), new TableCell(run.Note),
    ];

    private static TableCell Number(double? number) =>
        number is { } value ? new TableCell(value.ToString("0.##", CultureInfo.InvariantCulture), value) : TableCell.Empty;
}
