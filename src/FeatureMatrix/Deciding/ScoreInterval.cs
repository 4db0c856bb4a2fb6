namespace FeatureMatrix.Deciding;

/// <summary>The lowest and the highest a score, or a difference of scores, can be over the completions of what nobody knows.</summary>
/// <param name="Low">Lower end; reached by some completion where the interval is exact.</param>
/// <param name="High">Upper end.</param>
public readonly record struct ScoreInterval(decimal Low, decimal High)
{
    /// <summary>True where nothing is open.</summary>
    public bool IsPoint => Low == High;

    /// <summary>High − low.</summary>
    public decimal Width => High - Low;

    /// <summary>Both ends added.</summary>
    public static ScoreInterval operator +(ScoreInterval one, ScoreInterval other) => new(one.Low + other.Low, one.High + other.High);

    /// <summary>The smallest interval that holds both.</summary>
    public ScoreInterval Hull(ScoreInterval other) => new(Math.Min(Low, other.Low), Math.Max(High, other.High));

    /// <summary>True where the other lies within this one.</summary>
    public bool Contains(ScoreInterval other) => Low <= other.Low && other.High <= High;
}
