namespace FeatureMatrix.Bench;

/// <summary>What a row of a comparison of two cards can say about the cards.</summary>
public enum RowMeaning
{
    /// <summary>What limits one of the two is not known there.</summary>
    NotKnown,

    /// <summary>The processor sets the pace with both cards: the row compares nothing.</summary>
    NotComparable,

    /// <summary>With one card the processor sets the pace or helps to: the cards differ by at least what the row shows.</summary>
    AtLeast,

    /// <summary>Both cards are at their limit.</summary>
    Comparable,
}

/// <summary>One mode at which two cards ran the same scene.</summary>
/// <param name="Pixels">Width times height.</param>
/// <param name="A">What sets the pace with the first card.</param>
/// <param name="B">And with the second.</param>
public sealed record CardRow(long Pixels, Bound A, Bound B)
{
    /// <summary>What the row can say.</summary>
    public RowMeaning Meaning => (A, B) switch
    {
        (Bound.NotKnown, _) or (_, Bound.NotKnown) => RowMeaning.NotKnown,
        (Bound.Processor, Bound.Processor) => RowMeaning.NotComparable,
        (Bound.Card, Bound.Card) => RowMeaning.Comparable,
        _ => RowMeaning.AtLeast,
    };

    /// <summary>The modes that both ladders hold, in order of pixels; both must be of one scene, its settings and one rig.</summary>
    public static IReadOnlyList<CardRow> Between(LadderFit a, LadderFit b) =>
    [
        .. a.Points.Join(b.Points, one => one.Pixels, other => other.Pixels,
            (one, other) => new CardRow(one.Pixels, one.Bound, other.Bound)),
    ];
}
