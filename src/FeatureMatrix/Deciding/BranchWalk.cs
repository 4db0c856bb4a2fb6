using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Deciding;

/// <summary>
/// Walks every completion of what the stakes of a group share. An answer touches only stakes that ask about something linked with it, so
/// that a step costs as much as those, however large the group is.
/// </summary>
internal sealed class BranchWalk
{
    private readonly UnknownLinks _links;
    private readonly int _limit;
    private readonly Dictionary<UnknownFact, ILookup<int, UnknownFact>> _touched = [];
    private readonly Dictionary<UnknownFact, Support> _settled = [];
    private readonly List<Branch> _branches = [];
    private readonly Left[] _left;

    private BranchWalk(IReadOnlyList<Stake> stakes, UnknownLinks links, int limit)
    {
        (_links, _limit) = (links, limit);
        _left = stakes.Select(stake => new Left(stake.Prospect.Cases)).ToArray();
    }

    /// <summary>The branches of a group; null where they or the unknowns that are shared are too many.</summary>
    public static IReadOnlyList<Branch>? Of(IReadOnlyList<Stake> stakes, int branchLimit, int unknownLimit)
    {
        var links = new UnknownLinks(stakes.Select(stake => stake.Prospect.Unknowns).ToList());
        if (links.SharedCount > unknownLimit)
            return null;
        var walk = new BranchWalk(stakes, links, branchLimit);
        return walk.From(0) ? walk._branches : null;
    }

    /// <summary>The cases of one stake that what is settled leaves.</summary>
    private sealed class Left(IReadOnlyList<ProspectCase> cases)
    {
        public IReadOnlyList<ProspectCase> Cases => cases;

        public IReadOnlyList<Standing> Standings => field ??= cases.Select(one => one.Standing).Distinct().Order().ToList();
    }

    /// <summary>Goes on with the stakes from one on; those before it hang on nothing shared any more.</summary>
    private bool From(int stake)
    {
        UnknownFact? next = null;
        while (stake < _left.Length && (next = Next(_left[stake])) is null)
            stake++;
        if (next is null)
        {
            _branches.Add(new Branch(_settled.ToList(), _left.Select(left => left.Standings).ToList()));
            return _branches.Count <= _limit;
        }

        if (!_touched.TryGetValue(next, out var touched))
            _touched[next] = touched = _links.Touched(next);
        var before = touched.Select(asked => (Stake: asked.Key, Left: _left[asked.Key], Linked: asked.Where(unknown => unknown != next).ToList())).ToList();
        var states = before.SelectMany(one => one.Left.Cases).Select(one => StateIn(one, next)).OfType<Support>().Distinct().Order()
            .Where(state => Settlement.IsConsistent(next, state, _settled)).ToList();
        foreach (var state in states)
        {
            _settled[next] = state;
            foreach (var (at, left, linked) in before)
                _left[at] = new Left(left.Cases.Where(one => (StateIn(one, next) ?? state) == state && linked.TrueForAll(unknown => StillFits(one, unknown))).ToList());
            var isWithin = From(stake);
            _settled.Remove(next);
            foreach (var (at, left, _) in before)
                _left[at] = left;
            if (!isWithin)
                return false;
        }

        return true;
    }

    /// <summary>True where what a case asks of an unknown is still possible beside everything that is settled.</summary>
    private bool StillFits(ProspectCase one, UnknownFact unknown) =>
        StateIn(one, unknown) is not { } state || _settled.ContainsKey(unknown) || Settlement.IsConsistent(unknown, state, _settled);

    private static Support? StateIn(ProspectCase one, UnknownFact asked)
    {
        foreach (var (unknown, state) in one.Settled)
        {
            if (unknown == asked)
                return state;
        }

        return null;
    }

    private UnknownFact? Next(Left left)
    {
        foreach (var one in left.Cases)
        {
            foreach (var (unknown, _) in one.Settled)
            {
                if (!_settled.ContainsKey(unknown) && _links.IsShared(unknown))
                    return unknown;
            }
        }

        return null;
    }
}
