using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>What a bit of a mask stands for.</summary>
internal enum MaskClass
{
    Stops,
    Severe,
    Ungraded,
    Cosmetic,
    Reduced,
}

/// <summary>
/// The relations as bit masks: for each class one bit for each demand that may cost such a thing, more where it may cost several. A route's mask
/// has the bits of its demands; a setup's masks, one for each end, the bits of what demands cost there. Bits are numbered for one way at a
/// time, so that a mask has only the words that routes of that way need.
/// </summary>
internal sealed class Masks
{
    private readonly Relations _relations;
    private readonly int[] _demands;
    private readonly int[][] _places;
    private readonly int[][] _widths;
    private readonly int[] _words;

    public Masks(Relations relations, int way)
    {
        _relations = relations;
        _demands = [.. relations.Titles.SelectMany((routes, title) => routes.Where((_, place) => relations.Ways[title][place] == way)).SelectMany(route => route).Distinct().Order()];
        var classes = Enum.GetValues<MaskClass>();
        _places = [.. classes.Select(_ => new int[relations.Demands])];
        _widths = [.. classes.Select(_ => new int[relations.Demands])];
        _words = new int[classes.Length];
        foreach (var of in classes)
        {
            var bits = 0;
            foreach (var demand in _demands)
            {
                _places[(int)of][demand] = bits;
                bits += _widths[(int)of][demand] = Enumerable.Range(0, relations.Setups).Select(setup => relations.TollOf[(setup * relations.Demands) + demand]).Distinct()
                    .Max(toll => Math.Max(Amount(relations.Tolls[toll], of, atBest: false), Amount(relations.Tolls[toll], of, atBest: true)));
            }

            _words[(int)of] = (bits + 63) / 64;
        }
    }

    /// <summary>The 64-bit words that a class takes.</summary>
    public int Words(MaskClass of) => _words[(int)of];

    /// <summary>The masks of a route, class by class.</summary>
    public IEnumerable<ulong> OfRoute(int[] demands) => Of(demands.Select(demand => (demand, Toll: (Toll?)null)), false);

    /// <summary>The masks of a setup at one end, class by class.</summary>
    public IEnumerable<ulong> OfSetup(int setup, bool atBest) =>
        Of(_demands.Select(demand => (demand, (Toll?)_relations[setup, demand])), atBest);

    private IEnumerable<ulong> Of(IEnumerable<(int Demand, Toll? Toll)> demands, bool atBest)
    {
        var list = demands.ToList();
        foreach (var of in Enum.GetValues<MaskClass>())
        {
            var words = new ulong[_words[(int)of]];
            foreach (var (demand, toll) in list)
            {
                var amount = toll is { } known ? Amount(known, of, atBest) : _widths[(int)of][demand];
                for (var bit = _places[(int)of][demand]; bit < _places[(int)of][demand] + amount; bit++)
                    words[bit / 64] |= 1UL << (bit % 64);
            }

            foreach (var word in words)
                yield return word;
        }
    }

    private static int Amount(Toll toll, MaskClass of, bool atBest)
    {
        var code = atBest ? toll.Best : toll.Worst;
        if (of == MaskClass.Reduced)
            return toll.Marks.HasFlag(BulkMarks.Reduced) ? 1 : 0;
        if (!OutcomeCode.Runs(code))
            return of == MaskClass.Stops ? 1 : 0;
        var (first, second, third) = (code >> 10, (code >> 5) & OutcomeCode.MostLosses, code & OutcomeCode.MostLosses);
        return of switch
        {
            MaskClass.Severe => atBest ? first : third,
            MaskClass.Ungraded => atBest ? third : first - third,
            MaskClass.Cosmetic => atBest ? second - third : second,
            _ => 0,
        };
    }
}
