using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What a hardware ID stands for, in words.</summary>
public static class IdentityReport
{
    /// <summary>Vendor, device and board by the PCI ID list; where the list is silent nothing follows for the card.</summary>
    public static ExplanationLine Of(HardwareId id, PciNames names, Card? known)
    {
        ArgumentNullException.ThrowIfNull(id);
        ArgumentNullException.ThrowIfNull(names);
        List<ExplanationLine> lines =
        [
            Line("Chip's maker", $"{id.Vendor:X4}", names.Vendor),
            Line("Chip", $"{id.Device:X4}", names.Device),
        ];
        if (id.Subsystem is { } subsystem)
        {
            lines.Add(Line("Board's maker", $"{subsystem.Vendor:X4}", names.SubsystemVendor));
            lines.Add(Line("Board", $"{subsystem.Id:X4}", names.Subsystem));
        }
        else
        {
            lines.Add(new(LineKind.Gap, "The ID has no SUBSYS part, so that the board is not told apart from others with this chip."));
        }

        if (known is not null)
            lines.Add(new(LineKind.Statement, $"The collection has a card with this ID: {known.Name} ({known.Id})."));
        lines.Add(new(LineKind.Statement, "Names only: memory, clocks, connector and voltages are read from the board and its documents."));
        return new ExplanationLine(LineKind.Statement, id.ToString(), lines);
    }

    private static ExplanationLine Line(string what, string number, string? name) => name is null
        ? new(LineKind.Gap, $"{what} {number}: not in the list")
        : new(LineKind.Met, $"{what} {number}: {PlainWords.Of(name)}");
}
