using System.Globalization;
using FeatureMatrix.Importing;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What photos of memory chips leave possible.</summary>
public static class MemoryChipReport
{
    /// <summary>The outcomes that remain with the layouts that lead to each, and in the note the look that narrows them most.</summary>
    public static Table Of(MemoryCandidates candidates)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        return new Table(
            "Memory by its chips",
            Note(candidates),
            [new("Memory, KiB", IsNumber: true), new("Bus, bits", IsNumber: true), new("Layouts")],
            [
                .. candidates.Outcomes.Select(outcome => (IReadOnlyList<TableCell>)
                [
                    Number(outcome.Kibibytes), Number(outcome.BusBits),
                    new(string.Join("; ", candidates.Layouts.Where(layout => layout.Outcome == outcome).Select(Layout))),
                ]),
            ]);
    }

    private static string Note(MemoryCandidates candidates) => (candidates.Outcomes.Count, candidates.Looks) switch
    {
        (0, _) => "What was read contradicts itself: no board of the period has such chips. Look again.",
        (1, _) => "One answer remains.",
        (var count, [var best, ..]) => string.Create(
            CultureInfo.InvariantCulture, $"{count} answers remain. Next: {Look(best.Look)}, which leaves {best.WorstRemaining} at most."),
        (var count, _) => string.Create(CultureInfo.InvariantCulture, $"{count} answers remain, and no further look is known that tells them apart."),
    };

    private static string Look(MemoryLook look) => look switch
    {
        MemoryLook.PhotoOfFront => "a photo of the front that shows every chip",
        MemoryLook.PhotoOfBack => "a photo of the back",
        MemoryLook.PhotoOfMarking => "a sharp photo of one chip's marking, to look up in its data sheet",
        MemoryLook.ReadingOfMemory => "a document or start-up screen that tells the memory",
        MemoryLook.ReadingOfBusWidth => "a document that tells the bus width",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Layout(MemoryLayout layout)
    {
        var banks = layout.Banks == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" in {layout.Banks} banks");
        return string.Create(CultureInfo.InvariantCulture, $"{layout.Chips} × {layout.WidthBits} bit × {layout.Megabits} Mbit{banks}");
    }

    private static TableCell Number(int number) => new(number.ToString(CultureInfo.InvariantCulture), number);
}
