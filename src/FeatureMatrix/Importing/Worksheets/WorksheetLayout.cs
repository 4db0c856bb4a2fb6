using System.Globalization;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>The sheets and columns of a bench worksheet; writer and reader agree here.</summary>
public static class WorksheetLayout
{
    /// <summary>The sheet for what was seen.</summary>
    public const string Observations = "Observations";

    /// <summary>The sheet for what was measured; its columns are those of a run log.</summary>
    public const string Runs = "Runs";

    /// <summary>The text that stands before the worksheet's name on its first sheet.</summary>
    public const string NameLabel = "Name of this worksheet (keep it):";

    /// <summary>How many features a row has room for.</summary>
    public const int Features = 8;

    /// <summary>The columns of the sheet for what was seen. All but <c>why</c> and the features are keys of an observation.</summary>
    public static IReadOnlyList<string> ObservationColumns { get; } =
    [
        "title", "renderer", "card", "specimen", "driver", "os", "wrapper", "mode", "depth", "rig", "runs",
        .. Enumerable.Range(1, Features).SelectMany(number => new[] { Feature(number), LookFor(number), Seen(number) }), "date", "by", "grade", "note", "why",
    ];

    /// <summary>The heading of a column that names a feature; numbers from 1.</summary>
    public static string Feature(int number) => "feature " + number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The heading of the column beside it: the feature's name, and what a viewer sees without it. Nothing reads it back.</summary>
    public static string LookFor(int number) => "look for " + number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The heading of the column for what was seen of the feature.</summary>
    public static string Seen(int number) => "seen " + number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A driver version as the collection's files name it; empty for a driver that nobody recorded.</summary>
    public static string Written(Driver driver) => driver.Kind == DriverKind.Unrecorded ? "" : $"{driver.Branch.Id} {driver.Version}";

    /// <summary>A wrapper version as the collection's files name it.</summary>
    public static string Written(WrapperVersion wrapper) => $"{wrapper.Wrapper.Id}@{wrapper.Version}";

    /// <summary>What a run log says of a run's circumstances and number, without its results: column and text.</summary>
    public static IReadOnlyList<(string Column, string Text)> CellsOf(Run run) =>
    [
        ("title", run.Title.Id), ("scene", run.Scene), ("renderer", run.Renderer?.Id ?? ""), ("wrapper", run.Wrapper is { } wrapper ? Written(wrapper) : "none"),
        ("card", run.Card.Id), ("specimen", run.Specimen?.Id ?? ""), ("driver", run.Driver is { } driver ? Written(driver) : ""), ("os", run.Os?.Id ?? ""),
        ("rig", run.Rig?.Id ?? ""), ("width", Number(run.Mode?.Width)), ("height", Number(run.Mode?.Height)), ("depth", Number(run.Depth)),
        .. run.Settings.Select(setting => (setting.Key, setting.Value)), ("run", Number(run.Number)),
    ];

    private static string Number(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    /// <summary>A column's width in characters.</summary>
    public static double WidthOf(string column) => column switch
    {
        "driver" or "why" or "note" => 32,
        "title" or "card" or "scene" or "specimen" or "rig" or "os" or "wrapper" => 20,
        _ when column.StartsWith("look for", StringComparison.Ordinal) => 40,
        _ when column.StartsWith("feature", StringComparison.Ordinal) => 18,
        _ => 11,
    };
}
