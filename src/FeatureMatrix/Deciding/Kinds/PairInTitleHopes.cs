using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>
/// Who wins between two cards whose sums overlap, title by title: what nobody knows of a title itself is settled alike for both cards, and
/// as each title shows the greatest difference.
/// </summary>
internal sealed class PairInTitleHopes
{
    private const Hope Any = Hope.Own | Hope.Anywhere;

    private readonly KindTable _kinds;
    private readonly WorthTable _worths;
    private readonly CardSums _first;
    private readonly CardSums _second;
    private readonly List<int> _open;
    private readonly decimal _certain;

    /// <summary>Prepares to tell two cards apart.</summary>
    public PairInTitleHopes(KindTable kinds, WorthTable worths, CardSums first, CardSums second)
    {
        (_kinds, _worths, _first, _second) = (kinds, worths, first, second);
        _open = Enumerable.Range(0, kinds.Groups.Count).Where(i => !kinds.Ends(first.Card, i).IsCertain || !kinds.Ends(second.Card, i).IsCertain).ToList();
        _certain = Enumerable.Range(0, kinds.Groups.Count).Except(_open).Sum(i => first.Worths[i].Low - second.Worths[i].Low);
    }

    /// <summary>Who wins; null where this does not tell either. Only for cards that cannot differ in must-haves.</summary>
    public Winner? Winner()
    {
        var bounds = new ScoreInterval(Sum(Hope.None, Any, isHighest: false, isBound: true), Sum(Any, Hope.None, isHighest: true, isBound: true));
        if (CardComparison.BySign(CardComparison.Rounded(bounds)) is [var only])
            return only;
        if (_first.Card.Chip == _second.Card.Chip)
            return null;
        var shared = (Hope[])[Hope.None, Hope.Anywhere];
        return shared.Any(hope => IsAhead(Sum(Hope.Own | hope, hope, isHighest: true, isBound: false)))
            && shared.Any(hope => IsAhead(-Sum(hope, Hope.Own | hope, isHighest: false, isBound: false))) ? Deciding.Winner.Undecided : null;

        static bool IsAhead(decimal lead) => decimal.Round(lead, 18) > 0;
    }

    /// <summary>
    /// The greatest or least sum of differences where each card's own unknowns, and what any title may ask about, are settled as stated. Titles
    /// of which ends alone are known count as a bound of it must take them, or as a completion that is at hand does at the least.
    /// </summary>
    private decimal Sum(Hope firstHope, Hope secondHope, bool isHighest, bool isBound)
    {
        var total = _certain;
        foreach (var i in _open)
        {
            if ((!isBound || _kinds.AreAllTitleHopes(i)) && _kinds.InTitleHopes(_first.Card, i, firstHope) is { } ones && _kinds.InTitleHopes(_second.Card, i, secondHope) is { } others)
                total += _kinds.Groups[i].Weight * Extreme(ones, others, isHighest);
            else
                total += isHighest == isBound ? _first.Worths[i].High - _second.Worths[i].Low : _first.Worths[i].Low - _second.Worths[i].High;
        }

        return total;
    }

    private decimal Extreme(Standing[] ones, Standing[] others, bool isHighest)
    {
        var extreme = _worths.Of(ones[0]) - _worths.Of(others[0]);
        for (var i = 1; i < ones.Length; i++)
        {
            var difference = _worths.Of(ones[i]) - _worths.Of(others[i]);
            extreme = isHighest ? Math.Max(extreme, difference) : Math.Min(extreme, difference);
        }

        return extreme;
    }
}
