using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>What may come of a library's titles on cards, each worked out once.</summary>
public sealed class Prospects(Library library, Func<Title, Card, Verdict> verdictOf)
{
    private readonly ProspectBuilder _builder = new();
    private readonly Dictionary<(Title, Card), (Prospect Prospect, bool SoftwareRuns)> _known = [];

    /// <summary>The library.</summary>
    public Library Library { get; } = library;

    /// <summary>Its policy.</summary>
    public Policy Policy => Library.Policy;

    /// <summary>What is known of the speed of routes; null where speed does not count.</summary>
    public Func<Route, FloorAnswer>? Floor { get; init; }

    /// <summary>The verdict behind a prospect.</summary>
    public Verdict VerdictOn(Title title, Card card) => verdictOf(title, card);

    /// <summary>What the library's titles contribute on a card.</summary>
    public IReadOnlyList<Stake> Stakes(Card card, Side side = Side.First) => Library.Entries.Select(entry =>
    {
        var (prospect, software) = Of(entry.Title, card);
        return new Stake(entry, side, prospect, software);
    }).ToList();

    private (Prospect Prospect, bool SoftwareRuns) Of(Title title, Card card)
    {
        if (!_known.TryGetValue((title, card), out var known))
        {
            var verdict = verdictOf(title, card);
            var prospect = Floor is { } floor ? _builder.Build(verdict, floor) : _builder.Build(verdict);
            _known[(title, card)] = known = (prospect, verdict.Software.Count > 0);
        }

        return known;
    }
}
