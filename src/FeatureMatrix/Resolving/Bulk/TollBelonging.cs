using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>Whom what is open about a toll belongs to.</summary>
internal static class TollBelonging
{
    /// <summary>Whom one unknown belongs to.</summary>
    public static Hope Of(UnknownFact unknown) => unknown.Reach switch
    {
        UnknownReach.Card or UnknownReach.Chip => Hope.Own,
        UnknownReach.Title => Hope.Title,
        UnknownReach.Anywhere => Hope.Anywhere,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The marks of an open toll, and all to whom something open about it belongs.</summary>
    public static (BulkMarks Marks, Hope Whose) Of(IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs)
    {
        var (marks, whose) = (BulkMarks.None, Hope.None);
        var hanging = needs.Sum(OfTitle);
        if (hanging > 0)
            marks |= hanging == 1 ? BulkMarks.OfTitle : BulkMarks.OfTitle | BulkMarks.OfTitleSeveral;
        if (needs.Any(need => need.Applies is not null))
            marks |= BulkMarks.OfCard;
        foreach (var gate in gates)
        {
            Add(gate.Answer);
            Add(gate.Real);
        }

        foreach (var answer in needs.SelectMany(need => need.Answers))
            Add(answer);

        return (marks, hanging > 0 ? whose | Hope.Title : whose);

        void Add(Answer? answer)
        {
            if (answer is null)
                return;
            if (answer.Open is { } unknown)
            {
                whose |= Of(unknown);
                marks |= unknown.Reach switch
                {
                    UnknownReach.Anywhere => BulkMarks.Anywhere,
                    UnknownReach.Title => BulkMarks.OfTitle,
                    UnknownReach.Card => BulkMarks.OfCard,
                    _ => BulkMarks.None,
                };
            }

            if (answer.Facts.Concat(answer.Losing).Any(fact => fact.Scope.Card is not null))
                marks |= BulkMarks.OfCard;
        }
    }

    /// <summary>
    /// On how many things of the title a need may hang: whether the title runs without it or with it broken, and how grave a loss is that
    /// nobody graded (rules R4 and R5).
    /// </summary>
    private static int OfTitle(NeedTerm term)
    {
        var missing = term.Need.Strength switch { Strength.Ungraded => 1, Strength.Unknown => 2, _ => 0 };
        if (!term.Choices.Any(choice => choice.Answer.States.Contains(Support.Broken)))
            return missing;
        return missing + (term.Need.WhenBroken, term.Need.Strength) switch
        {
            (Strength.Ungraded, _) => 1,
            (Strength.Unknown, _) => 2,
            (null, Strength.Must or Strength.Bonus) => 1,
            (null, Strength.Unknown) => 2,
            _ => 0,
        };
    }
}
