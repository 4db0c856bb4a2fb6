using System.Collections.Concurrent;
using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// Turns a collection into a <see cref="BulkProblem"/>: collects what titles ask for, puts titles together that ask for the same, asks
/// the rules what each demand costs on each setup, and puts setups together on which all cost the same. Observations are left out:
/// they belong to single cells (<see cref="Watched"/>).
/// </summary>
internal sealed class BulkCompiler
{
    private readonly Catalog _catalog;
    private readonly Func<Title, Terms> _termsFor;
    private readonly ILookup<Feature, WrapperVersion> _wrappersFor;
    private readonly Implications _implications;
    private readonly Dictionary<string, int> _numbers = [];
    private readonly List<Demand> _demands = [];

    private BulkCompiler(Catalog catalog, Func<Title, Terms> termsFor)
    {
        _catalog = catalog;
        _termsFor = termsFor;
        _wrappersFor = Resolver.WrappersByApi(catalog);
        _implications = new Implications(catalog.Features);
    }

    /// <summary>Compiles some titles and setups of a collection.</summary>
    public static BulkProblem Compile(Catalog catalog, IReadOnlyList<Title> titles, IReadOnlyList<Setup> setups, Func<Title, Terms> termsFor)
    {
        var compiler = new BulkCompiler(catalog, termsFor);
        var kinds = new List<TitleKind>();
        var kindOfTitle = compiler.PutTogether(titles, kinds);
        var (columns, kindOfSetup) = compiler.Columns(setups);
        return new BulkProblem
        {
            Worst = Rows(columns, compiler._demands.Count, toll => toll.Worst),
            Best = Rows(columns, compiler._demands.Count, toll => toll.Best),
            In = Enumerable.Range(0, (int)Hope.All + 1).Select(hope => Rows(columns, compiler._demands.Count, toll => toll.In((Hope)hope))).ToList(),
            Questions = compiler.Questions(),
            Marks = Rows(columns, compiler._demands.Count, toll => (ushort)toll.Marks),
            TitleKinds = kinds,
            KindOfTitle = kindOfTitle,
            KindOfSetup = kindOfSetup,
            SetupKinds = columns.Count,
        };
    }

    /// <summary>The routes of a title in the order of a kind's routes: of equally good ones the preferred one first.</summary>
    public static IReadOnlyList<(Renderer Renderer, WrapperVersion? Wrapper)> RoutesOf(Title title, ILookup<Feature, WrapperVersion> wrappersFor, Policy policy) => title.Renderers
        .Where(renderer => !renderer.IsSoftware)
        .SelectMany(renderer => wrappersFor[renderer.Api!.Value.Feature].Where(version => policy.Allows(version.Wrapper)).Prepend(null).Select(version => (Renderer: renderer, Wrapper: version)))
        .OrderBy(route => route.Wrapper is not null).ThenBy(route => route.Renderer.Id, StringComparer.Ordinal)
        .ThenBy(route => route.Wrapper?.Wrapper.Id, StringComparer.Ordinal)
        .ThenByDescending(route => route.Wrapper is { } version ? version.Wrapper.Versions.ToList().IndexOf(version) : 0).ToList();

    private int[] PutTogether(IReadOnlyList<Title> titles, List<TitleKind> kinds)
    {
        var known = new Dictionary<string, int>();
        var kindOfTitle = new int[titles.Count];
        for (var i = 0; i < titles.Count; i++)
        {
            var terms = _termsFor(titles[i]);
            var routes = RoutesOf(titles[i], _wrappersFor, terms.Policy)
                .Select(route => Demands.Of(route.Renderer, route.Wrapper, terms).Select(NumberOf).Distinct().Order().ToArray()).ToList();
            var isForResolver = routes.Count >= BulkSolver.NoRoute || titles[i].Renderers.Any(renderer => renderer.Needs.Count > OutcomeCode.MostLosses);
            var kind = isForResolver
                ? TitleKind.ForResolver
                : new TitleKind(routes, titles[i].Renderers.Any(MayLoseUngraded), BulkMarks.Entangled | (VetoesMatter(titles[i]) ? BulkMarks.OpenVeto : BulkMarks.None));
            var key = $"{isForResolver} {kind.HasUngraded} {kind.Deciding} {string.Join(';', kind.Routes.Select(route => string.Join(',', route)))}";
            if (!known.TryGetValue(key, out kindOfTitle[i]))
            {
                known[key] = kindOfTitle[i] = kinds.Count;
                kinds.Add(kind);
            }
        }

        return kindOfTitle;
    }

