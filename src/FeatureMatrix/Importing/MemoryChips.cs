namespace FeatureMatrix.Importing;

/// <summary>
/// What photos and readings say of the memory chips on a board. A null was not seen. All chips are taken to be alike, as
/// they are where one pool of memory is shared.
/// </summary>
public sealed record MemoryChipReading
{
    /// <summary>Chips on the front.</summary>
    public int? Front { get; init; }

    /// <summary>Chips on the back; none is 0.</summary>
    public int? Back { get; init; }

    /// <summary>Data width of one chip in bits, from the data sheet of its marking: 4, 8, 16 or 32.</summary>
    public int? WidthBits { get; init; }

    /// <summary>Density of one chip in Mbit (2^20 bits), from the data sheet of its marking.</summary>
    public int? Megabits { get; init; }

    /// <summary>Banks: how many chips share each data line. 1 where every chip has lines of its own.</summary>
    public int? Banks { get; init; }

    /// <summary>Memory in KiB where a document, sticker or start-up screen tells it.</summary>
    public int? Kibibytes { get; init; }

    /// <summary>Bus width in bits where a document tells it.</summary>
    public int? BusBits { get; init; }
}

/// <summary>One memory layout that a reading admits.</summary>
/// <param name="Chips">Chips on both sides.</param>
/// <param name="WidthBits">Data width of one chip.</param>
/// <param name="Megabits">Density of one chip in Mbit.</param>
/// <param name="Banks">Chips that share each data line.</param>
public sealed record MemoryLayout(int Chips, int WidthBits, int Megabits, int Banks)
{
    /// <summary>Width of the memory bus in bits: the widths of the chips of one bank, side by side.</summary>
    public int BusBits => Chips / Banks * WidthBits;

    /// <summary>Memory in KiB: 1 Mbit is 128 KiB.</summary>
    public int Kibibytes => Chips * Megabits * 128;

    /// <summary>What a buyer wants to know of it.</summary>
    public MemoryOutcome Outcome => new(BusBits, Kibibytes);
}

/// <summary>Bus width in bits and memory in KiB.</summary>
public sealed record MemoryOutcome(int BusBits, int Kibibytes);

/// <summary>A further look that would narrow the candidates.</summary>
public enum MemoryLook
{
    /// <summary>A photo of the front that shows every chip.</summary>
    PhotoOfFront,

    /// <summary>A photo of the back.</summary>
    PhotoOfBack,

    /// <summary>A sharp photo of one chip's marking, to look up in its data sheet: width and density at once.</summary>
    PhotoOfMarking,

    /// <summary>A document or start-up screen that tells the memory.</summary>
    ReadingOfMemory,

    /// <summary>A document that tells the bus width, or a look at whether chips share data lines.</summary>
    ReadingOfBusWidth,
}

/// <summary>How far one further look narrows the candidates.</summary>
/// <param name="Look">The look.</param>
/// <param name="WorstRemaining">Outcomes that remain in the worst case; 1 settles the question.</param>
public sealed record MemoryLookValue(MemoryLook Look, int WorstRemaining);

/// <summary>What a reading leaves possible.</summary>
/// <param name="Layouts">All layouts that agree with the reading, ordered by chips, width, density and banks; empty where it contradicts itself.</param>
/// <param name="Outcomes">What they come to, by memory, then bus width. One outcome is an answer.</param>
/// <param name="Looks">The further looks that narrow them, the best first; empty where nothing is left to settle.</param>
public sealed record MemoryCandidates(
    IReadOnlyList<MemoryLayout> Layouts, IReadOnlyList<MemoryOutcome> Outcomes, IReadOnlyList<MemoryLookValue> Looks);

/// <summary>Works out memory and bus width from what is visible: chips × width gives the bus, chips × density the memory.</summary>
public static class MemoryChips
{
    // What boards of about 1995 to 2006 carry; editorial bounds that keep an unread photo from admitting everything.
    private static readonly int[] s_onFront = [1, 2, 4, 8];
    private static readonly int[] s_widths = [4, 8, 16, 32];
    private static readonly int[] s_megabits = [1, 2, 4, 8, 16, 32, 64, 128, 256, 512];
    private static readonly int[] s_banks = [1, 2];

    private const int NarrowestBus = 8;
    private const int WidestBus = 512;
    private const int LeastKibibytes = 256;
    private const int MostKibibytes = 1024 * 1024;

    /// <summary>The candidates, and which further look narrows them most.</summary>
    public static MemoryCandidates Candidates(MemoryChipReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var placed = Placed(reading).ToList();
        var outcomes = Outcomes(placed);
        return new MemoryCandidates(
            [.. placed.Select(p => p.Layout).Distinct()
                .OrderBy(l => l.Chips).ThenBy(l => l.WidthBits).ThenBy(l => l.Megabits).ThenBy(l => l.Banks)],
            [.. outcomes.OrderBy(o => o.Kibibytes).ThenBy(o => o.BusBits)],
            outcomes.Count < 2 ? [] : [.. Looks(placed, outcomes.Count)]);
    }

    private static IEnumerable<PlacedLayout> Placed(MemoryChipReading reading) =>
        from front in Known(reading.Front) ?? s_onFront
        from back in Known(reading.Back) ?? [0, front]
        from width in Known(reading.WidthBits) ?? s_widths
        from megabits in Known(reading.Megabits) ?? s_megabits
        from banks in Known(reading.Banks) ?? s_banks
        where front >= 0 && back >= 0 && front + back is > 0 and <= 64 && banks > 0 && (front + back) % banks == 0
        where width is > 0 and <= 64 && megabits is > 0 and <= 1024
        let layout = new MemoryLayout(front + back, width, megabits, banks)
        where layout.BusBits is >= NarrowestBus and <= WidestBus && layout.Kibibytes is >= LeastKibibytes and <= MostKibibytes
        where (reading.Kibibytes ?? layout.Kibibytes) == layout.Kibibytes && (reading.BusBits ?? layout.BusBits) == layout.BusBits
        select new PlacedLayout(front, back, layout);

    private static int[]? Known(int? value) => value is { } known ? [known] : null;

    private static IEnumerable<MemoryLookValue> Looks(List<PlacedLayout> placed, int outcomes) =>
        from look in Enum.GetValues<MemoryLook>()
        let worst = placed.GroupBy(p => Seen(look, p)).Max(g => Outcomes(g).Count)
        where worst < outcomes
        orderby worst, look
        select new MemoryLookValue(look, worst);

    /// <summary>What a look would show if this layout were the true one.</summary>
    private static (int, int) Seen(MemoryLook look, PlacedLayout placed) => look switch
    {
        MemoryLook.PhotoOfFront => (placed.Front, 0),
        MemoryLook.PhotoOfBack => (placed.Back, 0),
        MemoryLook.PhotoOfMarking => (placed.Layout.WidthBits, placed.Layout.Megabits),
        MemoryLook.ReadingOfMemory => (placed.Layout.Kibibytes, 0),
        MemoryLook.ReadingOfBusWidth => (placed.Layout.BusBits, 0),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static HashSet<MemoryOutcome> Outcomes(IEnumerable<PlacedLayout> placed) => [.. placed.Select(p => p.Layout.Outcome)];

    private sealed record PlacedLayout(int Front, int Back, MemoryLayout Layout);
}
