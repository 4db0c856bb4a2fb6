using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Measured;

/// <summary>A feature to look at.</summary>
/// <param name="Written">As the collection's files name it.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="WhenMissing">What the title looks like without it; empty where nobody described it.</param>
public sealed record FeatureToSee(string Written, string Name, string WhenMissing)
{
    /// <summary>Name and what to look for, in a cell.</summary>
    public string LookFor => WhenMissing.Length > 0 ? $"{Names.Sentence(Name)}. When it is missing: {WhenMissing.TrimEnd('.')}." : $"{Names.Sentence(Name)}.";

    /// <summary>A capability that a renderer asks for: its own words on what is missing, else the feature's.</summary>
    internal static FeatureToSee Of(Capability capability, Renderer renderer)
    {
        var effect = renderer.Needs.FirstOrDefault(need => need.Choices.Contains(capability) && need.Effect.Length > 0)?.Effect ?? capability.Feature.SeenWhenMissing;
        return new FeatureToSee(capability.Feature.HasLevels ? $"{capability.Feature.Id} {capability.Level}" : capability.Feature.Id, Names.Of(capability), effect);
    }
}

/// <summary>A test to make at the bench: one route, and what to look at there.</summary>
/// <param name="Route">The route.</param>
/// <param name="LookAt">The features that the renderer needs; those that decide first.</param>
/// <param name="Why">What the test is for.</param>
public sealed record BenchTask(Route Route, IReadOnlyList<FeatureToSee> LookAt, string Why)
{
    /// <summary>The mode to use; null to leave it to whoever tests.</summary>
    public Mode? Mode { get; init; }

    /// <summary>The colour depth to use, in bits; null to leave it to whoever tests.</summary>
    public int? Depth { get; init; }
}

/// <summary>Tests chosen to be made at the bench, with the words that may be filled in.</summary>
/// <param name="Name">Kebab-case; names the files that the filled worksheet is imported to.</param>
/// <param name="Catalog">The collection.</param>
/// <param name="Tasks">The tests, those of one installed driver together.</param>
public sealed record BenchWorksheet(string Name, Catalog Catalog, IReadOnlyList<BenchTask> Tasks)
{
    /// <summary>Runs to make again: rows of the run log that lack nothing but their results. Usually none.</summary>
    public IReadOnlyList<Run> RunsToRepeat { get; init; } = [];

    /// <summary>What has to be minded at the bench.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Before fitting a card: power off and unplug the PC, mind static, and check slot type and voltage in the documents of both boards. Where they are silent, ask a qualified technician.",
        MemoryReport.ModeCaution,
        "Before installing or forcing a driver, keep an image of the system that you can boot from.",
    ];

    /// <summary>How to fill it in.</summary>
    public static IReadOnlyList<string> Instructions { get; } =
    [
        "Observations: one row is one title, watched once. Fill in whether it ran, then what you saw of each feature named to the left; 'look for' says what it looks like without it: yes, broken (claimed, wrong picture) or no.",
        "Leave a cell empty where you did not look: empty means not known, never no. A row without an answer is passed over.",
        "Every filled row needs a date (year-month-day) and your name. Grade is measured unless somebody only told you: then choose hearsay.",
        "Runs: one row is one run of one scene. Log every run, also one that you discard, and say why. Speeds are frames a second.",
        "Ids of boards, rigs, drivers and systems stand on the sheet Words. Do not rename sheets or columns; rows may be added, sorted and deleted.",
        "Then: import worksheet FILE. It shows what would change and names every fault by sheet and cell; --write writes it.",
    ];

    /// <summary>The routes behind the cells of a library that nobody watched, on some cards; or only those that wait for an unknown fact.</summary>
    public static BenchWorksheet Of(string name, Decisions decisions, IReadOnlyList<Card> cards, IReadOnlyList<Title> titles, bool onlyOpen)
    {
        var tasks = cards.SelectMany(card => titles.Select(title => decisions.CellOn(title, card)))
            .Where(cell => cell.Evidence != CellEvidence.Seen && (!onlyOpen || cell.Evidence == CellEvidence.NotKnown))
            .Select(TaskOf).OfType<BenchTask>()
            .OrderBy(task => task.Route.Setup.Card.Id, StringComparer.Ordinal).ThenBy(task => task.Route.Setup.Os.Id, StringComparer.Ordinal)
            .ThenBy(task => task.Route.Setup.Driver.Id, StringComparer.Ordinal).ThenBy(task => task.Route.Renderer.Title.Name, StringComparer.Ordinal).ToList();
        return new BenchWorksheet(name, decisions.Catalog, tasks);
    }

    /// <summary>The test of a cell: its leading route with a recorded driver; null where there is none.</summary>
    internal static BenchTask? TaskOf(Cell cell)
    {
        var finding = cell.Verdict.Headline.By.Concat(cell.Verdict.Routes)
            .FirstOrDefault(one => one.Form.IsPermitted && one.Route.Setup.Install != Install.Unrecorded && one.Route.Renderer.Api is not null);
        if (finding is null)
            return null;
        var deciding = cell.Verdict.Headline.Deciding.OfType<UnknownFact.Supply>().Select(unknown => unknown.Capability).ToHashSet();
        var needs = finding.Route.Renderer.Needs.SelectMany(need => need.Choices).Where(choice => !choice.Feature.IsApi).Distinct()
            .OrderByDescending(deciding.Contains).Select(capability => FeatureToSee.Of(capability, finding.Route.Renderer)).ToList();
        var why = cell.Evidence == CellEvidence.NotKnown ? $"Decides: {UnknownWording.Short(cell.Verdict.Headline.Deciding)}" : $"Nobody watched it yet; {cell.Label}";
        return new BenchTask(finding.Route, needs, why);
    }

    /// <summary>What to look at on a route to answer a question: the features that it is about, or all that the renderer needs.</summary>
    internal static IReadOnlyList<FeatureToSee> LookAt(UnknownFact unknown, Route route)
    {
        var asked = unknown switch
        {
            UnknownFact.Supply supply => [supply.Capability],
            UnknownFact.WrapperSupply supply => [supply.Capability],
            UnknownFact.ObservedFeature seen => [seen.Capability],
            UnknownFact.RunsWithout without => without.Need.Choices,
            UnknownFact.RunsBroken broken => broken.Need.Choices,
            UnknownFact.LossIsCosmetic loss => loss.Need.Choices,
            _ => route.Renderer.Needs.SelectMany(need => need.Choices).ToList(),
        };
        return asked.Where(capability => !capability.Feature.IsApi).Distinct().Select(capability => FeatureToSee.Of(capability, route.Renderer)).ToList();
    }
}
