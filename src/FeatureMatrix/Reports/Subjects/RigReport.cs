using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What a rig does to a title that a fast machine breaks.</summary>
/// <param name="TitleId">The title.</param>
/// <param name="TitleName">The title's name.</param>
/// <param name="Kind">What goes wrong, in a word or two.</param>
/// <param name="State">How it stands, kebab-case.</param>
/// <param name="Text">The finding in a sentence.</param>
public sealed record TimingRow(string TitleId, string TitleName, string Kind, string State, string Text);

/// <summary>Everything about one rig.</summary>
public sealed record RigReport(
    string Id, string Name, string Line, string Notes, IReadOnlyList<NamedText> Facts, IReadOnlyList<TimingRow> Timing, Table Table)
{
    /// <summary>The report of a rig.</summary>
    public static RigReport Of(Decisions decisions, Rig rig)
    {
        var findings = decisions.Titles.SelectMany(title => TimingRule.On(title, rig)).ToList();
        var trouble = findings.Count(finding => finding.State is TimingState.Fails or TimingState.FollowsFrameRate or TimingState.Conflict);
        var open = findings.Count(finding => finding.State == TimingState.NotKnown);
        string TextOf(TimingFinding finding) => TimingWording.Text(finding, CardSpeed.BeyondBearable(finding, decisions.Log));
        return new RigReport(
            rig.Id, rig.Name,
            $"{Processor(rig)}: {(trouble == 0 ? "no title is known to run wrong" : $"{Names.Count(trouble, "title")} {(trouble == 1 ? "runs" : "run")} wrong or {(trouble == 1 ? "needs" : "need")} a limiter")}{(open > 0 ? $"; {open} not known" : "")}",
            rig.Notes, FactsOf(rig),
            findings.OrderBy(finding => finding.State == TimingState.SeenToWork).ThenBy(finding => finding.Title.Name, StringComparer.Ordinal)
                .Select(finding => new TimingRow(
                    finding.Title.Id, finding.Title.Name, TimingWording.Kind(finding.Hazard.Kind), Tile.Kebab(finding.State), Names.Sentence(TextOf(finding)))).ToList(),
            new Table(
                $"Fast-machine warnings on {Names.InMiddle(rig.Name)}", "These are about the PC; they change no card's verdict.",
                [new("Title"), new("What goes wrong"), new("On this rig")],
                findings.Select(finding => (IReadOnlyList<TableCell>)
                    [new TableCell(finding.Title.Name), new TableCell(TimingWording.Kind(finding.Hazard.Kind)), new TableCell(TextOf(finding))]).ToList()));
    }

    private static string Processor(Rig rig)
    {
        var parts = new List<string>();
        if (rig.Megahertz is { } clock)
            parts.Add($"{Number(clock)} MHz");
        if (rig.Cores is { } cores)
            parts.Add(Names.Count(cores, "core"));
        if (rig.MemoryMebibytes is { } memory)
            parts.Add($"{Number(memory)} MiB");
        return parts.Count > 0 ? string.Join(", ", parts) : "Processor not recorded";
    }

    private static List<NamedText> FactsOf(Rig rig)
    {
        var facts = new List<NamedText>();
        Add("Processor", string.Join(", ", new[] { rig.ProcessorFamily, rig.Megahertz is { } clock ? $"{Number(clock)} MHz" : "", rig.Cores is { } cores ? Names.Count(cores, "core") : "" }
            .Where(part => part.Length > 0)));
        Add("Memory", rig.MemoryMebibytes is { } memory ? $"{Number(memory)} MiB" : "");
        Add("Chipset", rig.Chipset);
        Add("Sound", rig.Sound);
        Add("Slots", string.Join("; ", rig.Slots.Select(SlotText)));
        Add("Free power plugs", rig.PowerPlugs switch { null => "not recorded", { Count: 0 } => "none", var plugs => Names.List(plugs) });
        if (rig.Monitor is { } monitor)
        {
            Add("Monitor", monitor.Name + (monitor.Highest is { } mode ? $", documented up to {mode}" : ", limits not recorded")
                + (monitor.RefreshHertz is { } refresh ? $", used at {Number(refresh)} Hz" : ""));
        }

        Add("Systems", Names.List(rig.Oses.Select(os => os.Name).ToList()));
        return facts;

        void Add(string name, string text)
        {
            if (text.Length > 0)
                facts.Add(new NamedText(name, text));
        }
    }

    private static string SlotText(RigSlot slot)
    {
        var parts = new List<string> { slot.Bus.Name };
        if (slot.Speed is { } speed)
            parts.Add($"up to {speed}x");
        parts.Add(slot.DocumentedVolts.Count > 0 ? $"documented for {Names.List(slot.DocumentedVolts.Select(volt => $"{Number(volt)} V").ToList())}" : "signalling not documented");
        if (slot.Key is { } key)
            parts.Add($"{Number(key)} V key");
        return string.Join(", ", parts);
    }

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
