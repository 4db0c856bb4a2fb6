using System.Globalization;
using ClosedXML.Excel;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Subjects;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>Writes an edition as a workbook (Office Open XML). The same edition gives the same bytes.</summary>
public static class WorkbookWriter
{
    /// <summary>The workbook's bytes.</summary>
    public static byte[] Write(EditionReport edition)
    {
        // ClosedXML writes some numbers with the decimal mark of the thread.
        var culture = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            return WriteInvariant(edition);
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    private static byte[] WriteInvariant(EditionReport edition)
    {
        using var book = new Book();
        Book.Describe(book.Workbook, edition.Catalog.Name, edition.ByCard.Heading, edition.Date);
        var overview = book.AddSheet("Overview");
        var coverage = CoverageSheet.Add(book, "Coverage", edition.ByCard);
        SetupCoverageSheet.Add(book, edition.BySetup);
        var cards = edition.Cards.Select(card => CardSheet(book, card, overview)).ToList();
        var pair = CompareSheet.Pair(edition);
        if (pair is not null)
        {
            CompareSheet.Add(book, pair, CoverageSheet.Weights(coverage, edition.ByCard), CoverageSheet.Numbers(coverage, edition.ByCard), edition.ByCard);
            TableSheet.Add(book, "Next tests", CompareSheet.QuestionsOf(edition, pair).ToTable(), 2);
        }

        DecisionSheets.Add(book, edition);
        TableSheet.Add(book, "Wrappers", edition.Wrappers.ToTable());
        TableSheet.Add(book, "Features by card", edition.Supply.ToTable(), 2);
        TableSheet.Add(book, "Drivers", DriverReport.TableOf(edition.Catalog), 2);
        TableSheet.Add(book, "Memory", MemoryReport.HighestModes(edition.Memory));
        BenchSheets.Add(book, edition);
        TableSheet.Add(book, "Sources", edition.Sources.ToTable());
        PolicySheet.Add(book, edition.Decisions.Policy);
        var outcomes = OutcomeSheet.Add(
            book, edition, CoverageSheet.Weights(coverage, edition.ByCard), CoverageSheet.Numbers(coverage, edition.ByCard));
        OverviewSheet.Fill(book, overview, edition, outcomes, cards);
        if (pair is not null)
            AnyTwoSheet.Add(book, edition, overview, coverage, outcomes, pair);
        LinkHeadings(coverage, cards);
        WhySheet.Add(book, edition.ByCard, coverage, cards);
        return Finished(book);
    }

    private static IXLWorksheet CardSheet(Book book, CardReport card, IXLWorksheet overview)
    {
        var sheet = TableSheet.Add(book, card.Card.Name, card.ToTable(), 2);
        Book.Link(Book.Text(sheet.Cell(3, 1), "Back to the overview"), overview);
        return sheet;
    }

    private static void LinkHeadings(IXLWorksheet coverage, List<IXLWorksheet> cards)
    {
        for (var i = 0; i < cards.Count; i++)
            Book.Link(coverage.Cell(CoverageSheet.HeadingRow, CoverageSheet.FirstCardColumn + i), cards[i]);
    }

    /// <summary>A finished book as bytes, completed and made reproducible.</summary>
    internal static byte[] Finished(Book book)
    {
        using var stream = new MemoryStream();
        book.Workbook.SaveAs(stream, new SaveOptions { EvaluateFormulasBeforeSaving = false, GenerateCalculationChain = false });
        FormulaValues.Write(stream, book.Values, book.PrintTitles);
        return ReproduciblePackage.Rewrite(stream.ToArray(), book.Bulk);
    }
}
