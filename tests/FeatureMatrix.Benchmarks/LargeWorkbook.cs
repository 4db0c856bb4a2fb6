using System.Globalization;
using FeatureMatrix.Benchmarks.Collections;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Benchmarks;

/// <summary>A matrix of titles against setups as a workbook. The verdicts are invented, so that what is measured is the writing alone.</summary>
internal static class LargeWorkbook
{
    private static readonly string[] Losses =
    [
        "table (pixel) fog", "paletted textures (8-bit index)", "32-bit textures", "environment-mapped bump mapping", "stencil buffer, 8 bits", "pixel shader version 1.4",
        "textures in one pass, 2", "eye-relative (W) pixel fog", "colour-keyed textures", "texture sizes that are not powers of two",
    ];

    /// <summary>Writes the workbook to a file.</summary>
    public static void Write(CollectionSize size, string path)
    {
        using var book = new Book();
        Book.Describe(book.Workbook, "A large collection");
        var titles = Enumerable.Range(1, size.Titles).Select(title => $"Title number {title.ToString(CultureInfo.InvariantCulture)}").ToList();
        var setups = Enumerable.Range(1, size.Setups).Select(setup => $"Card {setup.ToString(CultureInfo.InvariantCulture)}, driver branch 4.{setup.ToString(CultureInfo.InvariantCulture)} for Windows 98 SE").ToList();
        SetupCoverageSheet.Add(book, "Coverage by setup", "Coverage by setup", "An invented matrix.", setups, titles, titles.Select((title, i) =>
            new ShownTitle(title, 1 + (i % 5), Enumerable.Range(0, size.Setups).Select(setup => Verdict((i * 31) + (setup * 17))))));
        File.WriteAllBytes(path, WorkbookWriter.Finished(book));
    }

    private static ShownVerdict Verdict(int number)
    {
        var tone = (CellTone)(number % Enum.GetValues<CellTone>().Length);
        var loss = Losses[number / 7 % Losses.Length];
        var label = tone switch
        {
            CellTone.Works => "works, natively",
            CellTone.DoesNotRun => "does not run",
            CellTone.SoftwareOnly => "software only",
            CellTone.NotKnown => $"not known, at best loses {loss} (severe), natively",
            CellTone.RunsNotKnown => $"runs, {loss} not known, natively",
            CellTone.Cosmetic or CellTone.Ungraded or CellTone.Severe => $"loses {loss} ({tone.ToString().ToLowerInvariant()}), {(number % 3 == 0 ? "natively" : "through a wrapper, native not known")}",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return new ShownVerdict(label, tone, (CellEvidence)(number % Enum.GetValues<CellEvidence>().Length));
    }
}
