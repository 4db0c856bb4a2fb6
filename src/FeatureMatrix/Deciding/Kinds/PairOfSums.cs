using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Deciding.Kinds;

/// <summary>
/// Who wins between two cards, from their sums alone: for certain where no completion can say otherwise, undecided where two completions are
/// at hand that say different things.
/// </summary>
internal sealed class PairOfSums
{
    /// <summary>
    /// Completions of everything for two cards with different chips: what belongs to each is settled as wished, and what both may ask about
    /// is missing throughout or at its most hopeful throughout.
    /// </summary>
    private static readonly (Hope First, Hope Second)[] Apart = [(Hope.Own, Hope.None), (Hope.All, Hope.Others), (Hope.None, Hope.Own), (Hope.Others, Hope.All)];

    /// <summary>The same for any two cards.</summary>
    private static readonly (Hope First, Hope Second)[] Alike = [(Hope.All, Hope.All), (Hope.None, Hope.None)];

    private readonly KindTable _kinds;
    private readonly CardSums _first;
    private readonly CardSums _second;
    private readonly Lead[]? _firstLeads;
    private readonly Lead[]? _secondLeads;

    private PairOfSums(KindTable kinds, CardSums first, CardSums second)
    {
        (_kinds, _first, _second) = (kinds, first, second);
        (_firstLeads, _secondLeads) = (kinds.LeadOf(first.Card, second.Card), kinds.LeadOf(second.Card, first.Card));
    }

    private bool IsOneChip => _first.Card.Chip == _second.Card.Chip;

    /// <summary>Who wins; null where sums do not tell.</summary>
    public static Winner? WinnerOf(KindTable kinds, WorthTable worths, CardSums first, CardSums second)
    {
        var pair = new PairOfSums(kinds, first, second);
        var possible = pair.Possible();
        if (possible.Count == 1)
            return possible.Single();
        var seen = (pair.IsOneChip ? Alike : [.. Alike, .. Apart])
            .Select(hopes => WinnerIn(first.In(hopes.First), second.In(hopes.Second))).OfType<Winner>().Distinct().Count();
        if (seen > 1)
            return Winner.Undecided;
        var alikeInMustHaves = (!first.MayMiss && !second.MayMiss) || (!first.MayCover && !second.MayCover);
        return alikeInMustHaves ? new PairInTitleHopes(kinds, worths, first, second).Winner() : null;
    }

    /// <summary>Every winner that the bounds leave possible.</summary>
    private HashSet<Winner> Possible()
    {
        if (Leads(_firstLeads))
            return [Winner.First];
        if (Leads(_secondLeads))
            return [Winner.Second];
        var possible = new HashSet<Winner>();
        if (_first.MayMiss && _second.MayCover && !CoversWhatTheOtherCovers(_firstLeads))
            possible.Add(Winner.Second);
        if (_second.MayMiss && _first.MayCover && !CoversWhatTheOtherCovers(_secondLeads))
            possible.Add(Winner.First);
        if ((_first.MayMiss && _second.MayMiss) || (_first.MayCover && _second.MayCover))
            possible.UnionWith(CardComparison.BySign(CardComparison.Rounded(Difference())));
        return possible;
    }

    /// <summary>True where a card is never worse on any title, and always better on one that counts.</summary>
    private bool Leads(Lead[]? leads) => leads is not null && Array.TrueForAll(leads, lead => lead != Lead.NotKnown)
        && _kinds.Groups.Zip(leads).Any(pair => pair.First.Weight > 0 && pair.Second == Lead.Always);

    private bool CoversWhatTheOtherCovers(Lead[]? leads) =>
        leads is not null && _kinds.Groups.Zip(leads).All(pair => !pair.First.Entry.IsMustHave || pair.Second != Lead.NotKnown);

    private ScoreInterval Difference()
    {
        if (_firstLeads is null || _secondLeads is null)
            return new ScoreInterval(_first.Score.Low - _second.Score.High, _first.Score.High - _second.Score.Low);
        var (low, high) = (0m, 0m);
        for (var i = 0; i < _first.Worths.Count; i++)
        {
            var (one, other) = (_first.Worths[i], _second.Worths[i]);
            low += _firstLeads[i] == Lead.NotKnown ? one.Low - other.High : Math.Max(0, one.Low - other.High);
            high += _secondLeads[i] == Lead.NotKnown ? one.High - other.Low : Math.Min(0, one.High - other.Low);
        }

        return new ScoreInterval(low, high);
    }

    /// <summary>Who wins in one completion; null where its ends do not tell.</summary>
    private static Winner? WinnerIn(CardState first, CardState second)
    {
        if (first.Misses is not { } firstMisses || second.Misses is not { } secondMisses)
            return null;
        if (firstMisses != secondMisses)
            return firstMisses ? Winner.Second : Winner.First;
        var difference = CardComparison.Rounded(new ScoreInterval(first.Score.Low - second.Score.High, first.Score.High - second.Score.Low));
        return CardComparison.BySign(difference) is [var only] ? only : null;
    }
}
