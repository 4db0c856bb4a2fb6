using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Editions;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>Decisions that concern all cards, one sheet each: the ranking, what to install, what a card would add, the plan.</summary>
internal static class DecisionSheets
{
    /// <summary>Adds the sheets.</summary>
    public static void Add(Book book, EditionReport edition)
    {
        var cards = edition.Catalog.Cards;
        if (cards.Count == 0)
            return;
        Of(book, "Ranking", edition.Ranking.ToReport());
        TableSheet.Add(book, "What to install", DriverChoiceReport.TableOf(cards.Select(edition.InstallsOf).ToList()));
        TableSheet.Add(book, "What it would add", CardValueReport.TableOf(cards.Select(edition.ValueOf).ToList()));
        Of(book, "Plan", edition.Plan.ToReport());
    }

    /// <summary>A report as a sheet: its answer stands above its first table that has rows.</summary>
    private static void Of(Book book, string name, DecisionReport report)
    {
        if (report.Tables.FirstOrDefault(table => table.Rows.Count > 0) is { } table)
            TableSheet.Add(book, name, table with { Title = report.Title, Note = $"{report.Headline} {table.Note} {report.PolicyText}" });
    }
}
