using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

using Support = FeatureMatrix.Model.Support;

/// <summary>A question with the states that its answer can have; one state is an answer.</summary>
/// <param name="Key">What is asked; null where it is answered.</param>
/// <param name="States">Distinct and in order.</param>
internal sealed record Question(UnknownFact? Key, IReadOnlyList<Support> States)
{
    public static Question Answered(Support state) => new(null, [state]);

    public static Question Answered(bool holds) => Answered(holds ? Support.Yes : Support.No);

    public static Question Of(UnknownFact key, IEnumerable<Support> states)
    {
        var distinct = states.Distinct().Order().ToList();
        return new Question(distinct.Count == 1 ? null : key, distinct);
    }

    public static Question YesOrNo(UnknownFact key) => new(key, [Support.No, Support.Yes]);

    /// <summary>True where no state would open a gate.</summary>
    public bool CertainlyShut => States.All(state => state < Support.Emulated);
}

/// <summary>
/// All unknowns that a cell asks about, and which combinations of their answers are possible (DESIGN, "what one unknown is").
/// A completion gives each unknown the index of a state.
/// </summary>
internal sealed class World
{
    private readonly List<Question> _unknowns = [];
    private readonly Dictionary<UnknownFact, int> _places = [];
    private List<(int Higher, int Lower)>? _implications;

    public IReadOnlyList<Question> Unknowns => _unknowns;

    /// <summary>The number of completions, impossible ones included.</summary>
    public double Size => _unknowns.Aggregate(1.0, (size, unknown) => size * unknown.States.Count);

    /// <summary>A reader of the answer in a completion.</summary>
    public Func<int[], Support> Reader(Question question)
    {
        if (question.Key is null)
        {
            var state = question.States[0];
            return _ => state;
        }

        if (!_places.TryGetValue(question.Key, out var place))
        {
            place = _unknowns.Count;
            _unknowns.Add(question);
            _places.Add(question.Key, place);
            _implications = null;
        }
        else if (!_unknowns[place].States.SequenceEqual(question.States))
        {
            throw new InvalidOperationException($"{question.Key} has two sets of states");
        }

        var states = question.States;
        return completion => states[completion[place]];
    }

    /// <summary>False for the impossible: having more without having what it implies.</summary>
    public bool IsPossible(int[] completion)
    {
        _implications ??= Implications();
        foreach (var (higher, lower) in _implications)
        {
            if (_unknowns[higher].States[completion[higher]] != Support.No && _unknowns[lower].States[completion[lower]] == Support.No)
                return false;
        }

        return true;
    }

    private static bool Implies(UnknownFact one, UnknownFact other) => (one, other) switch
    {
        (UnknownFact.Supply a, UnknownFact.Supply b) => (a.Chip, a.Driver, a.Os, a.Api) == (b.Chip, b.Driver, b.Os, b.Api)
            && a.Card == b.Card && a.Capability.Implies(b.Capability),
        (UnknownFact.WrapperSupply a, UnknownFact.WrapperSupply b) => a.Wrapper == b.Wrapper && a.Capability.Implies(b.Capability),
        (UnknownFact.Runtime a, UnknownFact.Runtime b) => a.Os == b.Os && a.Level.Implies(b.Level),
        _ => false,
    };

    private List<(int Higher, int Lower)> Implications()
    {
        var pairs = new List<(int, int)>();
        for (var i = 0; i < _unknowns.Count; i++)
        {
            for (var j = 0; j < _unknowns.Count; j++)
            {
                if (i != j && Implies(_unknowns[i].Key!, _unknowns[j].Key!))
                    pairs.Add((i, j));
            }
        }

        return pairs;
    }
}
