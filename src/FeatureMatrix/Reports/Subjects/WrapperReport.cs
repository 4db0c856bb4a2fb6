using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What a wrapper does for a title on a card under one operating system.</summary>
public enum WrapperUse
{
    /// <summary>No native route runs; this wrapper does.</summary>
    Needed,

    /// <summary>Whether a native route runs is not known; this wrapper does.</summary>
    NeededPerhaps,

    /// <summary>A native route runs; the wrapper brings back something it loses.</summary>
    Better,

    /// <summary>A native route runs; the wrapper may bring something back, but something about it is not known.</summary>
    BetterPerhaps,
}

/// <summary>A title for which a wrapper matters.</summary>
/// <param name="Title">The title.</param>
/// <param name="Card">The card.</param>
/// <param name="Oses">The operating systems under which all of this is the same.</param>
/// <param name="Use">What the wrapper does for it.</param>
/// <param name="Version">The wrapper version to use.</param>
/// <param name="Native">What the title does without a wrapper.</param>
/// <param name="Through">What it does through the wrapper.</param>
/// <param name="Newer">Newer versions of the same wrapper that fail there, each with the reason.</param>
/// <param name="Costs">What the wrapper costs.</param>
public sealed record WrapperRow(
    Title Title, Card Card, IReadOnlyList<Os> Oses, WrapperUse Use, WrapperVersion Version, string Native, string Through, string Newer, string Costs)
{
    /// <summary>The operating systems in words.</summary>
    public string Systems => Names.List(Oses.Select(os => os.Name).ToList());
}

/// <summary>Which titles need a wrapper, per card, system and wrapper version.</summary>
/// <param name="Heading">What was asked.</param>
/// <param name="PolicyText">The policy in words.</param>
/// <param name="Rows">The titles for which a wrapper matters.</param>
/// <param name="Where">The card, where one alone was asked about; else "some card".</param>
public sealed record WrapperReport(string Heading, string PolicyText, IReadOnlyList<WrapperRow> Rows, string Where)
{
    /// <summary>The report over some cards.</summary>
    public static WrapperReport Of(Decisions decisions, IReadOnlyList<Card>? cards = null)
    {
        cards ??= decisions.Catalog.Cards;
        var rows = decisions.Titles
            .SelectMany(title => cards.SelectMany(card => RowsOf(decisions, title, card))).ToList();
        return new WrapperReport($"Wrappers: {decisions.Catalog.Name}", PolicyWording.Text(decisions.Policy), rows, cards.Count == 1 ? cards[0].Name : "some card");
    }

    /// <summary>The single wrapper version that most titles need somewhere; null where none is needed.</summary>
    public WrapperVersion? UnlocksMost => Rows.Where(row => row.Use == WrapperUse.Needed).GroupBy(row => row.Version)
        .OrderByDescending(group => group.Select(row => row.Title).Distinct().Count()).ThenBy(group => group.Key.Id, StringComparer.Ordinal).FirstOrDefault()?.Key;

    /// <summary>Which titles need a wrapper, in a sentence.</summary>
    public string Headline
    {
        get
        {
            var needed = Rows.Where(row => row.Use == WrapperUse.Needed).Select(row => row.Title).Distinct().Count();
            if (UnlocksMost is not { } most)
                return "No title needs a wrapper for certain.";
            var unlocked = Rows.Where(row => row.Use == WrapperUse.Needed && row.Version == most).Select(row => row.Title).Distinct().Count();
            return $"{Names.Count(needed, "title")} {(needed == 1 ? "needs" : "need")} a wrapper on {Where}; {Names.Of(most)} alone unlocks {unlocked}.";
        }
    }

    /// <summary>The report as every format shows it.</summary>
    public DecisionReport ToReport() => new(Heading, Headline, PolicyText, [], [ToTable() with { Title = "Titles and wrappers", Note = "" }]);

