namespace FeatureMatrix.Deciding.Planning;

/// <summary>A slot that a board may go into.</summary>
/// <param name="Number">The slot of its rig.</param>
/// <param name="IsDoubtful">True where the documents of both do not say that they agree.</param>
public readonly record struct PlanSlot(int Number, bool IsDoubtful);

/// <summary>A board that a plan may use.</summary>
/// <param name="Owned">How many are at hand; 0 where one would have to be bought.</param>
/// <param name="Price">What one costs where none is owned; null where no price is on record.</param>
/// <param name="Companion">Number of the card that has to sit in the same PC; null for none.</param>
/// <param name="Plug">The power plug it takes; empty for none, or where nobody knows.</param>
/// <param name="Slots">For each rig the slots that nothing on record rules out for it.</param>
public sealed record PlanCard(int Owned, decimal? Price, int? Companion, string Plug, IReadOnlyList<IReadOnlyList<PlanSlot>> Slots)
{
    /// <summary>How many rigs it can sit in at once.</summary>
    public int Copies => Math.Max(1, Owned);
}

/// <summary>A PC that boards go into.</summary>
/// <param name="Slots">Its slots; null where nobody counts them, so that every board has one.</param>
/// <param name="Plugs">Its free power plugs; null where nobody looked.</param>
public sealed record PlanRig(int? Slots, IReadOnlyList<string>? Plugs);

/// <summary>Something that can be installed: one driver on one system for one card.</summary>
/// <param name="Card">Number of the card.</param>
/// <param name="System">Number of the operating system.</param>
/// <param name="Rigs">The rigs that have the system.</param>
/// <param name="Covers">Numbers of the must-haves that it covers for certain.</param>
/// <param name="Worths">For each title weight × worth of its worst completion, in billionths.</param>
public sealed record PlanOption(int Card, int System, IReadOnlyList<int> Rigs, IReadOnlyList<int> Covers, IReadOnlyList<long> Worths);

/// <summary>What there is to plan with.</summary>
/// <param name="Cards">The boards.</param>
/// <param name="Rigs">The PCs.</param>
/// <param name="Options">What can be installed.</param>
/// <param name="MustHaves">How many must-haves there are.</param>
/// <param name="OneDriverPerSystem">True where a card in a rig has at most one driver under each system.</param>
public sealed record PlanProblem(
    IReadOnlyList<PlanCard> Cards, IReadOnlyList<PlanRig> Rigs, IReadOnlyList<PlanOption> Options, int MustHaves, bool OneDriverPerSystem);

/// <summary>What a plan has to keep to.</summary>
public sealed record PlanLimits
{
    /// <summary>The most that all boards to buy may cost together; null for no limit. Boards without a price are not bought under a limit.</summary>
    public decimal? Budget { get; init; }

    /// <summary>The most boards that may be bought; null for no limit.</summary>
    public int? MostBought { get; init; }

    /// <summary>The least score, in billionths.</summary>
    public long LeastScore { get; init; }

    /// <summary>Cards that may not be used.</summary>
    public IReadOnlySet<int> Without { get; init; } = new HashSet<int>();
}

/// <summary>What is wanted first; must-haves come before either.</summary>
public enum PlanGoal
{
    /// <summary>The fewest boards to buy, boards, rigs, installs and doubts; then the most score.</summary>
    Fewest,

    /// <summary>The most score; then the fewest of each.</summary>
    Most,
}

/// <summary>An install in a rig.</summary>
/// <param name="Option">Number of the option.</param>
/// <param name="Rig">Number of the rig.</param>
public readonly record struct PlanMove(int Option, int Rig);

/// <summary>A board in a rig.</summary>
/// <param name="Card">Number of the card.</param>
/// <param name="Rig">Number of the rig.</param>
/// <param name="Slot">The slot; null where the rig's slots are not counted.</param>
public readonly record struct PlanSeat(int Card, int Rig, int? Slot);
