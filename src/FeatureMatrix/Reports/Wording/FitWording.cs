using System.Globalization;
using FeatureMatrix.Deciding.Fit;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Whether a card may go into a PC, in words. What documents do not state is told to be checked, never guessed.</summary>
public static class FitWording
{
    /// <summary>The answer in a sentence.</summary>
    public static string Verdict(FitVerdict verdict) => verdict switch
    {
        FitVerdict.DocumentsAgree => "documents agree",
        FitVerdict.NotKnown => "not known: check both documents",
        FitVerdict.DoNotInsert => "do not insert",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What a finding is about.</summary>
    public static string Aspect(FitAspect aspect) => aspect switch
    {
        FitAspect.Slot => "Slot and signalling voltage",
        FitAspect.Clock => "Bus clock",
        FitAspect.Power => "Power plug",
        FitAspect.Outputs => "Monitor",
        FitAspect.Memory => "Main memory",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Why a finding is as it is.</summary>
    public static string Reason(FitReason reason) => reason switch
    {
        FitReason.SlotsDiffer r => $"the card is made for {Slot(r.Card)}, the slot is {Slot(r.Rig)}",
        FitReason.NoRules => "there are no rules here for this kind of slot, or the card's connector is not recorded",
        FitReason.KeyForbids r => $"the slot's key stands for {Volts(r.Key)}, the card's edge has notches for {Volts(r.Notches)}",
        FitReason.VoltageUndocumented r => $"no document recorded states the signalling voltage of {Whose(r.OfCard, r.OfRig)}",
        FitReason.NoCommonVoltage r => $"the card's documents state {Volts(r.Card)}, the board's {Volts(r.Rig)}: none in common",
        FitReason.Agp30CardOnOlderBoard => "a card of AGP 3.0 alone goes into this slot and does not work there (AGP 3.0 specification, note 1 to the table of cards and boards)",
        FitReason.OlderCardOnAgp30Board => "a card of AGP 2.0 goes into this slot and must not be operated there (AGP 3.0 specification, note 2 to the table of cards and boards)",
        FitReason.BothNotchesOnEarlyCard =>
            "the card has both notches but was designed before AGP 2.0: such cards signal at 3.3 V alone and go into 1.5 V slots all the same",
        FitReason.NotchesContradictDocuments r => $"the notches stand for {Volts(r.Notches)}, the card's documents state {Volts(r.Documented)}",
        FitReason.KeyContradictsDocuments r => $"the slot's key stands for {Volts(r.Key)}, the board's documents state {Volts(r.Documented)}",
        FitReason.NoSuchKind r => $"the specification knows no such pair: card {Volts(r.Card)}, board {Volts(r.Rig)}",
        FitReason.TableReconstructed r => $"the specification's table decides, and the copy read here had lost its columns; it is believed to give {Volts(r.Believed)}",
        FitReason.VoltageAgrees r => $"the documents of both state {Volts(r.Common)}",
        FitReason.ClockUndocumented r => $"no document recorded states the bus clock of {Whose(r.OfCard, r.OfRig)}",
        FitReason.ClockTooHigh r => $"the bus runs at {Number(r.Rig)} MHz, the card's documents allow {Number(r.Card)} MHz",
        FitReason.ClockAgrees r => $"the bus runs at {Number(r.Rig)} MHz, the card's documents allow {Number(r.Card)} MHz",
        FitReason.PowerUndocumented r => r.OfCard ? "no document recorded says whether the card needs a power plug" : "nobody recorded which power plugs are free",
        FitReason.PowerMissing r => $"the card needs the plug {r.Plug}, and none is free",
        FitReason.PowerAgrees { Plug.Length: 0 } => "the card needs no power plug",
        FitReason.PowerAgrees r => $"the plug {r.Plug} is free",
        FitReason.OutputsUndocumented r => r.OfCard ? "the card's outputs are not recorded" : "the monitor's inputs are not recorded",
        FitReason.SignalUndocumented r => $"{Connector(r.Output)} may reach {Connector(r.Input)}, if both carry the same kind of signal, which no document recorded states",
        FitReason.NoCommonOutput => "no output of the card carries a signal that the monitor takes",
        FitReason.OutputAgrees r when r.Output == r.Input => $"the card's {Connector(r.Output)} output goes with the monitor's input",
        FitReason.OutputAgrees r => $"the card's {Connector(r.Output)} output goes with the monitor's {Connector(r.Input)} input through an adapter",
        FitReason.MemoryUndocumented r => $"{r.Os}: the PC's memory or the system's limit is not documented",
        FitReason.MemoryAboveLimit r => $"{r.Os}: {Number(r.Installed)} MiB is more than the {Number(r.Limit)} MiB it is documented to bear; its documents may name a setting",
        FitReason.MemoryAgrees r => $"{r.Os}: {Number(r.Installed)} MiB, documented to bear {Number(r.Limit)} MiB",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A caution, which defers to documents and to people who know.</summary>
    public static string Caution(FitCaution caution) => caution switch
    {
        FitCaution.Mains => "Unplug the PC from the mains before it is opened, and leave the power supply closed: what is in it is for a qualified technician.",
        FitCaution.Capacitors => "Capacitors keep their charge after unplugging, and old ones leak or fail; have a damaged board looked at by a qualified technician before it gets power.",
        FitCaution.Static => "Static electricity destroys boards without a trace: follow the board's own instructions on handling.",
        FitCaution.PictureTube =>
            "A picture tube holds a dangerous voltage long after it is switched off: never open the monitor. A mode or refresh rate beyond its documents can damage an old one.",
        FitCaution.ForcedDriver => ExplanationBuilder.ForcedCaution,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The speed in force.</summary>
    public static string Bus(BusInForce bus)
    {
        ArgumentNullException.ThrowIfNull(bus);
        var mode = bus.Mode is { } times ? $" {Number(times)}x" : "";
        return $"By the documents the bus would run as {Slot(bus.Slot)}{mode} at {Volts(bus.Voltage)}: "
            + $"{bus.Megahertz.ToString("0.##", CultureInfo.InvariantCulture)} MHz, at most {bus.MegabytesPerSecond.ToString("0", CultureInfo.InvariantCulture)} MB/s";
    }

    private static string Whose(bool ofCard, bool ofRig) => (ofCard, ofRig) switch
    {
        (true, true) => "card and board",
        (true, false) => "the card",
        _ => "the board",
    };

    private static string Slot(SlotKind slot) => slot switch
    {
        SlotKind.Other => "another kind",
        SlotKind.Isa => "ISA",
        SlotKind.VesaLocal => "VESA local bus",
        SlotKind.Pci => "PCI",
        SlotKind.Agp => "AGP",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Volts(Signalling set)
    {
        (Signalling Flag, string Name)[] all = [(Signalling.V08, "0.8 V"), (Signalling.V15, "1.5 V"), (Signalling.V33, "3.3 V"), (Signalling.V50, "5 V")];
        return set == Signalling.None ? "no voltage" : Names.List([.. all.Where(one => set.HasFlag(one.Flag)).Select(one => one.Name)]);
    }

    private static string Connector(VideoConnector connector) => connector switch
    {
        VideoConnector.Other => "another connector",
        VideoConnector.Vga => "VGA",
        VideoConnector.Dvi => "DVI",
        VideoConnector.DviA => "DVI-A",
        VideoConnector.DviD => "DVI-D",
        VideoConnector.DviI => "DVI-I",
        VideoConnector.SVideo => "S-Video",
        VideoConnector.Composite => "composite video",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
