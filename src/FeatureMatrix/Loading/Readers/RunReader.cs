using System.Globalization;
using FeatureMatrix.Bench;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>
/// The bench log: <c>runs/*.csv</c>. Its columns are read by <see cref="RunLogReader"/>; here the rows are linked to the
/// collection. A run without a speed of its own takes it from the file of frame times that it names, in a folder below the log's, such as
/// <c>runs/frames/ferry.csv</c>.
/// </summary>
internal sealed class RunReader(Draft draft, IReadOnlyList<SourceText> files)
{
    private FaultList Faults => draft.Faults;

    /// <summary>True for the files of the bench log.</summary>
    public static bool IsLog(SourceText file) =>
        file.Path.EndsWith(".csv", StringComparison.Ordinal) && file.Path.Split('/') is [.., "runs", _];

    /// <summary>The runs of one file that could be linked, in its order.</summary>
    public IReadOnlyList<Run> Read(SourceText file)
    {
        var whole = new Origin(file.Path, 0, 0);
        if (file.Text.Length > NodeParser.LongestFile)
            return Refuse(FaultTexts.FileTooLarge(whole));
        if (PlainText.FirstForbidden(file.Text) is { } forbidden)
            return Refuse(FaultTexts.ControlCharacter(whole, forbidden));
        var log = RunLogReader.Read(file.Text);
        foreach (var fault in log.Faults)
            Faults.Add(FaultTexts.OfRunLog(new Origin(file.Path, fault.Line, 1), fault));
        return [.. log.Rows.Select(row => Link(row, new Origin(file.Path, row.Line, 1))).OfType<Run>()];

        IReadOnlyList<Run> Refuse(Fault fault)
        {
            Faults.Add(fault);
            return [];
        }
    }

    /// <summary>One run; null where its title or card is missing.</summary>
    private Run? Link(RunLogRow row, Origin origin)
    {
        var title = draft.Titles.Find(Word(row.Title), Faults);
        var card = draft.Cards.Find(Word(row.Card), Faults);
        var specimen = row.Specimen.Length > 0 ? draft.Specimens.Find(Word(row.Specimen), Faults) : null;
        if (specimen is not null && card is not null && specimen.Card != card)
            Faults.Add(FaultTexts.SpecimenOfAnother(origin, specimen, card));
        if (row.Width is null != row.Height is null)
            Faults.Add(FaultTexts.HalfAMode(origin));
        var renderer = row.Renderer.Length > 0 && title is not null
            ? draft.References.Renderer(Word(row.Renderer), title)
            : null;
        var wrapper = row.Wrapper is not ("" or "none") ? draft.References.WrapperVersion(Word(row.Wrapper)) : null;
        var driver = row.Driver.Length > 0 ? draft.References.Driver(Word(row.Driver)) : null;
        var os = row.Os.Length > 0 ? draft.Oses.Find(Word(row.Os), Faults) : null;
        var rig = row.Rig.Length > 0 ? draft.Rigs.Find(Word(row.Rig), Faults) : null;
        var frames = row is { Fps: null, FrameTimes.Length: > 0 } ? Frames(row, origin) : null;
        if (title is null || card is null)
            return null;
        return new Run
        {
            Title = title,
            Scene = row.Scene,
            Renderer = renderer,
            Wrapper = wrapper,
            Card = card,
            Specimen = specimen,
            Driver = driver,
            Os = os,
            Rig = rig,
            Mode = row is { Width: { } width, Height: { } height } ? new Mode(width, height) : null,
            Depth = row.Depth,
            Settings = [.. Settings(row)],
            Number = row.Run ?? 1,
            Fps = row.Fps ?? frames?.AverageFps,
            LowestFps = row.MinFps ?? frames?.LowestFps,
            Percentiles = [.. row.Percentiles.Select(pair => new FpsPercentile(pair.Percent, pair.Fps))],
            FrameTimes = row.FrameTimes,
            Score = row is { Score: { } score, HigherIsBetter: { } higher } ? new Score(score, row.Unit, higher) : null,
            Discarded = row.Discarded,
            Date = row.Date,
            Note = row.Note,
            Evidence = new Evidence(Grade.Measured, row.By.Length > 0 ? new Source("", row.By) : null, origin),
        };

        Scalar Word(string text) => new(origin, text, isPlain: false);
    }

    /// <summary>The frame times that a run names; null where they cannot be read, which is a fault unless the run does not count anyway.</summary>
    private FrameTimes? Frames(RunLogRow row, Origin origin)
    {
        var path = $"{origin.File[..(origin.File.LastIndexOf('/') + 1)]}{row.FrameTimes}";
        var file = files.FirstOrDefault(file => file.Path == path);
        if (file is null)
        {
            if (row.Discarded.Length == 0)
                Faults.Add(FaultTexts.NoFrameTimes(origin, path));
            return null;
        }

        var read = FrameTimeReader.Read(file.Text);
        foreach (var fault in read.Faults)
            Faults.Add(FaultTexts.OfRunLog(new Origin(path, fault.Line, 1), fault));
        if (read.Milliseconds.Count > 0)
            return new FrameTimes(read.Milliseconds);
        if (read.Faults.Count == 0)
            Faults.Add(FaultTexts.EmptyFrameTimes(new Origin(path, 0, 0)));
        return null;
    }

    /// <summary>What was set beside card, driver, system and mode, under the names of its columns.</summary>
    private static IEnumerable<KeyValuePair<string, string>> Settings(RunLogRow row)
    {
        (string Name, string Value)[] all =
        [
            ("refresh", Text(row.Refresh)), ("samples", Text(row.Samples)), ("filtering", row.Filtering), ("preset", row.Preset),
            ("vsync", OnOff(row.Vsync)), ("sound", OnOff(row.Sound)), ("factor", row.Factor),
        ];
        return all.Where(setting => setting.Value.Length > 0).Select(setting => KeyValuePair.Create(setting.Name, setting.Value));

        static string Text(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";

        static string OnOff(bool? on) => on switch
        {
            true => "on",
            false => "off",
            null => "",
        };
    }
}
