using System.Globalization;
using FeatureMatrix.Model;

namespace FeatureMatrix.Bench;

/// <summary>
/// All that runs share which belong together: everything but the mode, the repetition and the day. Two of these that differ in
/// one member alone make a fair comparison of it.
/// </summary>
public sealed record Circumstances(
    Title Title, string Scene, Renderer? Renderer, WrapperVersion? Wrapper, Card Card, Specimen? Specimen, Driver? Driver,
    Os? Os, Rig? Rig, int? Depth)
{
    /// <summary>Every other setting, in ordinal order of names, so that the order in which they were noted does not part runs.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Settings { get; private init; } = [];

    /// <summary>The monitor's refresh rate in hertz: the setting <c>refresh</c> of the runs, else the rig's; null where neither is noted.</summary>
    public double? Refresh =>
        double.TryParse(Setting("refresh"), CultureInfo.InvariantCulture, out var hertz)
            ? hertz
            : Rig?.Monitor?.RefreshHertz;

    /// <summary>Antialiasing samples a pixel, 1 for none; null where not noted.</summary>
    public int? Samples => int.TryParse(Setting("samples"), CultureInfo.InvariantCulture, out var samples) ? samples : null;

    /// <summary>The value of a setting; null where not noted.</summary>
    public string? Setting(string name) => Settings.FirstOrDefault(setting => setting.Key == name).Value;

    /// <summary>The circumstances of one run.</summary>
    public static Circumstances Of(Run run) =>
        new(run.Title, run.Scene, run.Renderer, run.Wrapper, run.Card, run.Specimen, run.Driver, run.Os, run.Rig, run.Depth)
        {
            Settings = [.. run.Settings.OrderBy(setting => setting.Key, StringComparer.Ordinal)],
        };

    /// <summary>The same without one setting, to gather series that differ in it.</summary>
    public Circumstances Without(string setting) => this with { Settings = [.. Settings.Where(one => one.Key != setting)] };

    /// <summary>Whether every member agrees; settings by name and value.</summary>
    public bool Equals(Circumstances? other) =>
        other is not null && Members == other.Members && Settings.SequenceEqual(other.Settings);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Members, Settings.Count);

    private (Title, string, Renderer?, WrapperVersion?, Card, Specimen?, Driver?, Os?, Rig?, int?) Members =>
        (Title, Scene, Renderer, Wrapper, Card, Specimen, Driver, Os, Rig, Depth);
}

/// <summary>The runs of a series at one mode.</summary>
/// <param name="Mode">Null where the runs do not state it.</param>
/// <param name="Runs">Those that count, in order of repetition.</param>
/// <param name="Discarded">Those that do not, each with its reason.</param>
public sealed record ModeRuns(Mode? Mode, IReadOnlyList<Run> Runs, IReadOnlyList<Run> Discarded)
{
    /// <summary>Average frames per second of the runs that count.</summary>
    public Sample Fps { get; } = Sample.Of(Runs.Select(run => run.Fps!.Value));

    /// <summary>Lowest speeds beside averages, of the runs that noted both.</summary>
    public Dips Dips { get; } = Dips.Of(
        [.. Runs.Where(run => run.LowestFps is not null).Select(run => (run.Fps!.Value, run.LowestFps!.Value))]);
}

/// <summary>All runs under the same circumstances: one resolution ladder.</summary>
/// <param name="Circumstances">What they share.</param>
/// <param name="Modes">In order of pixels, an unstated mode first; modes of equal pixels by width.</param>
public sealed record BenchSeries(Circumstances Circumstances, IReadOnlyList<ModeRuns> Modes)
{
    /// <summary>
    /// Sorts a log into series, in the order in which their first runs stand. Synthetic scores have no place on a ladder and
    /// are left out; a run that was discarded without a speed stays beside those of its mode.
    /// </summary>
    public static IReadOnlyList<BenchSeries> Of(IEnumerable<Run> log) =>
    [
        .. log.Where(run => run.Fps is not null || (run.Score is null && run.Discarded.Length > 0))
            .GroupBy(Circumstances.Of)
            .Select(series => new BenchSeries(series.Key,
            [
                .. series.GroupBy(run => run.Mode)
                    .OrderBy(mode => mode.Key?.Pixels ?? 0).ThenBy(mode => mode.Key?.Width ?? 0)
                    .Select(mode => new ModeRuns(
                        mode.Key,
                        [.. mode.Where(run => run.Discarded.Length == 0).OrderBy(run => run.Number)],
                        [.. mode.Where(run => run.Discarded.Length > 0).OrderBy(run => run.Number)])),
            ])),
    ];

    /// <summary>The ladder of the runs that count and state their mode; not fitted where the monitor or a cap seems to set the pace.</summary>
    public Ladder Ladder(double confidence = Confidence.Usual) => PaceLimit() switch
    {
        Bench.PaceLimit.NotKnown or Bench.PaceLimit.NotSuspected => Bench.Ladder.Of(
            [
                .. from mode in Modes
                   where mode.Mode is not null
                   from run in mode.Runs
                   select new LadderRun(mode.Mode!.Value.Pixels, run.Fps!.Value),
            ],
            confidence),
        var suspected => new Bench.Ladder.Paced(suspected),
    };

    /// <summary>Whether first runs stand apart, over all modes.</summary>
    public WarmUp WarmUp(double confidence = Confidence.Usual) =>
        Bench.WarmUp.Of(Modes.Select(mode => mode.Fps), confidence);

    /// <summary>Whether the monitor or a cap seems to set the pace.</summary>
    public PaceLimit PaceLimit() =>
        Bench.PaceLimit.Of([.. Modes.Select(mode => mode.Fps)], Circumstances.Refresh);
}
