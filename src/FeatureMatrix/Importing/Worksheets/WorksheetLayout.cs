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

    /// <summary>The columns of the sheet for what was seen. All but <c>why</c> and the pairs are keys of an observation.</summary>
    public static IReadOnlyList<string> ObservationColumns { get; } =
    [
        "title", "renderer", "card", "specimen", "driver", "os", "wrapper", "mode", "depth", "rig", "runs",
        .. Enumerable.Range(1, Features).SelectMany(number => new[] { Feature(number), Seen(number) }), "date", "by", "grade", "note", "why",
    ];

    /// <summary>The heading of a column that names a feature; numbers from 1.</summary>
    public static string Feature(int number) => "feature " + number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The heading of the column beside it, for what was seen of the feature.</summary>
    public static string Seen(int number) => "seen " + number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A driver version as the collection's files name it; empty for a driver that nobody recorded.</summary>
    public static string Written(Driver driver) => driver.Kind == DriverKind.Unrecorded ? "" : $"{driver.Branch.Id} {driver.Version}";

    /// <summary>A wrapper version as the collection's files name it.</summary>
    public static string Written(WrapperVersion wrapper) => $"{wrapper.Wrapper.Id}@{wrapper.Version}";

    /// <summary>A column's width in characters.</summary>
    public static double WidthOf(string column) => column switch
    {
        "driver" or "why" or "note" => 32,
        "title" or "card" or "scene" or "specimen" or "rig" or "os" or "wrapper" => 20,
        _ when column.StartsWith("feature", StringComparison.Ordinal) => 18,
        _ => 11,
    };
}
