namespace FeatureMatrix.Deciding.Fit;

/// <summary>
/// Whether a card may go into a PC, as far as paper tells; nothing here calls a combination harmless. Numbered so that the
/// greatest is the worst and nothing said is <see cref="NotKnown"/>.
/// </summary>
public enum FitVerdict
{
    /// <summary>The documents of both state what is needed, and it agrees.</summary>
    DocumentsAgree = -1,

    /// <summary>Something is stated nowhere, or not reliably: check both documents.</summary>
    NotKnown = 0,

    /// <summary>The documents, or the key, rule it out.</summary>
    DoNotInsert = 1,
}

/// <summary>What a finding is about.</summary>
public enum FitAspect
{
    /// <summary>Kind of slot, key and signalling voltage.</summary>
    Slot,

    /// <summary>The bus clock, where a card can be driven too fast.</summary>
    Clock,

    /// <summary>The power plug.</summary>
    Power,

    /// <summary>Outputs against the monitor's inputs.</summary>
    Outputs,

    /// <summary>Main memory against the operating systems' limits.</summary>
    Memory,
}

/// <summary>Why a finding is as it is.</summary>
public abstract record FitReason
{
    private FitReason()
    {
    }

    /// <summary>The card is made for another kind of slot.</summary>
    public sealed record SlotsDiffer(SlotKind Card, SlotKind Rig) : FitReason;

    /// <summary>There are no rules for this kind of slot.</summary>
    public sealed record NoRules : FitReason;

    /// <summary>The slot's key meets no notch in the card's edge.</summary>
    public sealed record KeyForbids(Signalling Key, Signalling Notches) : FitReason;

    /// <summary>No document states the signalling voltage.</summary>
    public sealed record VoltageUndocumented(bool OfCard, bool OfRig) : FitReason;

    /// <summary>The documented voltages have none in common.</summary>
    public sealed record NoCommonVoltage(Signalling Card, Signalling Rig) : FitReason;

    /// <summary>An AGP 3.0 card fits a 1.5 V or universal board of AGP 2.0 and does not work there (note 1 of the table).</summary>
    public sealed record Agp30CardOnOlderBoard : FitReason;

    /// <summary>A card of AGP 2.0 fits an AGP 3.0 board and must not be operated there (note 2 of the table).</summary>
    public sealed record OlderCardOnAgp30Board : FitReason;

    /// <summary>
    /// Both notches on a card designed before AGP 2.0: such cards were made for 3.3 V alone and fit 1.5 V boards all the same.
    /// </summary>
    public sealed record BothNotchesOnEarlyCard : FitReason;

    /// <summary>The notches do not belong to the documented voltages.</summary>
    public sealed record NotchesContradictDocuments(Signalling Notches, Signalling Documented) : FitReason;

    /// <summary>The slot's key does not belong to its documented voltages.</summary>
    public sealed record KeyContradictsDocuments(Signalling Key, Signalling Documented) : FitReason;

    /// <summary>The documented voltages are those of no kind of board or card in the specification.</summary>
    public sealed record NoSuchKind(Signalling Card, Signalling Rig) : FitReason;

    /// <summary>The specification's table decides, and the copy that was read had lost its columns.</summary>
    /// <param name="Believed">The voltage that the table is believed to give.</param>
    public sealed record TableReconstructed(Signalling Believed) : FitReason;

    /// <summary>The documents of both state this voltage.</summary>
    public sealed record VoltageAgrees(Signalling Common) : FitReason;

    /// <summary>A clock is stated by no document.</summary>
    public sealed record ClockUndocumented(bool OfCard, bool OfRig) : FitReason;

    /// <summary>The bus runs faster than the card's documents allow, MHz.</summary>
    public sealed record ClockTooHigh(int Card, int Rig) : FitReason;

    /// <summary>The bus runs no faster than the card's documents allow, MHz.</summary>
    public sealed record ClockAgrees(int Card, int Rig) : FitReason;

    /// <summary>No document says whether the card needs a power plug, or nobody looked for free ones.</summary>
    public sealed record PowerUndocumented(bool OfCard, bool OfRig) : FitReason;

    /// <summary>The plug the card needs is not free.</summary>
    public sealed record PowerMissing(string Plug) : FitReason;

    /// <summary>The plug is there, or none is needed (empty).</summary>
    public sealed record PowerAgrees(string Plug) : FitReason;

    /// <summary>Outputs or inputs are stated by no document.</summary>
    public sealed record OutputsUndocumented(bool OfCard, bool OfRig) : FitReason;

    /// <summary>This output may reach this input, if they carry the same kind of signal, which no document states.</summary>
    public sealed record SignalUndocumented(VideoConnector Output, VideoConnector Input) : FitReason;

    /// <summary>No output carries a signal that an input of the monitor takes.</summary>
    public sealed record NoCommonOutput : FitReason;

    /// <summary>This output reaches this input; where they differ, through an adapter for the signal both carry.</summary>
    public sealed record OutputAgrees(VideoConnector Output, VideoConnector Input) : FitReason;

    /// <summary>The PC's memory or the system's limit is not documented.</summary>
    public sealed record MemoryUndocumented(string Os) : FitReason;

    /// <summary>More memory than the system is documented to bear, MiB; a setting may cure it, so its documents decide.</summary>
    public sealed record MemoryAboveLimit(string Os, long Installed, long Limit) : FitReason;

    /// <summary>No more memory than the system is documented to bear, MiB.</summary>
    public sealed record MemoryAgrees(string Os, long Installed, long Limit) : FitReason;
}

/// <summary>What to be careful about in any case. The words belong to the reports, which defer to qualified people.</summary>
public enum FitCaution
{
    /// <summary>Mains voltage in the PC's power supply; unplug first.</summary>
    Mains,

    /// <summary>Capacitors keep their charge, and old ones leak or fail.</summary>
    Capacitors,

    /// <summary>Static electricity destroys boards unseen.</summary>
    Static,

    /// <summary>A picture tube keeps a dangerous voltage, and a mode beyond its limits can damage an old monitor.</summary>
    PictureTube,

    /// <summary>A forced driver can leave a system that does not start.</summary>
    ForcedDriver,
}

/// <summary>One finding.</summary>
public sealed record FitFinding(FitAspect Aspect, FitVerdict Verdict, FitReason Reason);

/// <summary>The speed the bus would run at.</summary>
/// <param name="Slot">The bus.</param>
/// <param name="Voltage">The signalling voltage.</param>
/// <param name="Mode">AGP transfer mode; null on other buses.</param>
/// <param name="Megahertz">The bus clock.</param>
/// <param name="MegabytesPerSecond">Peak transfer, 10^6 bytes a second, one transfer a clock (ISA does about half in practice).</param>
public sealed record BusInForce(SlotKind Slot, Signalling Voltage, int? Mode, double Megahertz, double MegabytesPerSecond);

/// <summary>The answer to "may this card go into this slot".</summary>
/// <param name="Findings">One or more for each aspect, in the order of <see cref="FitAspect"/>.</param>
/// <param name="Bus">The speed in force; null where a document is missing for it or the card may not go in.</param>
/// <param name="Cautions">What to be careful about, whatever the verdict.</param>
public sealed record FitAnswer(IReadOnlyList<FitFinding> Findings, BusInForce? Bus, IReadOnlyList<FitCaution> Cautions)
{
    /// <summary>The worst of the findings.</summary>
    public FitVerdict Verdict => Findings.Max(f => f.Verdict);
}
