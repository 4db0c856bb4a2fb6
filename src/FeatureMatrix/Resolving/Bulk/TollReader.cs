using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// Asks the rules what a demand costs on a setup: gates and needs come from <see cref="RouteBuilder"/>, their outcomes from
/// <see cref="RouteRange"/>, as for a single cell. Not for several threads at a time.
/// </summary>
internal sealed class TollReader(Catalog catalog)
{
    private static readonly Toll Free = new(0, 0, BulkMarks.None);
    private static readonly Toll Shut = new(OutcomeCode.DoesNotRun, OutcomeCode.DoesNotRun, BulkMarks.None);

    private readonly SupplyTable _supply = new(catalog);
    private readonly RouteRange _ranges = new(new Completions(Resolver.CompletionLimit));
    private RouteBuilder? _builder;

    private RouteBuilder Builder => _builder ??= new RouteBuilder(_supply, new ObservationIndex(catalog, _ranges));

    /// <summary>
    /// What each demand costs on a setup. Needs and defects of an API or a wrapper that no route reaches there are not looked at: what a
    /// route costs that is shut anyway does not matter. Room is asked for by routes of several.
    /// </summary>
    public Toll[] Of(IReadOnlyList<Demand> demands, Setup setup)
    {
        var tolls = new Toll[demands.Count];
        var reached = new HashSet<object>();
        for (var i = 0; i < tolls.Length; i++)
        {
            if (demands[i] is Demand.Access && (tolls[i] = Of(demands[i], setup)).Best < OutcomeCode.DoesNotRun)
                reached.Add(demands[i].Through);
        }

        for (var i = 0; i < tolls.Length; i++)
        {
            if (demands[i] is not Demand.Access)
                tolls[i] = demands[i] is Demand.Room || reached.Contains(demands[i].Through) ? Of(demands[i], setup) : Free;
        }

        _supply.Forget();
        return tolls;
    }

    private Toll Of(Demand demand, Setup setup)
    {
        var route = new Route(demand.Renderer, setup, demand.Wrapper);
        switch (demand)
        {
            case Demand.Access:
                // Neither a forbidden route nor one by a driver that draws with the processor counts (rules R7 and R13).
                return setup.Driver.IsSoftware || demand.Terms.Forbids(route) != Forbidden.Nothing ? Shut : Of(Builder.AccessGates(route), []);
            case Demand.Veto veto:
                if (Builder.VetoGate(veto.Defect, route) is not { } gate)
                    return Free;
                var toll = Of([gate], []);
                return gate.IsOpen || gate.IsShut ? toll : toll with { Marks = (toll.Marks & ~BulkMarks.Entangled) | BulkMarks.OpenVeto };
            case Demand.Room:
                var draw = DrawMode.For(route.Renderer.Memory, demand.Terms.Policy);
                var textures = Builder.Textures(route, draw);
                var room = Of(RouteBuilder.MemoryGates(route, draw, textures), []);
                return textures.IsReduced ? room with { Marks = room.Marks | BulkMarks.Reduced } : room;
            case Demand.Needed needed:
                var mode = DrawMode.For(route.Renderer.Memory, demand.Terms.Policy);
                return Of([], needed.Needs.Select(need => Builder.Term(need, route, demand.Terms.Preset, mode)).ToList());
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private Toll Of(IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs)
    {
        var range = _ranges.Of(gates, needs);
        var (worst, best) = (OutcomeCode.AtWorst(range.Worst), OutcomeCode.AtBest(range.Best));
        var marks = range.IsCertain || IsPlain(range, gates, needs) ? BulkMarks.None : BulkMarks.Entangled;
        if (OutcomeCode.RankOf(worst) == OutcomeCode.RankOf(best) && marks == BulkMarks.None)
            return new Toll(worst, best, marks);
        var (belonging, whose) = TollBelonging.Of(gates, needs);
        var toll = new Toll(worst, best, marks | belonging);
        return (whose & Hope.Others) == Hope.None ? toll : InMixtures(toll, whose, gates, needs);
    }

    /// <summary>Adds what an open toll costs in the mixtures; where one of them has no state to choose nothing but the ends is known.</summary>
    private static Toll InMixtures(Toll toll, Hope whose, IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs)
    {
        var isKnown = true;
        var codes = new ushort?[(int)Hope.All + 1];
        (codes[(int)Hope.None], codes[(int)whose]) = (toll.Worst, toll.Best);
        toll = toll with
        {
            Own = In(Hope.Own),
            Title = In(Hope.Title),
            OwnAndTitle = In(Hope.Own | Hope.Title),
            Anywhere = In(Hope.Anywhere),
            OwnAndAnywhere = In(Hope.Own | Hope.Anywhere),
            Others = In(Hope.Others),
        };
        return isKnown ? toll : toll with { Marks = toll.Marks | BulkMarks.Entangled };

        ushort In(Hope hope) => codes[(int)(hope & whose)] ??= Code(hope & whose);

        ushort Code(Hope hope)
        {
            var outcome = Under(gates, needs, (unknown, possible) => hope.HasFlag(TollBelonging.Of(unknown)) ? possible[^1] : possible[0] == Support.No ? Support.No : null);
            isKnown &= outcome is not null;
            return outcome is null ? OutcomeCode.DoesNotRun : hope.HasFlag(Hope.Title) ? OutcomeCode.AtBest(outcome) : OutcomeCode.AtWorst(outcome);
        }
    }

    /// <summary>
    /// True where the best end comes with every unknown at its most hopeful and the worst end with every unknown missing. Then all demands
    /// of all routes meet their ends in the same two completions, and their codes may be added up.
    /// </summary>
    private static bool IsPlain(OutcomeRange range, IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs)
    {
        if (!range.IsExact || range.Outcomes.Count == 0)
            return false;
        return Under(gates, needs, (_, possible) => possible[^1]) is { } hopeful && Outcome.CompareBest(hopeful, range.Best) == 0 && Outcome.CompareWorst(hopeful, range.Mildest) == 0
            && Under(gates, needs, (_, possible) => possible[0] == Support.No ? Support.No : null) is { } fearful && Outcome.CompareWorst(fearful, range.Worst) == 0;
    }

    /// <summary>The outcome where each unknown is settled by a choice; null where one has no state to choose.</summary>
    private static Outcome? Under(IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs, Func<UnknownFact, IReadOnlyList<Support>, Support?> choose)
    {
        var settled = new Dictionary<UnknownFact, Support>();
        while (true)
        {
            var step = RouteEvaluation.Evaluate(gates, needs, settled);
            if (step.Ask is not { } question)
                return step.Outcome;
            if (choose(question.Unknown, question.Possible) is not { } state)
                return null;
            settled[question.Unknown] = state;
        }
    }
}
