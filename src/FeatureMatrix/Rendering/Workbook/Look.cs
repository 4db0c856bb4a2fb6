using ClosedXML.Excel;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// How cells look. Words come first; fills differ in lightness so that they read in greyscale, the strength of a loss shows in
/// the weight of the text, and evidence in the cell's lower edge.
/// </summary>
internal static class Look
{
    /// <summary>
    /// Ends the format of a number that stands left of text, and keeps a bracket's width free between the two. LibreOffice 7.4 drops most
    /// indents of right-aligned cells.
    /// </summary>
    public const string AfterFigures = "_)";

    private static readonly XLColor Ink = XLColor.FromHtml("#1B1F23");
    private static readonly XLColor Rule = XLColor.FromHtml("#8A8F98");
    private static readonly XLColor Quiet = XLColor.FromHtml("#EEF1F4");

    /// <summary>A sheet's title.</summary>
    public static void Title(IXLCell cell)
    {
        cell.Style.Font.Bold = true;
        cell.Style.Font.FontSize = 15;
        cell.Style.Font.FontColor = Ink;
    }

    /// <summary>A remark below the title.</summary>
    public static void Note(IXLRange range)
    {
        range.Merge();
        range.Style.Alignment.WrapText = true;
        range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
        range.Style.Font.FontColor = XLColor.FromHtml("#4A4F57");
        var sheet = range.Worksheet;
        var width = range.Columns().Sum(column => sheet.Column(column.ColumnNumber()).Width);
        sheet.Row(range.FirstRow().RowNumber()).Height = (TextLines.Count(range.FirstCell().GetString(), width * 1.1) * 14.4) + 4;
    }

    /// <summary>A column heading.</summary>
    public static void Heading(IXLRange range)
    {
        range.Style.Font.Bold = true;
        range.Style.Fill.BackgroundColor = Quiet;
        range.Style.Alignment.WrapText = true;
        range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Bottom;
        range.Style.Border.BottomBorder = XLBorderStyleValues.Medium;
        range.Style.Border.BottomBorderColor = Ink;
    }

    /// <summary>Ordinary cells.</summary>
    public static void Body(IXLRange range)
    {
        range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
        range.Style.Alignment.WrapText = true;
        range.Style.Border.InsideBorder = XLBorderStyleValues.Hair;
        range.Style.Border.InsideBorderColor = Rule;
        range.Style.Border.BottomBorder = XLBorderStyleValues.Thin;
        range.Style.Border.BottomBorderColor = Rule;
    }

    /// <summary>The format of a number.</summary>
    public static void Number(IXLCell cell, string format) => cell.Style.NumberFormat.Format = format + AfterFigures;

    /// <summary>Columns of figures, with their headings in the first row.</summary>
    public static void Figures(IXLRange range)
    {
        range.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
        range.FirstRow().Style.NumberFormat.Format = "@" + AfterFigures;
    }

    /// <summary>A cell that the reader may change.</summary>
    public static void Changeable(IXLCell cell)
    {
        cell.Style.Fill.BackgroundColor = XLColor.White;
        cell.Style.Border.OutsideBorder = XLBorderStyleValues.Medium;
        cell.Style.Border.OutsideBorderColor = XLColor.FromHtml("#0072B2");
        cell.Style.Font.Bold = true;
    }

    /// <summary>A verdict.</summary>
    public static void Tone(IXLCell cell, CellTone tone)
    {
        var (fill, ink) = Colours(tone);
        cell.Style.Fill.BackgroundColor = XLColor.FromHtml(fill);
        cell.Style.Font.FontColor = XLColor.FromHtml(ink);
        cell.Style.Font.Bold = tone is CellTone.Severe or CellTone.DoesNotRun;
        cell.Style.Font.Italic = tone is CellTone.NotKnown or CellTone.RunsNotKnown;
    }

    /// <summary>The evidence behind a verdict, as the lower edge: solid where seen or documented, dashed where inferred, dotted where open.</summary>
    public static void Evidence(IXLCell cell, CellEvidence evidence)
    {
        cell.Style.Border.BottomBorder = evidence switch
        {
            CellEvidence.Seen => XLBorderStyleValues.Medium,
            CellEvidence.Documented => XLBorderStyleValues.Thin,
            CellEvidence.Inferred => XLBorderStyleValues.Dashed,
            CellEvidence.NotKnown => XLBorderStyleValues.Dotted,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        cell.Style.Border.BottomBorderColor = Ink;
    }

    // Tints of the colour-blind-safe palette of Okabe and Ito (2002), dark text on light fills; contrast is tested.
    internal static (string Fill, string Ink) Colours(CellTone tone) => tone switch
    {
        CellTone.Works => ("#D9ECF7", "#0B2F47"),
        CellTone.Cosmetic => ("#F7F1B5", "#3A3500"),
        CellTone.Ungraded => ("#F3DFA6", "#3F2D00"),
        CellTone.Severe => ("#EBB68A", "#471F00"),
        CellTone.RunsNotKnown => ("#ECE3EA", "#43233A"),
        CellTone.NotKnown => ("#FFFFFF", "#4F4F4F"),
        CellTone.SoftwareOnly => ("#C9CDD2", "#23272B"),
        CellTone.DoesNotRun => ("#4B4F55", "#FFFFFF"),
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
