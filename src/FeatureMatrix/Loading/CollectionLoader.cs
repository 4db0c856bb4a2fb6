using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Readers;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>
/// Texts to a linked catalog. Pure: the same files give the same result in any order. All faults are collected, none is
/// thrown. First the ids of everything are noted, then the objects are made, each kind after those it refers to.
/// </summary>
public static class CollectionLoader
{
    /// <summary>Loads vocabulary and collection together.</summary>
    /// <param name="files">All YAML files, and the bench log with its frame times below <c>runs/</c>; other files are passed over.</param>
    /// <param name="earlier">Faults of reading the files, which join the others and block in the same way.</param>
    /// <param name="policy">A policy of its own, laid over that of every library key by key; null for none.</param>
    /// <param name="pictures">The picture files there are; null where nobody looks at pictures, and captures have none then.</param>
    public static LoadResult Load(
        IReadOnlyList<SourceText> files, IReadOnlyList<Fault>? earlier = null, SourceText? policy = null, IReadOnlyList<SourcePicture>? pictures = null)
    {
        var faults = new FaultList();
        foreach (var fault in earlier ?? [])
            faults.Add(fault);
        faults.HasUnreadFile = earlier is { Count: > 0 };
        var draft = new Draft(faults);
        var sections = new Sections(draft);
        foreach (var file in files.Where(IsYaml).OrderBy(file => file.Layer).ThenBy(file => file.Path, StringComparer.Ordinal))
        {
            draft.Layers[file.Path] = file.Layer;
            if (NodeParser.Parse(file, faults) is { } root)
                sections.Collect(root, file.Layer);
        }

        var catalog = Build(draft, files, pictures, policy, out var overlay);
        return new LoadResult(faults.HasErrors ? null : catalog, faults.Sorted())
        {
            Policy = overlay?.Invoke(Policy.Default),
            HasUnreadFile = faults.HasUnreadFile,
            Hidden = [.. faults.Hidden.OrderBy(one => one.About, StringComparer.Ordinal)],
        };
    }

    private static bool IsYaml(SourceText file) =>
        file.Path.EndsWith(".yaml", StringComparison.Ordinal) || file.Path.EndsWith(".yml", StringComparison.Ordinal);

    private static Catalog Build(
        Draft draft, IReadOnlyList<SourceText> files, IReadOnlyList<SourcePicture>? pictures, SourceText? policy, out Func<Policy, Policy>? overlay)
    {
        draft.People.Build(item => new Person(item.Id, item.Fields.Text("name"), item.Fields.YesNo("name-may-be-shown") ?? false));
        draft.Sources.Build(draft.SourceShelf);
        BuildVocabulary(draft);
        BuildHardware(draft);
        overlay = policy is null ? null : new PolicyReader(draft).ReadFile(policy);
        BuildTitles(draft, overlay);
        BuildCaptures(draft, pictures);
        var observations = Each(draft.ObservationNodes, new ObservationReader(draft).Read);
        var logs = files.Where(RunReader.IsLog).OrderBy(file => file.Path, StringComparer.Ordinal);
        IReadOnlyList<Run> runs = [.. logs.SelectMany(new RunReader(draft, files).Read)];
        draft.Facts.AddRange(draft.FactNodes.SelectMany(new FactReader(draft).Read));
        Contradictions.Report(draft.Facts, draft.Faults);
        var (name, note, currency) = Collection(draft);
        Finish(draft);
        return new Catalog
        {
            Name = name,
            Note = note,
            Currency = currency,
            Features = draft.Features.All,
            Oses = draft.Oses.All,
            Buses = draft.Buses.All,
            Chips = draft.Chips.All,
            Cards = draft.Cards.All,
            Specimens = draft.Specimens.All,
            Branches = [.. draft.Branches.All.Concat(draft.BiosBranches).OrderBy(branch => branch.Id, StringComparer.Ordinal)],
            Wrappers = draft.Wrappers.All,
            Titles = draft.Titles.All,
            Rigs = draft.Rigs.All,
            Libraries = draft.Libraries.All,
            Facts = draft.Facts,
            Observations = observations,
            Captures = draft.Captures.All,
            Runs = runs,
            Sources = draft.SourceShelf.All,
        };
    }

    private static void BuildVocabulary(Draft draft)
    {
        var features = new FeatureReader(draft);
        draft.Features.Build(features.Build);
        features.Link();
        var systems = new SystemReader(draft);
        draft.Oses.Build(systems.Os);
        draft.Buses.Build(systems.Bus);
    }

    private static void BuildHardware(Draft draft)
    {
        var systems = new SystemReader(draft);
        var (chips, cards, drivers, bios) = (new ChipReader(draft), new CardReader(draft, systems), new DriverReader(draft), new BiosReader(draft));
        draft.Chips.Build(ChipReader.Build);
        draft.Cards.Build(cards.Build);
        foreach (var (item, card) in draft.Cards.Made)
            cards.Link(item, card);
        draft.Specimens.Build(cards.Specimen);
        draft.Branches.Build(drivers.Build);
        foreach (var (item, card) in draft.Cards.Made)
            bios.Build(item, card);
        draft.Wrappers.Build(new WrapperReader(draft, systems).Build);
        draft.Facts.AddRange(chips.Supply());
        draft.Facts.AddRange(draft.Cards.Made.SelectMany(made => cards.Supply(made.Item, made.Value)));
        draft.Facts.AddRange(draft.Branches.Made.SelectMany(made => drivers.Supply(made.Item, made.Value)));
        draft.Facts.AddRange(bios.Supply());
    }

    private static void BuildTitles(Draft draft, Func<Policy, Policy>? overlay)
    {
        var titles = new TitleReader(draft);
        draft.Engines.Build(titles.Engine);
        draft.Titles.Build(titles.Build);
        draft.Rigs.Build(new RigReader(draft).Build);
        draft.Libraries.Build(new LibraryReader(draft, overlay).Build);
    }

    private static void BuildCaptures(Draft draft, IReadOnlyList<SourcePicture>? pictures)
    {
        var captures = new CaptureReader(draft, pictures);
        draft.Captures.Build(captures.Build);
        captures.Pair();
    }

    private static (string Name, string Note, string Currency) Collection(Draft draft)
    {
        if (draft.Collection is not { } fields)
            return ("", "", "");
        _ = fields.List(BaseFolders.Key);
        var result = (fields.RequiredText("name"), fields.Text("note"), fields.Text("currency"));
        fields.Done();
        return result;
    }

    private static void Finish(Draft draft)
    {
        draft.People.Done(draft.Faults);
        draft.SourceShelf.Done(draft.Faults);
        draft.Features.Done(draft.Faults);
        draft.Oses.Done(draft.Faults);
        draft.Buses.Done(draft.Faults);
        draft.Chips.Done(draft.Faults);
        draft.Cards.Done(draft.Faults);
        draft.Specimens.Done(draft.Faults);
        draft.Branches.Done(draft.Faults);
        draft.Wrappers.Done(draft.Faults);
        draft.Engines.Done(draft.Faults);
        draft.Titles.Done(draft.Faults);
        draft.Rigs.Done(draft.Faults);
        draft.Libraries.Done(draft.Faults);
        draft.Captures.Done(draft.Faults);
    }

    private static List<T> Each<T>(IEnumerable<Node> nodes, Func<Node, T?> read)
        where T : class => [.. nodes.Select(read).OfType<T>()];
}
