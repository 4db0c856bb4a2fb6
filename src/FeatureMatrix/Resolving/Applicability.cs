using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>When a conditional need applies: that may hang on what is not known (rules R5 and R11).</summary>
/// <param name="Open">The open answers it hangs on; none where it is certain.</param>
/// <param name="When">
/// Whether it applies, for each combination of the answers: the bits of an index say which of them are yes, the first answer being the lowest bit.
/// </param>
public sealed record Applicability(IReadOnlyList<Answer> Open, IReadOnlyList<bool> When)
{
    /// <summary>A condition that certainly holds or certainly does not.</summary>
    public static Applicability Certain(bool applies) => new([], [applies]);

    /// <summary>A condition that hangs on open answers; those that change nothing are left out.</summary>
    /// <param name="open">The answers.</param>
    /// <param name="applies">Whether the need applies where just these of the answers are yes.</param>
    public static Applicability Of(IReadOnlyList<Answer> open, Func<IReadOnlySet<Answer>, bool> applies)
    {
        var relevant = open.Where(answer => Subsets(open).Any(yes => applies(yes) != applies(new HashSet<Answer>(yes) { answer }))).ToList();
        return new Applicability(relevant, [.. Subsets(relevant).Select(applies)]);
    }

    /// <summary>Whether the need applies once some unknowns are settled.</summary>
    /// <param name="settled">The state of each.</param>
    /// <param name="ask">The answer that is missing; null where none is.</param>
    public bool Holds(IReadOnlyDictionary<UnknownFact, Support> settled, out Answer? ask)
    {
        var index = 0;
        for (var i = 0; i < Open.Count; i++)
        {
            if (!settled.TryGetValue(Open[i].Open!, out var state))
            {
                ask = Open[i];
                return false;
            }

            index += state == Support.Yes ? 1 << i : 0;
        }

        ask = null;
        return When[index];
    }

    private static IEnumerable<IReadOnlySet<Answer>> Subsets(IReadOnlyList<Answer> answers) =>
        Enumerable.Range(0, 1 << answers.Count).Select(index => answers.Where((_, bit) => (index & 1 << bit) != 0).ToHashSet());
}
