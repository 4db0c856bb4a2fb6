namespace FeatureMatrix.Deciding.Planning;

/// <summary>What a plan comes to.</summary>
/// <param name="Missed">Must-haves that it does not cover for certain.</param>
/// <param name="Bought">Boards to buy.</param>
/// <param name="Cards">Boards in rigs.</param>
/// <param name="Rigs">Rigs in use.</param>
/// <param name="Installs">Drivers installed.</param>
/// <param name="Doubts">Boards in slots where the documents do not say that they agree.</param>
/// <param name="Score">Over all titles the best that one of its installs guarantees, in billionths.</param>
/// <param name="Unpriced">Boards to buy that have no price on record.</param>
/// <param name="Price">What the others cost together.</param>
public readonly record struct PlanValue(int Missed, int Bought, int Cards, int Rigs, int Installs, int Doubts, long Score, int Unpriced, decimal Price)
{
    /// <summary>Billionths in one unit of score.</summary>
    public const long Unit = 1_000_000_000;

    /// <summary>The score as a number.</summary>
    public decimal ScoreNumber => (decimal)Score / Unit;

    /// <summary>Negative where this is the better plan for the goal.</summary>
    public int Against(PlanValue other, PlanGoal goal)
    {
        if (Missed != other.Missed)
            return Missed.CompareTo(other.Missed);
        var score = other.Score.CompareTo(Score);
        if (goal == PlanGoal.Most && score != 0)
            return score;
        var counts = (Bought, Cards, Rigs, Installs, Doubts).CompareTo((other.Bought, other.Cards, other.Rigs, other.Installs, other.Doubts));
        if (counts != 0)
            return counts;
        return score != 0 ? score : (Unpriced, Price).CompareTo((other.Unpriced, other.Price));
    }
}

/// <summary>A plan, and how sure it is that none is better.</summary>
/// <param name="Moves">What to install where.</param>
/// <param name="Seats">Which board sits where.</param>
/// <param name="Value">What it comes to.</param>
/// <param name="Missed">Numbers of the must-haves that it does not cover for certain.</param>
/// <param name="IsProved">True where the search ended: no plan within the limits is better.</param>
/// <param name="Bound">No plan is better than this; proved before the search began. Perhaps none reaches it.</param>
public sealed record Plan(
    IReadOnlyList<PlanMove> Moves, IReadOnlyList<PlanSeat> Seats, PlanValue Value, IReadOnlyList<int> Missed, bool IsProved, PlanValue Bound);
