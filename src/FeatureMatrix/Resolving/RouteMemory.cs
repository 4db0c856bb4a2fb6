using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// Evaluates several routes under one completion after another, each again only where it hangs on what was settled since. For completions
/// that are walked depth first: each settles one unknown more than the last one that settled one less.
/// </summary>
internal sealed class RouteMemory
{
    private static readonly Dictionary<UnknownFact, Support> NothingSettled = [];

    private readonly IReadOnlyList<Undecided> _routes;
    private readonly Dictionary<UnknownFact, List<int>> _hangingOn = [];
    private readonly List<Row> _rows = [];

    /// <summary>Prepares to evaluate some routes, which are asked for by their places.</summary>
    public RouteMemory(IReadOnlyList<RouteForm> routes)
    {
        _routes = routes.Select(Undecided.Of).ToList();
        for (var route = 0; route < routes.Count; route++)
        {
            foreach (var unknown in _routes[route].Unknowns)
            {
                if (!_hangingOn.TryGetValue(unknown, out var hanging))
                    _hangingOn[unknown] = hanging = [];
                if (hanging.Count == 0 || hanging[^1] != route)
                    hanging.Add(route);
            }
        }
    }

    /// <summary>The routes under a completion, which is the one before with the answer to its question, or goes back to an earlier one.</summary>
    public Row Under(IReadOnlyDictionary<UnknownFact, Support> settled)
    {
        var depth = settled.Count;
        if (_rows.Count == depth)
            _rows.Add(new Row(this));
        _rows[depth].Start(settled, depth == 0 ? null : _rows[depth - 1]);
        return _rows[depth];
    }

    /// <summary>What a route comes to, without the conditions that certainly hold.</summary>
    private sealed record Undecided(IReadOnlyList<Gate> Gates, IReadOnlyList<NeedTerm> Needs)
    {
        public IEnumerable<UnknownFact> Unknowns => Gates.SelectMany(gate => gate.Open).Concat(Needs.SelectMany(need => need.Unknowns));

        public static Undecided Of(RouteForm form) => new(
            form.Gates.Where(gate => !gate.IsOpen).ToList(),
            form.Needs.Where(need => NeedEvaluation.Evaluate(need, NothingSettled) != NeedResult.Met).ToList());
    }

    /// <summary>The routes under one completion.</summary>
    public sealed class Row(RouteMemory memory)
    {
        private readonly Step?[] _steps = new Step?[memory._routes.Count];
        private IReadOnlyDictionary<UnknownFact, Support> _settled = NothingSettled;
        private UnknownFact? _asked;

        /// <summary>What a route comes to, or what it asks.</summary>
        public Step this[int route] =>
            _steps[route] ??= RouteEvaluation.Evaluate(memory._routes[route].Gates, memory._routes[route].Needs, _settled);

        /// <summary>Notes what is asked next.</summary>
        public Question Ask(Question question)
        {
            _asked = question.Unknown;
            return question;
        }

        internal void Start(IReadOnlyDictionary<UnknownFact, Support> settled, Row? before)
        {
            _settled = settled;
            if (before is null)
            {
                Array.Clear(_steps);
                return;
            }

            before._steps.CopyTo(_steps, 0);
            foreach (var route in memory._hangingOn.GetValueOrDefault(before._asked!) ?? [])
                _steps[route] = null;
        }
    }
}
