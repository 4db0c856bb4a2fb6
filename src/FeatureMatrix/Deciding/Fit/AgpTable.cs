namespace FeatureMatrix.Deciding.Fit;

/// <summary>What the AGP specification says of one kind of board with one kind of card.</summary>
public enum AgpCell
{
    /// <summary>The key keeps the card out.</summary>
    Precluded,

    /// <summary>They run at 3.3 V.</summary>
    At33,

    /// <summary>They run at 1.5 V.</summary>
    At15,

    /// <summary>They run at 0.8 V.</summary>
    At08,

    /// <summary>Note 1: the card fits but does not work.</summary>
    Note1,

    /// <summary>Note 2: the card fits but must not operate.</summary>
    Note2,
}

/// <summary>
/// The interoperability of AGP boards and cards: AGP3.0 Interface Specification, revision 1.0, table 35, page 73; the kinds
/// are those of table 15, page 39 (boards) and table 16, page 40 (cards), told apart by the voltages they signal at. The
/// copy of table 35 that was read had lost its columns, so the place of a cell in its row is reconstructed.
/// </summary>
public static class AgpTable
{
    /// <summary>The kinds of board and of card, in the order of the table.</summary>
    public static IReadOnlyList<Signalling> Boards { get; } =
    [
        Signalling.V33,
        Signalling.V15,
        Signalling.V33 | Signalling.V15,
        Signalling.V15 | Signalling.V08,
        Signalling.V08,
        Signalling.V33 | Signalling.V15 | Signalling.V08,
    ];

    /// <inheritdoc cref="Boards"/>
    public static IReadOnlyList<Signalling> Cards { get; } =
    [
        Signalling.V33,
        Signalling.V15,
        Signalling.V33 | Signalling.V15,
        Signalling.V15 | Signalling.V08,
        Signalling.V08,
        Signalling.V33 | Signalling.V15 | Signalling.V08,
    ];

    private static readonly AgpCell[,] s_cells =
    {
        { AgpCell.At33, AgpCell.Precluded, AgpCell.At33, AgpCell.Precluded, AgpCell.Precluded, AgpCell.At33 },
        { AgpCell.Precluded, AgpCell.At15, AgpCell.At15, AgpCell.At15, AgpCell.Note1, AgpCell.At15 },
        { AgpCell.At33, AgpCell.At15, AgpCell.At15, AgpCell.At15, AgpCell.Note1, AgpCell.At15 },
        { AgpCell.Precluded, AgpCell.At15, AgpCell.At15, AgpCell.At08, AgpCell.At08, AgpCell.At08 },
        { AgpCell.Precluded, AgpCell.Note2, AgpCell.Note2, AgpCell.At08, AgpCell.At08, AgpCell.At08 },
        { AgpCell.At33, AgpCell.At15, AgpCell.At15, AgpCell.At08, AgpCell.At08, AgpCell.At08 },
    };

    /// <summary>The cell, or null where either signals at voltages of no kind in the specification.</summary>
    public static AgpCell? Cell(Signalling board, Signalling card)
    {
        var (row, column) = (IndexOf(Boards, board), IndexOf(Cards, card));
        return row < 0 || column < 0 ? null : s_cells[row, column];
    }

    /// <summary>
    /// Whether the answer follows from the documents of both without the table: each signals at one voltage, and it is the same.
    /// Which cells agree is then no question of columns: the specification's table 1 (page 11) gives each AGP generation its
    /// voltage, and two documents that name the same single one leave nothing to look up. Every other pair of kinds depends on
    /// which of several voltages they settle for, which only the reconstructed table says, so it stays <i>not known</i>.
    /// </summary>
    public static bool NeedsNoTable(Signalling board, Signalling card) =>
        board == card && board is (Signalling.V33 or Signalling.V15 or Signalling.V08);

    private static int IndexOf(IReadOnlyList<Signalling> kinds, Signalling kind)
    {
        for (var i = 0; i < kinds.Count; i++)
        {
            if (kinds[i] == kind)
                return i;
        }

        return -1;
    }
}
