using System.Collections.Concurrent;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>What may come of a library's titles on cards, each worked out once. May be asked from several threads at once.</summary>
public sealed class Prospects(Library library, Func<Title, Card, Verdict> verdictOf)
{
    private readonly ProspectBuilder _builder = new();
    private readonly ConcurrentDictionary<(Card, Side), IReadOnlyList<Stake>> _stakes = [];
    private readonly ConcurrentDictionary<(Card, LibraryEntry), Stake> _single = [];

    /// <summary>The library.</summary>
    public Library Library { get; } = library;

    /// <summary>Its policy.</summary>
    public Policy Policy => Library.Policy;

    /// <summary>What is known of the speed of routes; null where speed does not count.</summary>
    public Func<Route, FloorAnswer>? Floor { get; init; }

    /// <summary>The verdict behind a prospect.</summary>
    public Verdict VerdictOn(Title title, Card card) => verdictOf(title, card);

    /// <summary>What the library's titles contribute on a card, in the order of the library.</summary>
    public IReadOnlyList<Stake> Stakes(Card card, Side side = Side.First)
    {
        if (!_stakes.TryGetValue((card, side), out var stakes))
        {
            _stakes[(card, side)] = stakes = side == Side.First
                ? Library.Entries.Select(entry => Stake(entry, card)).ToList()
                : Stakes(card).Select(stake => stake with { Side = side }).ToList();
        }

        return stakes;
    }

    /// <summary>What one title contributes on a card, as the first side.</summary>
    public Stake Stake(LibraryEntry entry, Card card)
    {
        if (_single.TryGetValue((card, entry), out var stake))
            return stake;
        var verdict = verdictOf(entry.Title, card);
        var prospect = Floor is { } floor ? _builder.Build(verdict, floor) : _builder.Build(verdict);
        return _single[(card, entry)] = new Stake(entry, Side.First, prospect, verdict.Software.Count > 0);
    }
}