    private int[] Questions()
    {
        var numbers = _demands.Select(demand => demand.Question).Distinct().Select((question, i) => (question, i)).ToDictionary(pair => pair.question, pair => pair.i);
        return _demands.Select(demand => numbers[demand.Question]).ToArray();
    }

    private int NumberOf(Demand demand)
    {
        if (_numbers.TryGetValue(demand.Key, out var number))
            return number;
        _demands.Add(demand);
        return _numbers[demand.Key] = _demands.Count - 1;
    }

    private static bool MayLoseUngraded(Renderer renderer) =>
        renderer.Needs.Any(need => need.Strength is Strength.Ungraded or Strength.Unknown or Strength.Bonus || need.WhenBroken is Strength.Ungraded or Strength.Unknown);

    /// <summary>True where a defect's cause may be one unknown with something else that the title or a wrapper asks for.</summary>
    private bool VetoesMatter(Title title)
    {
        var causes = title.Renderers.SelectMany(renderer => renderer.Defects).Select(defect => defect.IfPresent).OfType<Capability>()
            .SelectMany(_implications.TiedTo).Select(capability => capability.Feature).ToHashSet();
        if (causes.Count == 0)
            return false;
        var asked = title.Renderers.SelectMany(renderer => renderer.Needs).SelectMany(need => need.Choices).Select(choice => choice.Feature)
            .Concat(_catalog.WrapperVersions.SelectMany(version => version.Needs).Select(need => need.Capability.Feature))
            .Concat(title.Renderers.Select(renderer => renderer.Api).OfType<Capability>().Select(api => api.Feature))
            .Concat(_catalog.WrapperVersions.Select(version => version.Target.Feature));
        return causes.Overlaps(asked);
    }

    /// <summary>The tolls of each kind of setup, one for each demand, and the kind of each setup. Read on all cores.</summary>
    private (List<Toll[]> Columns, int[] KindOfSetup) Columns(IReadOnlyList<Setup> setups)
    {
        var alike = new AlikeSetups(_catalog);
        var examples = Enumerable.Range(0, setups.Count).GroupBy(i => alike.KeyOf(setups[i])).ToList();
        var all = new Toll[setups.Count][];
        var different = new ConcurrentDictionary<Toll[], Toll[]>(SameTolls.Instance);
        Parallel.For(
            0, examples.Count,
            () => new TollReader(_catalog),
            (i, _, reader) =>
            {
                var tolls = reader.Of(_demands, setups[examples[i].First()]);
                tolls = different.GetOrAdd(tolls, tolls);
                foreach (var place in examples[i])
                    all[place] = tolls;
                return reader;
            },
            _ => { });

        // Numbered in the order of the setups, whichever was read first.
        var columns = all.Distinct().ToList();
        var numbers = columns.Select((tolls, i) => (tolls, i)).ToDictionary(pair => pair.tolls, pair => pair.i);
        return (columns, all.Select(tolls => numbers[tolls]).ToArray());
    }

    private static ushort[][] Rows(List<Toll[]> columns, int demands, Func<Toll, ushort> part)
    {
        var rows = new ushort[demands][];
        for (var demand = 0; demand < demands; demand++)
        {
            var row = rows[demand] = new ushort[BulkProblem.RowLengthFor(columns.Count)];
            for (var kind = 0; kind < columns.Count; kind++)
                row[kind] = part(columns[kind][demand]);
        }

        return rows;
    }

    private sealed class SameTolls : IEqualityComparer<Toll[]>
    {
        public static SameTolls Instance { get; } = new();

        public bool Equals(Toll[]? one, Toll[]? other) => one.AsSpan().SequenceEqual(other);

        public int GetHashCode(Toll[] tolls)
        {
            var hash = default(HashCode);
            foreach (var toll in tolls)
                hash.Add(toll);
            return hash.ToHashCode();
        }
    }
}