    /// <summary>The rows as a table.</summary>
    public Table ToTable() => new(
        Heading, PolicyText,
        [new("Title"), new("Card"), new("System"), new("Wrapper is"), new("Version"), new("Without it"), new("With it"), new("Newer versions"), new("Costs")],
        Rows.Select(row => (IReadOnlyList<TableCell>)
        [
            new TableCell(row.Title.Name), new TableCell(row.Card.Name), new TableCell(row.Systems), new TableCell(UseText(row.Use)),
            new TableCell(Names.Of(row.Version)), new TableCell(row.Native), new TableCell(row.Through), new TableCell(row.Newer), new TableCell(row.Costs),
        ]).ToList());

    /// <summary>A use in a word or two.</summary>
    public static string UseText(WrapperUse use) => use switch
    {
        WrapperUse.Needed => "needed",
        WrapperUse.NeededPerhaps => "perhaps needed",
        WrapperUse.Better => "only better",
        WrapperUse.BetterPerhaps => "perhaps better",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A row for each thing to do; systems that ask for the same share it.</summary>
    private static IEnumerable<WrapperRow> RowsOf(Decisions decisions, Title title, Card card) =>
        decisions.RecordedSetups(card).Select(setup => setup.Os).Distinct().Select(os => RowOf(decisions, title, card, os)).OfType<WrapperRow>()
            .GroupBy(row => (row.Use, row.Version, row.Native, row.Through, row.Newer, row.Costs))
            .Select(same => same.First() with { Oses = [.. same.SelectMany(row => row.Oses)] });

    private static WrapperRow? RowOf(Decisions decisions, Title title, Card card, Os os)
    {
        var setups = decisions.RecordedSetups(card).Where(setup => setup.Os == os).ToList();
        var verdict = decisions.Resolver.Narrow(decisions.On(title, card), setups);
        var best = verdict.Headline.By.Concat(verdict.Alternatives)
            .Where(finding => finding.Route.Wrapper is not null)
            .Order(Comparer<RouteFinding>.Create(RouteFinding.Compare)).FirstOrDefault();
        if (best is null)
            return null;
        var native = verdict.Routes.Where(finding => finding.Route.IsNative && finding.Form.IsPermitted)
            .Order(Comparer<RouteFinding>.Create(RouteFinding.Compare)).FirstOrDefault();
        var certain = best.Range.CertainlyRuns;
        var use = verdict.Headline.Route switch
        {
            RouteLabel.Natively => certain && OutcomeRange.Compare(best.Range, verdict.Headline.Range) < 0 ? WrapperUse.Better : WrapperUse.BetterPerhaps,
            RouteLabel.WrapperOnly or RouteLabel.NativeNotPermitted or RouteLabel.NativeOnlyForced => certain ? WrapperUse.Needed : WrapperUse.NeededPerhaps,
            RouteLabel.NativeNotKnown or RouteLabel.None => WrapperUse.NeededPerhaps,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return new WrapperRow(
            title, card, [os], use, best.Route.Wrapper!, native is null ? "no native route" : LabelWording.RangeText(native.Range),
            LabelWording.RangeText(best.Range), NewerThatFail(verdict, best.Route), best.Route.Wrapper!.Costs);
    }

    private static string NewerThatFail(Verdict verdict, Route chosen)
    {
        var versions = chosen.Wrapper!.Wrapper.Versions.SkipWhile(version => version != chosen.Wrapper).Skip(1).ToList();
        var reasons = versions.Select(version => (version, finding: verdict.Routes.FirstOrDefault(finding =>
                finding.Route.Wrapper == version && finding.Route.Setup == chosen.Setup && finding.Route.Renderer == chosen.Renderer)))
            .Where(pair => pair.finding is { Range.CertainlyFails: true })
            .Select(pair => pair.finding!.Form.ShutGate is { } gate
                ? GateWording.Stops(gate, pair.finding.Route, [chosen.Setup.Os.Name])
                : $"{Names.Of(pair.version)} fails there");
        return string.Join("; ", reasons);
    }
}
