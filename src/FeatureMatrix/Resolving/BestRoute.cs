using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>The best permitted route in each completion, over all completions (rule R13).</summary>
internal sealed class BestRoute(Completions completions)
{
    /// <summary>What came of it: the outcomes, and the routes that are best somewhere.</summary>
    /// <param name="Range">The outcomes; its deciding unknowns are those that change the outcome.</param>
    /// <param name="By">The routes that run and are best in some completion, in order of preference.</param>
    /// <param name="DecidingRoute">The unknowns that decide which of them it is.</param>
    internal sealed record Pool(OutcomeRange Range, IReadOnlyList<RouteFinding> By, IReadOnlyList<UnknownFact> DecidingRoute);

    private sealed record Pick(Outcome Outcome, RouteFinding? By);

    /// <summary>Over routes that may run, in order of preference.</summary>
    public Pool Of(IReadOnlyList<RouteFinding> routes)
    {
        if (routes.Count == 0)
            return new Pool(OutcomeRange.Certain(Outcome.DoesNotRun), [], []);
        var contenders = Contenders(routes);
        if (contenders.Count == 1)
            return new Pool(contenders[0].Range, contenders, contenders[0].Range.Deciding);
        var memory = new RouteMemory(contenders.Select(route => route.Form).ToList());
        var mildest = contenders.Select(route => route.Range.Mildest).ToList();
        var leaves = completions.Walk<Pick>(settled => Evaluate(memory.Under(settled)));
        return leaves is null ? Bounds(contenders) : FromLeaves(contenders, leaves);

        (Pick? Result, Question? Ask) Evaluate(RouteMemory.Row row)
        {
            var best = new Pick(Outcome.DoesNotRun, null);
            for (var i = 0; i < contenders.Count; i++)
            {
                // Routes come in order of preference, so an equal outcome later on changes nothing.
                if (best.By is not null && Outcome.CompareWorst(mildest[i], best.Outcome) >= 0)
                    continue;
                var step = row[i];
                if (step.Outcome is not { } outcome)
                    return (null, row.Ask(step.Ask!.Value));
                if (outcome.Runs && (best.By is null || Outcome.CompareWorst(outcome, best.Outcome) < 0))
                    best = new Pick(outcome, contenders[i]);
            }

            return (best, null);
        }
    }

    /// <summary>
    /// Leaves out routes that can never be the best: even at their best they are no better than another at its worst, and
    /// the other is preferred among equals.
    /// </summary>
    private static List<RouteFinding> Contenders(IReadOnlyList<RouteFinding> routes)
    {
        var surest = routes.Min(Comparer<RouteFinding>.Create(RouteFinding.Compare))!;
        return routes.Where(route => IsSurestOrMayBeat(route, surest)).ToList();

        static bool IsSurestOrMayBeat(RouteFinding route, RouteFinding surest)
        {
            var result = Outcome.CompareWorst(route.Range.Mildest, surest.Range.Worst);
            return result < 0 || (result == 0 && RouteFinding.ComparePreference(route, surest) <= 0);
        }
    }

    private static Pool FromLeaves(List<RouteFinding> contenders, IReadOnlyList<Leaf<Pick>> leaves)
    {
        var range = RouteRange.FromLeaves(leaves.Select(leaf => new Leaf<Outcome>(leaf.Settled, leaf.Result.Outcome)).ToList());
        var by = contenders.Where(route => leaves.Any(leaf => leaf.Result.By == route)).ToList();
        var decidingRoute = Completions.Deciding(leaves, (one, other) => one.By == other.By);
        return new Pool(range, by, decidingRoute);
    }

    /// <summary>
    /// Past the limit: the best end is the best of the routes' own, which some completion reaches; the worst end is the best of
    /// their worst ends, below which no completion can fall. Where nothing is open about the surest route, what the others hang on decides.
    /// </summary>
    private static Pool Bounds(List<RouteFinding> contenders)
    {
        var best = contenders.Select(route => route.Range.Best).Min(Comparer<Outcome>.Create(Outcome.CompareBest))!;
        var surest = contenders.Min(Comparer<RouteFinding>.Create(RouteFinding.Compare))!;
        var deciding = surest.Range.Deciding.Count > 0 ? surest.Range.Deciding : contenders.SelectMany(route => route.Range.Deciding).Distinct().ToList();
        return new Pool(new OutcomeRange { Best = best, Worst = surest.Range.Worst, IsExact = false, Deciding = deciding }, [surest], deciding);
    }
}
