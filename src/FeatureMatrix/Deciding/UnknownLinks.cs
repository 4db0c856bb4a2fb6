using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>Which of several holders of unknowns hang together: they ask about the same unknown, or about two of which one implies
/// the other (rule R13: "split what shares no unknown").</summary>
internal sealed class UnknownLinks
{
    private readonly HashSet<UnknownFact> _shared = [];
    private readonly Dictionary<UnknownFact, List<(UnknownFact Unknown, int Holder)>> _byContext = [];
    private readonly int[] _parent;

    /// <summary>Links holders by the unknowns each of them asks about.</summary>
    public UnknownLinks(IReadOnlyList<IReadOnlyList<UnknownFact>> holders)
    {
        _parent = Enumerable.Range(0, holders.Count).ToArray();
        for (var i = 0; i < holders.Count; i++)
        {
            foreach (var unknown in holders[i])
            {
                var context = ContextOf(unknown);
                if (!_byContext.TryGetValue(context, out var list))
                    _byContext[context] = list = [];
                foreach (var (other, holder) in list)
                {
                    if (holder == i || !Implications.AreLinked(unknown, other))
                        continue;
                    _shared.Add(unknown);
                    _shared.Add(other);
                    _parent[Root(i)] = Root(holder);
                }

                list.Add((unknown, i));
            }
        }
    }

    /// <summary>The holders that hang together, each component and the list of them in the order given.</summary>
    public IEnumerable<IReadOnlyList<int>> Components =>
        Enumerable.Range(0, _parent.Length).GroupBy(Root).Select(group => group.ToList());

    /// <summary>How many unknowns more than one holder has a say in.</summary>
    public int SharedCount => _shared.Count;

    /// <summary>True where more than one holder has a say in it.</summary>
    public bool IsShared(UnknownFact unknown) => _shared.Contains(unknown);

    /// <summary>All that an answer can touch: the holders that ask about this unknown or one that is linked with it, and what they ask of that kind.</summary>
    public ILookup<int, UnknownFact> Touched(UnknownFact unknown) =>
        _byContext[ContextOf(unknown)].Where(one => Implications.AreLinked(unknown, one.Unknown)).ToLookup(one => one.Holder, one => one.Unknown);

    private int Root(int i)
    {
        while (_parent[i] != i)
            i = _parent[i] = _parent[_parent[i]];
        return i;
    }

    /// <summary>What two unknowns must have in common before implications can link them.</summary>
    private static UnknownFact ContextOf(UnknownFact unknown) => unknown switch
    {
        UnknownFact.Supply supply => supply with { Capability = default },
        UnknownFact.WrapperSupply supply => supply with { Capability = default },
        UnknownFact.Runtime runtime => runtime with { Level = default },
        _ => unknown,
    };
}
