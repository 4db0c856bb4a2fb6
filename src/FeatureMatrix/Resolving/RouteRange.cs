using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>The range of a single route. What shares no unknown is worked out apart and put together again (rule R13).</summary>
internal sealed class RouteRange(Completions completions)
{
    private const int MostOutcomesListed = 64;
    private static readonly Dictionary<UnknownFact, Support> NothingSettled = [];

    /// <summary>The outcomes of this route alone.</summary>
    public OutcomeRange Of(RouteForm form) => Of(form.Gates, form.Needs);

    /// <summary>The outcomes of some gates and needs of a route, as if there were no others.</summary>
    public OutcomeRange Of(IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs)
    {
        if (RouteEvaluation.Evaluate(gates, needs, NothingSettled).Outcome is { } only)
            return OutcomeRange.Certain(only);
        return Together(Parts(gates, needs).Select(RangeOf).ToList());
    }

    private OutcomeRange RangeOf(Part part)
    {
        var leaves = completions.Walk<Outcome>(Evaluate);
        return leaves is null ? BoundsOf(part, Evaluate) : FromLeaves(leaves);

        (Outcome? Result, Question? Ask) Evaluate(IReadOnlyDictionary<UnknownFact, Support> settled)
        {
            var step = RouteEvaluation.Evaluate(part.Gates, part.Needs, settled);
            return (step.Outcome, step.Ask);
        }
    }

    /// <summary>The range that a list of leaves spans.</summary>
    internal static OutcomeRange FromLeaves(IReadOnlyList<Leaf<Outcome>> leaves)
    {
        var outcomes = leaves.Select(leaf => leaf.Result).Distinct().Order(Comparer<Outcome>.Create(Outcome.CompareBest)).ToList();
        return new OutcomeRange
        {
            Best = outcomes[0],
            Worst = outcomes.Order(Comparer<Outcome>.Create(Outcome.CompareWorst)).Last(),
            Outcomes = outcomes,
            Deciding = outcomes.Count == 1 ? [] : Completions.Deciding(leaves, (one, other) => one.Equals(other)),
        };
    }

    /// <summary>
    /// Past the limit: the best end is searched for; the worst end is a floor: everything open lost at its gravest, or not
    /// running at all where anything open could stop it.
    /// </summary>
    private static OutcomeRange BoundsOf(Part part, Completions.Evaluation<Outcome> evaluate)
    {
        var unknowns = part.Gates.SelectMany(gate => gate.Open)
            .Concat(part.Needs.SelectMany(need => need.Choices).Select(choice => choice.Answer.Open)).OfType<UnknownFact>().Distinct().ToList();
        var mayStop = part.Gates.Exists(gate => !gate.IsOpen) || part.Needs.Exists(need => need.Need.Strength is Strength.Must or Strength.Unknown
            || need.Need.WhenBroken is Strength.Must or Strength.Unknown);
        var floor = part.Needs.Select(need => new Loss(need.Need.Choices, Strength.Severe, LossKind.Missing, need.Need));
        return new OutcomeRange
        {
            Best = Completions.Best(evaluate, Outcome.CompareBest, outcome => outcome.Equals(Outcome.Works)),
            Worst = mayStop ? Outcome.DoesNotRun : Outcome.RunsWith(floor),
            IsExact = false,
            Deciding = unknowns,
        };
    }

    /// <summary>Independent parts together: best with best, worst with worst, and every mixture in between.</summary>
    private static OutcomeRange Together(IReadOnlyList<OutcomeRange> parts)
    {
        if (parts.Count == 1)
            return parts[0];
        var outcomes = parts.All(part => part.Outcomes.Count > 0) ? Mixtures(parts) : [];
        var isExact = parts.All(part => part.IsExact);
        return new OutcomeRange
        {
            Best = Sum(parts.Select(part => part.Best)),
            Worst = Sum(parts.Select(part => part.Worst)),
            Outcomes = outcomes,
            IsExact = isExact,
            // Where another part certainly fails nothing decides; otherwise each part's own unknowns do.
            Deciding = outcomes.Count == 1 ? [] : parts.SelectMany(part => part.Deciding).Distinct().ToList(),
        };
    }

    private static Outcome Sum(IEnumerable<Outcome> outcomes)
    {
        var all = outcomes.ToList();
        return all.TrueForAll(outcome => outcome.Runs) ? Outcome.RunsWith(all.SelectMany(outcome => outcome.Losses)) : Outcome.DoesNotRun;
    }

    private static List<Outcome> Mixtures(IReadOnlyList<OutcomeRange> parts)
    {
        List<Outcome> mixed = [Outcome.Works];
        foreach (var part in parts)
        {
            mixed = mixed.SelectMany(one => part.Outcomes.Select(other => Sum([one, other]))).Distinct().ToList();
            if (mixed.Count > MostOutcomesListed)
                return [];
        }

        return mixed.Order(Comparer<Outcome>.Create(Outcome.CompareBest)).ToList();
    }

    private sealed record Part(List<Gate> Gates, List<NeedTerm> Needs);

    /// <summary>Splits a route so that no two parts share an unknown, or have needs that imply each other.</summary>
    private static List<Part> Parts(IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs)
    {
        var items = gates.Select(gate => new Item(gate, null)).Concat(needs.Select(need => new Item(null, need))).ToList();
        var parts = new List<List<Item>>();
        foreach (var item in items)
        {
            var related = parts.Where(part => part.Exists(item.IsRelatedTo)).ToList();
            parts.RemoveAll(related.Contains);
            parts.Add([.. related.SelectMany(part => part), item]);
        }

        // Parts keep the order of the gates and needs in them, so that questions are asked in that order.
        return parts.Select(part => new Part(
            part.Select(item => item.Gate).OfType<Gate>().ToList(), part.Select(item => item.Need).OfType<NeedTerm>().ToList())).ToList();
    }

    private sealed record Item(Gate? Gate, NeedTerm? Need)
    {
        private readonly IReadOnlyList<UnknownFact> _unknowns = UnknownsOf(Gate, Need);

        public bool IsRelatedTo(Item other) =>
            _unknowns.Any(one => other._unknowns.Any(two => Implications.AreLinked(one, two)))
            || (Need is { } need && other.Need is { } otherNeed
                && need.Need.Choices.Any(one => otherNeed.Need.Choices.Any(two => one.Implies(two) || two.Implies(one))));

        private static List<UnknownFact> UnknownsOf(Gate? gate, NeedTerm? need)
        {
            var unknowns = new List<UnknownFact>();
            if (gate is not null)
                unknowns.AddRange(gate.Open);
            if (need is not null)
                unknowns.AddRange(need.Answers.Select(answer => answer.Open).OfType<UnknownFact>());
            return unknowns;
        }
    }
}
