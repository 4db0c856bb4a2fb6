using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>
/// A library on many cards by kinds: titles that ask for the same are worked out once, on all kinds of setups at a time. Says between which
/// ends each group of titles lies on each card.
/// </summary>
internal sealed class KindTable
{
    private readonly IReadOnlyList<Card> _cards;
    private readonly Prospects _prospects;
    private readonly Catalog _catalog;
    private readonly BulkProblem _problem;
    private readonly Dictionary<Card, IReadOnlyList<Setup>> _setups;
    private readonly Dictionary<Setup, int> _kindOfSetup;
    private readonly Dictionary<Card, int[]> _columns;
    private readonly Dictionary<(Card, LibraryEntry), CellEnds> _apart = [];
    private readonly Dictionary<Card, CellEnds[]> _ends;
    private readonly TitleHopes _hopes;

    private KindTable(Resolver resolver, Prospects prospects, IReadOnlyList<Card> cards, Func<Title, Terms> termsFor)
    {
        (_cards, _prospects, _catalog) = (cards, prospects, resolver.Catalog);
        _setups = cards.ToDictionary(card => card, resolver.SetupsOf);
        var setups = cards.SelectMany(card => _setups[card]).ToList();
        var titles = prospects.Library.Entries.Select(entry => entry.Title).ToList();
        _problem = BulkCompiler.Compile(_catalog, titles, setups, termsFor);
        _kindOfSetup = setups.Zip(_problem.KindOfSetup).ToDictionary(pair => pair.First, pair => pair.Second);
        _columns = cards.ToDictionary(card => card, card => _setups[card].Select(setup => _kindOfSetup[setup]).Distinct().ToArray());
        Groups = PutTogether();
        _ends = Solve();
        var wrappers = Resolver.WrappersByApi(_catalog);
        _hopes = new TitleHopes(_problem, kind => BulkCompiler.RoutesOf(titles[Array.IndexOf(_problem.KindOfTitle, kind)], wrappers, prospects.Policy).Select(route => route.Renderer).ToList());
    }

    /// <summary>The groups of titles.</summary>
    public IReadOnlyList<TitleGroup> Groups { get; }

    /// <summary>Works out a library on some cards.</summary>
    /// <param name="resolver">The resolver of the collection.</param>
    /// <param name="prospects">What is asked about titles that are judged one by one.</param>
    /// <param name="cards">The cards.</param>
    /// <param name="termsFor">The terms for each title; the policy is the library's.</param>
    public static KindTable Of(Resolver resolver, Prospects prospects, IReadOnlyList<Card> cards, Func<Title, Terms> termsFor) =>
        new(resolver, prospects, cards, termsFor);

    /// <summary>The ends of a group of titles on a card.</summary>
    public CellEnds Ends(Card card, int group) => _ends[card][group];

    /// <summary>
    /// The standings of a group of titles on a card in completions of what nobody knows of the title, as <see cref="TitleHopes.Of"/>; null
    /// where sums do not show them.
    /// </summary>
    public Standing[]? InTitleHopes(Card card, int group, Hope hope) => Ends(card, group).IsLoose || _apart.ContainsKey((card, Groups[group].Entry))
        ? null : _hopes.Of(card, _columns[card], Groups[group].Kind, hope);

    /// <summary>True where those are all completions of what nobody knows of the title.</summary>
    public bool AreAllTitleHopes(int group) => _hopes.AreAll(Groups[group].Kind);

    /// <summary>
    /// How each group of titles fares on the first card beside the second in every completion, as far as their setups with the same driver
    /// show; null for cards with different chips, where they show nothing.
    /// </summary>
    public Lead[]? LeadOf(Card first, Card second)
    {
        if (first.Chip != second.Chip)
            return null;
        var siblings = new SiblingSetups(_problem, _setups[second].Select(setup => (_kindOfSetup[setup], Same(setup) is { } same ? _kindOfSetup[same] : (int?)null)).Distinct().ToList());
        return Groups.Select((group, i) =>
        {
            var (one, other) = (Ends(first, i), Ends(second, i));
            if (one.Worst >= other.Best)
                return one.Worst > other.Best ? Lead.Always : Lead.Never;
            if (_problem.TitleKinds[group.Kind].IsForResolver || _apart.ContainsKey((first, group.Entry)) || _apart.ContainsKey((second, group.Entry)))
                return Lead.NotKnown;
            return siblings.LeadIn(_problem.TitleKinds[group.Kind], one.Worst.Runs);
        }).ToArray();

        Setup? Same(Setup setup) =>
            _setups[first].FirstOrDefault(other => other.Driver == setup.Driver && other.Os == setup.Os && other.Install == setup.Install);
    }

