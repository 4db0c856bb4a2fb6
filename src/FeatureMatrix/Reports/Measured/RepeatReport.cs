using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Measured;

/// <summary>One result with all that somebody else needs to repeat it: what was used, down to versions and checksums, and what to do.</summary>
/// <param name="Heading">Title and card.</param>
/// <param name="Result">What is published.</param>
/// <param name="Setup">Name and value of everything that was used; a value that the collection lacks says so.</param>
/// <param name="Measured">What was measured, a line for each scene and mode; empty where nothing was.</param>
/// <param name="Steps">What to do, in order.</param>
/// <param name="Worksheet">The sheet to fill in, its rows begun.</param>
public sealed record RepeatReport(
    string Heading, string Result, IReadOnlyList<(string Name, string Value)> Setup, IReadOnlyList<string> Measured, IReadOnlyList<string> Steps, BenchWorksheet Worksheet)
{
    private const string NotRecorded = "not recorded";

    /// <summary>Fewer runs than these have no spread worth the name.</summary>
    private const int FewestRuns = 3;

    /// <summary>The result of a title on a card; null where no route with a recorded driver leads to one.</summary>
    public static RepeatReport? Of(Decisions decisions, Title title, Card card)
    {
        var cell = decisions.CellOn(title, card);
        if (BenchWorksheet.TaskOf(cell) is not { } task)
            return null;
        var route = task.Route;
        var seen = decisions.Catalog.Observations.Where(one => IsOf(one, route)).OrderByDescending(one => one.Date).FirstOrDefault();
        var series = decisions.Log.Where(one => IsOf(one.Circumstances, route)).SelectMany(SeriesReport.All).Where(one => one.Fps.Count > 0).ToList();
        var run = series.Count > 0 ? series[0].Runs.Runs[0] : null;
        task = task with
        {
            Mode = seen?.Mode ?? decisions.Policy.Mode ?? route.Renderer.Memory.LowestMode,
            Depth = seen?.Depth ?? decisions.Policy.Depth,
        };
        return new RepeatReport(
            $"{title.Name} on {card.Name}", cell.Label,
            [
                ("Title", title.Version.Length > 0 ? $"{title.Name}, version {title.Version}" : $"{title.Name}, version {NotRecorded}"),
                ("Renderer", Names.Of(route.Renderer)),
                ("Card", card.Name), ("Board used", BoardOf(seen?.Specimen ?? run?.Specimen)),
                .. DriverLines(route.Setup), ("System", route.Setup.Os.Name), .. WrapperLines(route.Wrapper),
                ("Rig used", RigText(seen?.Rig ?? run?.Rig)),
                ("Mode", task.Mode.ToString()!), ("Colour depth", task.Depth is { } depth ? string.Create(CultureInfo.InvariantCulture, $"{depth} bit") : NotRecorded),
                ("Watched by", seen is null ? "nobody yet: the result is inferred" : WitnessOf(seen)),
                ("Seen then", seen is { Seen.Count: > 0 } ? string.Join("; ", seen.Seen.Select(one => $"{Names.Of(one.Capability)}: {Names.Of(one.Seen)}")) : NotRecorded),
            ],
            [.. series.Select(one => $"{SceneText(one)}: {SpeedWording.Measured(one.Fps)}")],
            StepsOf(task, series),
            new BenchWorksheet(NameOf(title, card), decisions.Catalog, [task]) { RunsToRepeat = [.. series.SelectMany(RunsToMake)] });
    }

    private static bool IsOf(Observation seen, Route route) =>
        seen.Renderer == route.Renderer && (seen.Card is null || seen.Card == route.Setup.Card) && (seen.Driver is null || seen.Driver == route.Setup.Driver)
        && (seen.Os is null || seen.Os == route.Setup.Os)
        && seen.Wrapper switch
        {
            ObservedWrapper.NotStated => true,
            ObservedWrapper.None => route.Wrapper is null,
            ObservedWrapper.Version version => version.Used == route.Wrapper,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static bool IsOf(Bench.Circumstances run, Route route) =>
        run.Title == route.Renderer.Title && run.Renderer == route.Renderer && run.Wrapper == route.Wrapper && run.Card == route.Setup.Card
        && run.Driver == route.Setup.Driver && run.Os == route.Setup.Os;

    private static string BoardOf(Specimen? board) => board is null
        ? NotRecorded
        : $"{board.Id}, BIOS {(board.Bios.Length > 0 ? board.Bios : NotRecorded)}{(board.Condition.Length > 0 ? $"; {board.Condition}" : "")}";

    private static IEnumerable<(string, string)> DriverLines(Setup setup)
    {
        var driver = setup.Driver;
        yield return ("Driver", Names.Of(driver) + (setup.Install == Install.Forced ? ", forced: the package does not list this card" : ""));
        if (driver.Kind == DriverKind.Bios)
            yield break;
        yield return ("Driver released", driver.Released?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? NotRecorded);
        yield return ("Driver SHA-256", Checksum(driver.Sha256));
    }

    private static IEnumerable<(string, string)> WrapperLines(WrapperVersion? wrapper) => wrapper is null
        ? [("Wrapper", "none")]
        : [("Wrapper", Names.Of(wrapper)), ("Wrapper SHA-256", Checksum(wrapper.Sha256))];

    private static string Checksum(string sha256) => sha256.Length > 0 ? sha256 : NotRecorded;

    private static string RigText(Rig? rig)
    {
        if (rig is null)
            return NotRecorded;
        var processor = string.Join(" ", new[] { rig.ProcessorFamily, rig.Megahertz is { } clock ? string.Create(CultureInfo.InvariantCulture, $"{clock:0.#} MHz") : "" }.Where(part => part.Length > 0));
        return string.Join(", ", new[]
        {
            rig.Name, processor, rig.MemoryMebibytes is { } memory ? string.Create(CultureInfo.InvariantCulture, $"{memory} MiB") : "", rig.Chipset, rig.Monitor?.Name ?? "",
        }.Where(part => part.Length > 0));
    }

    private static string WitnessOf(Observation seen) => string.Join(", ", new[]
    {
        seen.Evidence.Source?.Text ?? "", seen.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", Names.Of(seen.Evidence.Grade),
    }.Where(part => part.Length > 0));

    private static string SceneText(SeriesReport series) => string.Join(", ", new[]
    {
        series.Circumstances.Scene, BenchWording.Of(series.Mode), BenchWording.SettingsText(series.Circumstances), series.Circumstances.Rig is { } rig ? $"on {Names.InMiddle(rig.Name)}" : "",
    }.Where(part => part.Length > 0));

    private static IReadOnlyList<string> StepsOf(BenchTask task, IReadOnlyList<SeriesReport> series)
    {
        var (route, setup) = (task.Route, task.Route.Setup);
        List<string> steps = [.. BenchWorksheet.Cautions, $"Fit the {setup.Card.Name}. Note your board on the sheet: its BIOS version, repairs and condition."];
        if (setup.Driver.Kind != DriverKind.Bios)
        {
            var compare = setup.Driver.Sha256.Length > 0 ? " Compare the SHA-256 of the package with the one above." : " Note the SHA-256 of the package you use; none is recorded.";
            steps.Add($"Install {Names.Of(setup.Driver)} on {setup.Os.Name}{(setup.Install == Install.Forced ? ", forced onto this card" : "")}.{compare}");
        }

        if (route.Wrapper is { } wrapper)
            steps.Add($"Put {Names.Of(wrapper)} where {route.Renderer.Title.Name} finds it.{(wrapper.Sha256.Length > 0 ? " Compare its SHA-256." : " Note its SHA-256; none is recorded.")}");
        steps.Add($"In {route.Renderer.Title.Name} choose {Names.Of(route.Renderer)} and {task.Mode}{(task.Depth is { } depth ? string.Create(CultureInfo.InvariantCulture, $" at {depth} bit") : "")}.");
        steps.Add(task.LookAt.Count > 0
            ? $"Watch it, and note on the sheet Observations what you see of: {string.Join(", ", task.LookAt.Take(Importing.Worksheets.WorksheetLayout.Features).Select(feature => feature.Name))}."
            : "Watch it, and note on the sheet Observations whether it runs.");
        if (series.Count > 0)
            steps.Add($"Run each scene of the sheet Runs {FewestRuns} times at least, with the settings given there; discard a run that something disturbed, and say why.");
        steps.Add("Note date and name in every row. Then: import worksheet FILE.");
        return steps;
    }

    /// <summary>As many runs as there were, without board and rig: those are the repeater's own.</summary>
    private static IEnumerable<Run> RunsToMake(SeriesReport series) =>
        Enumerable.Range(1, Math.Max(FewestRuns, series.Fps.Count)).Select(number => series.Runs.Runs[0] with
        {
            Number = number,
            Specimen = null,
            Rig = null,
        });

    private static string NameOf(Title title, Card card)
    {
        const int longest = 80;
        var name = $"repeat-{title.Id}-{card.Id}".Replace('.', '-');
        return name.Length <= longest ? name : name[..longest].TrimEnd('-');
    }
}
