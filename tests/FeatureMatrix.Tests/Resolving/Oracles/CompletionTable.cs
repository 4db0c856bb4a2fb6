using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>All possible completions of a world, in a table by their number in mixed radix.</summary>
internal sealed class CompletionTable
{
    private readonly World _world;
    private readonly int[] _rows;

    public CompletionTable(World world)
    {
        _world = world;
        _rows = new int[(int)world.Size];
        var possible = new List<int[]>();
        for (var number = 0; number < _rows.Length; number++)
        {
            var completion = Completion(number);
            _rows[number] = world.IsPossible(completion) ? possible.Count : -1;
            if (_rows[number] >= 0)
                possible.Add(completion);
        }

        Possible = possible;
    }

    public IReadOnlyList<int[]> Possible { get; }

    /// <summary>The unknowns for which some completion of the rest lets the answer change the outcome.</summary>
    public HashSet<UnknownFact> Deciding(IReadOnlyList<Outcome> outcomes)
    {
        var deciding = new HashSet<UnknownFact>();
        var stride = 1;
        foreach (var unknown in _world.Unknowns)
        {
            if (Enumerable.Range(0, _rows.Length).Any(number => Differs(number, stride, unknown.States.Count, outcomes)))
                deciding.Add(unknown.Key!);
            stride *= unknown.States.Count;
        }

        return deciding;
    }

    private bool Differs(int number, int stride, int states, IReadOnlyList<Outcome> outcomes)
    {
        var digit = number / stride % states;
        if (_rows[number] < 0 || digit == states - 1)
            return false;
        for (var other = number + stride; digit < states - 1; other += stride, digit++)
        {
            if (_rows[other] >= 0 && !outcomes[_rows[other]].Equals(outcomes[_rows[number]]))
                return true;
        }

        return false;
    }

    private int[] Completion(int number)
    {
        var completion = new int[_world.Unknowns.Count];
        for (var i = 0; i < completion.Length; i++)
        {
            var states = _world.Unknowns[i].States.Count;
            completion[i] = number % states;
            number /= states;
        }

        return completion;
    }
}