    /// <summary>Groups the titles; what was watched, and titles too large for codes, are judged one by one on the way.</summary>
    private List<TitleGroup> PutTogether()
    {
        var watched = new Watched(_catalog);
        var seen = _catalog.Observations.Select(observation => observation.Renderer.Title).ToHashSet();
        var groups = new List<TitleGroup>();
        var together = new Dictionary<int, int>();
        foreach (var (entry, kind) in _prospects.Library.Entries.Zip(_problem.KindOfTitle))
        {
            var isForResolver = _problem.TitleKinds[kind].IsForResolver;
            if (isForResolver || seen.Contains(entry.Title))
            {
                foreach (var card in _cards.Where(card => isForResolver || _setups[card].Any(setup => watched.Is(entry.Title, setup))))
                {
                    var prospect = _prospects.Stake(entry, card).Prospect;
                    _apart[(card, entry)] = CellEnds.Between(prospect.Worst, prospect.Best);
                }
            }
            else if (!entry.IsMustHave && together.TryGetValue(kind, out var place))
            {
                groups[place] = groups[place] with { Weight = groups[place].Weight + (decimal)entry.Weight };
                continue;
            }
            else if (!entry.IsMustHave)
            {
                together[kind] = groups.Count;
            }

            groups.Add(new TitleGroup(entry, kind, (decimal)entry.Weight));
        }

        return groups;
    }

    private Dictionary<Card, CellEnds[]> Solve()
    {
        var byKind = _cards.ToDictionary(card => card, _ => new CellEnds[_problem.TitleKinds.Count]);
        var (all, apart) = (new BulkSolver(_problem), new BulkSolver(HalfHopeful()));
        for (var i = 0; i < _problem.TitleKinds.Count; i++)
        {
            // Which loss is graded how is settled in each completion here, so that nothing has to be ordered twice.
            var kind = _problem.TitleKinds[i] with { HasUngraded = false, Deciding = BulkMarks.Entangled | BulkMarks.OpenVeto };
            all.Solve(kind);
            apart.Solve(kind);
            foreach (var card in _cards)
                byKind[card][i] = EndsOn(_columns[card], all, apart);
        }

        return _cards.ToDictionary(
            card => card, card => Groups.Select(group => _apart.TryGetValue((card, group.Entry), out var ends) ? ends : byKind[card][group.Kind]).ToArray());
    }

    private static CellEnds EndsOn(int[] columns, BulkSolver all, BulkSolver apart)
    {
        var (worst, best, ownBest, othersBest, marks) = (OutcomeCode.DoesNotRun, OutcomeCode.DoesNotRun, OutcomeCode.DoesNotRun, OutcomeCode.DoesNotRun, 0);
        foreach (var column in columns)
        {
            worst = Math.Min(worst, all.Worst[column]);
            best = Math.Min(best, all.Best[column]);
            ownBest = Math.Min(ownBest, apart.Worst[column]);
            othersBest = Math.Min(othersBest, apart.Best[column]);
            marks |= all.Marks[column];
        }

        var ends = new CellEnds(CellEnds.StandingOf(worst), CellEnds.StandingOf(best), CellEnds.StandingOf(ownBest), CellEnds.StandingOf(othersBest), false);
        return marks == 0 || ends.IsCertain ? ends : CellEnds.Between(ends.Worst, ends.Best);
    }

    /// <summary>The same with other ends: what belongs to cards and chips hopeful and the rest missing, and the other way about.</summary>
    private BulkProblem HalfHopeful() => new()
    {
        Worst = _problem.In[(int)Hope.Own],
        Best = _problem.In[(int)Hope.Others],
        Marks = _problem.Marks,
        TitleKinds = _problem.TitleKinds,
        KindOfTitle = _problem.KindOfTitle,
        KindOfSetup = _problem.KindOfSetup,
        SetupKinds = _problem.SetupKinds,
    };
}
