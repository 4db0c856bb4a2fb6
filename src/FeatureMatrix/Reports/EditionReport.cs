using FeatureMatrix.Model;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Reports;

/// <summary>Everything that is published together: what site and workbook are made from.</summary>
public sealed record EditionReport
{
    /// <summary>The verdicts behind the reports.</summary>
    public required Decisions Decisions { get; init; }

    /// <summary>The date the edition states; null where it states none.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Titles against cards.</summary>
    public required CoverageReport ByCard { get; init; }

    /// <summary>Titles against setups.</summary>
    public required CoverageReport BySetup { get; init; }

    /// <summary>What each card loses, in the order of the cards.</summary>
    public required IReadOnlyList<CardReport> Cards { get; init; }

    /// <summary>What each card's memory holds, in the order of the cards.</summary>
    public required IReadOnlyList<MemoryReport> Memory { get; init; }

    /// <summary>Which titles need a wrapper.</summary>
    public required WrapperReport Wrappers { get; init; }

    /// <summary>Features against cards.</summary>
    public required SupplyReport Supply { get; init; }

    /// <summary>Who says what the collection says.</summary>
    public required SourcesReport Sources { get; init; }

    /// <summary>What was measured.</summary>
    public required BenchReport Bench { get; init; }

    /// <summary>The editions so far.</summary>
    public required EditionHistory History { get; init; }

    /// <summary>The collection.</summary>
    public Catalog Catalog => Decisions.Catalog;

    /// <summary>Makes all reports of an edition.</summary>
    public static EditionReport Of(Decisions decisions, DateOnly? date = null, EditionHistory? history = null)
    {
        decisions.DecideAll();
        return new EditionReport
        {
            Decisions = decisions,
            Date = date,
            History = history ?? new EditionHistory([]),
            ByCard = CoverageReport.ByCard(decisions),
            BySetup = CoverageReport.BySetup(decisions),
            Cards = decisions.Catalog.Cards.Select(card => CardReport.Of(decisions, card)).ToList(),
            Memory = decisions.Catalog.Cards.Select(card => MemoryReport.Of(decisions, card)).ToList(),
            Wrappers = WrapperReport.Of(decisions),
            Supply = SupplyReport.Of(decisions),
            Sources = SourcesReport.Of(decisions.Catalog),
            Bench = BenchReport.Of(decisions),
        };
    }
}
