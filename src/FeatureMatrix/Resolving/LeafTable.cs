using System.Numerics;
using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// The leaves of a walk side by side, an unknown a column, so that two leaves are compared for 64 unknowns at a time. Walks have hundreds
/// of leaves, and every pair of them is compared.
/// </summary>
internal sealed class LeafTable
{
    /// <summary>Words for each 64 columns of a leaf: which are settled, and three bits of each state.</summary>
    private const int Planes = 4;

    private readonly List<UnknownFact> _columns = [];
    private readonly ulong[][] _leaves;

    /// <summary>Lays out what each leaf settled.</summary>
    public LeafTable(IReadOnlyList<IReadOnlyDictionary<UnknownFact, Support>> leaves)
    {
        var numbers = new Dictionary<UnknownFact, int>();
        foreach (var unknown in leaves.SelectMany(settled => settled.Keys))
        {
            if (numbers.TryAdd(unknown, _columns.Count))
                _columns.Add(unknown);
        }

        var words = Planes * ((_columns.Count + 63) / 64);
        _leaves = leaves.Select(settled =>
        {
            var leaf = new ulong[words];
            foreach (var (unknown, state) in settled)
                Mark(leaf, numbers[unknown], state);
            return leaf;
        }).ToArray();
    }

    /// <summary>The unknowns in the order in which they were asked, which is the order in which a person would check them.</summary>
    public IReadOnlyList<UnknownFact> Columns => _columns;

    /// <summary>The only column that two leaves settle differently; -1 where there are none or several.</summary>
    public int OnlyDifference(int one, int other)
    {
        var (a, b) = (_leaves[one], _leaves[other]);
        var found = -1;
        for (var at = 0; at < a.Length; at += Planes)
        {
            var different = a[at] & b[at] & ((a[at + 1] ^ b[at + 1]) | (a[at + 2] ^ b[at + 2]) | (a[at + 3] ^ b[at + 3]));
            if (different == 0)
                continue;
            if (found >= 0 || (different & (different - 1)) != 0)
                return -1;
            found = at / Planes * 64 + BitOperations.TrailingZeroCount(different);
        }

        return found;
    }

    private static void Mark(ulong[] leaf, int column, Support state)
    {
        var at = column / 64 * Planes;
        var bit = 1UL << (column % 64);
        leaf[at] |= bit;
        var number = state - Support.No;
        for (var plane = 1; plane < Planes; plane++)
        {
            if ((number & (1 << (plane - 1))) != 0)
                leaf[at + plane] |= bit;
        }
    }
}
