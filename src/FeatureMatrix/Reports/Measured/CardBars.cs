using FeatureMatrix.Bench;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>A bar: a name and its runs.</summary>
public sealed record SpeedBar(string Name, MeanSpeed Speed);

/// <summary>Cards side by side: one scene at one mode with one set of settings on one rig.</summary>
/// <param name="Subject">Title, scene and mode.</param>
/// <param name="Setup">What all bars share.</param>
/// <param name="Floor">The library's floor, frames per second; null for none.</param>
/// <param name="Bars">Fastest first.</param>
/// <param name="Text">Everything in words.</param>
public sealed record CardBars(string Subject, string Setup, double? Floor, IReadOnlyList<SpeedBar> Bars, string Text)
{
    /// <summary>The scenes and modes of a log that ran on two cards at least.</summary>
    public static IReadOnlyList<CardBars> All(IReadOnlyList<BenchSeries> log, double? floor) =>
    [
        .. log.SelectMany(series => series.Modes.Where(mode => mode is { Mode: not null, Fps.Count: > 0 }).Select(mode => (series.Circumstances, Mode: mode)))
            .GroupBy(one => (
                one.Circumstances.Title, one.Circumstances.Scene, one.Circumstances.Rig, one.Circumstances.Depth,
                Settings: BenchWording.SettingsText(one.Circumstances), one.Mode.Mode))
            .Where(group => group.Select(one => one.Circumstances.Card).Distinct().Skip(1).Any())
            .Select(group => Of([.. group], floor)),
    ];

    private static CardBars Of(IReadOnlyList<(Circumstances Circumstances, ModeRuns Mode)> group, double? floor)
    {
        var names = BenchWording.Apart(group.Select(one => one.Circumstances).ToList());
        var (circumstances, mode) = group[0];
        var bars = group.Zip(names, (one, name) => new SpeedBar(name, MeanSpeed.Of(one.Mode.Fps)))
            .OrderByDescending(bar => bar.Speed.Fps).ThenBy(bar => bar.Name, StringComparer.Ordinal).ToList();
        return new CardBars(
            $"{BenchWording.Subject(circumstances)}, {mode.Mode}",
            string.Join(", ", new[] { circumstances.Rig?.Name ?? "", BenchWording.SettingsText(circumstances) }.Where(part => part.Length > 0)),
            floor, bars, string.Join("; ", bars.Select(bar => $"{bar.Name} {bar.Speed.Text}")));
    }
}
