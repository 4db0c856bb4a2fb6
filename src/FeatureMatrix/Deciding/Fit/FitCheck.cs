using static FeatureMatrix.Deciding.Fit.FitReason;

namespace FeatureMatrix.Deciding.Fit;

/// <summary>Compares what a card's documents and a PC's documents say.</summary>
public static class FitCheck
{
    /// <summary>
    /// The answer for one card in one slot. It is as bad as its worst finding, so that one undocumented aspect is enough for
    /// "not known". Cautions apply whatever it is.
    /// </summary>
    public static FitAnswer Compare(CardDocuments card, RigDocuments rig)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(rig);
        List<FitFinding> findings = [SlotFit.Of(card, rig.Slot)];
        if (card.Slot == SlotKind.VesaLocal && rig.Slot.Slot == SlotKind.VesaLocal)
            findings.Add(Clock(card.HighestClock, rig.Slot.Clock));
        findings.Add(Power(card.PowerPlug, rig.PowerPlugs));
        findings.Add(Outputs(card.Outputs, rig.MonitorInputs));
        findings.AddRange(rig.Oses.Select(os => Memory(os, rig.MemoryMebibytes)));

        var voltage = findings[0].Reason is VoltageAgrees agreed ? agreed.Common : Signalling.None;
        var bus = findings[0].Verdict == FitVerdict.DocumentsAgree ? BusSpeed.Of(card, rig.Slot, voltage) : null;
        return new FitAnswer(findings, bus, [.. Cautions(rig)]);
    }

    /// <summary>On the VESA local bus the processor's clock is the bus clock, whatever the card can take.</summary>
    private static FitFinding Clock(int? card, int? rig) => (card, rig) switch
    {
        ({ } highest, { } clock) when clock > highest =>
            new FitFinding(FitAspect.Clock, FitVerdict.DoNotInsert, new ClockTooHigh(highest, clock)),
        ({ } highest, { } clock) => new FitFinding(FitAspect.Clock, FitVerdict.DocumentsAgree, new ClockAgrees(highest, clock)),
        _ => new FitFinding(FitAspect.Clock, FitVerdict.NotKnown, new ClockUndocumented(card is null, rig is null)),
    };

    private static FitFinding Power(string? needed, IReadOnlyList<string>? free) => (needed, free) switch
    {
        ("", _) => new FitFinding(FitAspect.Power, FitVerdict.DocumentsAgree, new PowerAgrees("")),
        ({ } plug, { } plugs) when plugs.Contains(plug, StringComparer.Ordinal) =>
            new FitFinding(FitAspect.Power, FitVerdict.DocumentsAgree, new PowerAgrees(plug)),
        ({ } plug, { }) => new FitFinding(FitAspect.Power, FitVerdict.DoNotInsert, new PowerMissing(plug)),
        _ => new FitFinding(FitAspect.Power, FitVerdict.NotKnown, new PowerUndocumented(needed is null, free is null)),
    };

    private static FitFinding Outputs(IReadOnlyList<VideoConnector>? outputs, IReadOnlyList<VideoConnector>? inputs)
    {
        if (outputs is null || inputs is null)
            return new FitFinding(FitAspect.Outputs, FitVerdict.NotKnown, new OutputsUndocumented(outputs is null, inputs is null));
        var pairs = outputs.SelectMany(o => inputs.Select(i => (Output: o, Input: i))).OrderBy(p => p.Output != p.Input).ToList();
        foreach (var (output, input) in pairs.Where(p => Share(Certain(p.Output), Certain(p.Input))))
            return new FitFinding(FitAspect.Outputs, FitVerdict.DocumentsAgree, new OutputAgrees(output, input));
        foreach (var (output, input) in pairs.Where(p => Share(Possible(p.Output), Possible(p.Input))))
            return new FitFinding(FitAspect.Outputs, FitVerdict.NotKnown, new SignalUndocumented(output, input));
        return new FitFinding(FitAspect.Outputs, FitVerdict.DoNotInsert, new NoCommonOutput());
    }

    private static FitFinding Memory(OsMemoryLimit os, long? installed) => (installed, os.Mebibytes) switch
    {
        ({ } amount, { } limit) when amount > limit =>
            new FitFinding(FitAspect.Memory, FitVerdict.NotKnown, new MemoryAboveLimit(os.Os, amount, limit)),
        ({ } amount, { } limit) => new FitFinding(FitAspect.Memory, FitVerdict.DocumentsAgree, new MemoryAgrees(os.Os, amount, limit)),
        _ => new FitFinding(FitAspect.Memory, FitVerdict.NotKnown, new MemoryUndocumented(os.Os)),
    };

    private static IEnumerable<FitCaution> Cautions(RigDocuments rig)
    {
        yield return FitCaution.Mains;
        yield return FitCaution.Capacitors;
        yield return FitCaution.Static;
        if (rig.MonitorHasTube != false)
            yield return FitCaution.PictureTube;
        if (rig.DriverForced)
            yield return FitCaution.ForcedDriver;
    }

    [Flags]
    private enum Signals
    {
        None = 0,
        AnalogueRgb = 1,
        Digital = 2,
        SVideo = 4,
        Composite = 8,
    }

    private static bool Share(Signals one, Signals other) => (one & other) != Signals.None;

    private static Signals Certain(VideoConnector connector) => connector switch
    {
        VideoConnector.Vga or VideoConnector.DviA => Signals.AnalogueRgb,
        VideoConnector.DviD => Signals.Digital,
        VideoConnector.DviI => Signals.AnalogueRgb | Signals.Digital,
        VideoConnector.SVideo => Signals.SVideo,
        VideoConnector.Composite => Signals.Composite,
        VideoConnector.Dvi or VideoConnector.Other => Signals.None,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static Signals Possible(VideoConnector connector) => connector switch
    {
        VideoConnector.Dvi => Signals.AnalogueRgb | Signals.Digital,
        VideoConnector.Other => Signals.AnalogueRgb | Signals.Digital | Signals.SVideo | Signals.Composite,
        _ => Certain(connector),
    };
}
