namespace FeatureMatrix.Deciding.Planning;

/// <summary>Which boards sit in which rig. Immutable: each further board makes another.</summary>
internal sealed class Seating
{
    private readonly PlanProblem _problem;
    private readonly PlanLimits _limits;

    private Seating(PlanProblem problem, PlanLimits limits, IReadOnlyList<(int Card, int Rig)> seats, int bought, int unpriced, decimal price)
    {
        (_problem, _limits, Seats, Bought, Unpriced, Price) = (problem, limits, seats, bought, unpriced, price);
    }

    /// <summary>The boards, in the order in which they were seated.</summary>
    public IReadOnlyList<(int Card, int Rig)> Seats { get; }

    /// <summary>Boards to buy.</summary>
    public int Bought { get; }

    /// <summary>Boards to buy that have no price.</summary>
    public int Unpriced { get; }

    /// <summary>What the others cost.</summary>
    public decimal Price { get; }

    /// <summary>Rigs in use.</summary>
    public int Rigs => Seats.Select(seat => seat.Rig).Distinct().Count();

    /// <summary>Boards in slots where the documents do not say that they agree.</summary>
    public int Doubts => Seats.Select(seat => seat.Rig).Distinct().Sum(rig => Slots(Seats, rig)!.Doubts);

    /// <summary>Slots that no board takes; null where some rig's are not counted.</summary>
    public int? FreeSlots => _problem.Rigs.Any(rig => rig.Slots is null) ? null : _problem.Rigs.Sum(rig => rig.Slots!.Value) - Seats.Count;

    /// <summary>Nothing seated yet.</summary>
    public static Seating Empty(PlanProblem problem, PlanLimits limits) => new(problem, limits, [], 0, 0, 0);

    /// <summary>True where the board sits in the rig.</summary>
    public bool Has(int card, int rig) => Seats.Contains((card, rig));

    /// <summary>True where the board can be had without buying it.</summary>
    public bool IsAtHand(int card) => _problem.Cards[card].Owned > 0 || Seats.Any(seat => seat.Card == card);

    /// <summary>With one more board, and the companion it needs; null where slots, plugs, copies or budget forbid it.</summary>
    public Seating? With(int card, int rig)
    {
        if (Has(card, rig))
            return this;
        var seats = Seats.ToList();
        var (bought, unpriced, price) = (Bought, Unpriced, Price);
        for (int? next = card; next is { } one && !seats.Contains((one, rig)); next = _problem.Cards[one].Companion)
        {
            var board = _problem.Cards[one];
            if (_limits.Without.Contains(one) || seats.Count(seat => seat.Card == one) == board.Copies)
                return null;
            seats.Add((one, rig));
            if (board.Owned > 0)
                continue;
            bought++;
            price += board.Price ?? 0;
            unpriced += board.Price is null ? 1 : 0;
            if (bought > _limits.MostBought || (_limits.Budget is { } budget && (board.Price is null || price > budget)))
                return null;
        }

        return Slots(seats, rig) is null || !HasPlugs(seats, rig) ? null : new Seating(_problem, _limits, seats, bought, unpriced, price);
    }

    /// <summary>Every board with its slot.</summary>
    public IReadOnlyList<PlanSeat> Seated() => Seats.Select(seat => seat.Rig).Distinct().Order().SelectMany(rig =>
    {
        var slots = Slots(Seats, rig)!;
        return Seats.Where(seat => seat.Rig == rig).Select((seat, i) => new PlanSeat(seat.Card, rig, _problem.Rigs[rig].Slots is null ? null : slots.Slots[i]));
    }).ToList();

    private SlotMatching? Slots(IReadOnlyList<(int Card, int Rig)> seats, int rig)
    {
        var boards = seats.Where(seat => seat.Rig == rig).Select(seat => _problem.Cards[seat.Card].Slots[rig]).ToList();
        return _problem.Rigs[rig].Slots is { } count ? SlotMatching.Of(boards, count) : new SlotMatching([], 0);
    }

    private bool HasPlugs(List<(int Card, int Rig)> seats, int rig) => _problem.Rigs[rig].Plugs is not { } plugs
        || seats.Where(seat => seat.Rig == rig).Select(seat => _problem.Cards[seat.Card].Plug).Where(plug => plug.Length > 0).GroupBy(plug => plug)
            .All(needed => needed.Count() <= plugs.Count(plug => plug == needed.Key));
}
