using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Model;
using static FeatureMatrix.Loading.RunLogs.RunLogFaultKind;

namespace FeatureMatrix.Tests.Loading.RunLogs;

public sealed class Run_log_faults
{
    private static readonly string[] None = [];

    [Theory]
    [InlineData("width", "1024.0", NotWhole, "")]
    [InlineData("width", "0", OutOfRange, "1..16384")]
    [InlineData("samples", "99999999999", OutOfRange, "1..64")]
    [InlineData("fps", "fast", NotANumber, "")]
    [InlineData("fps", "1.234.5", NotANumber, "")]
    [InlineData("fps", "60 fps", NotANumber, "")]
    [InlineData("fps", "-60", OutOfRange, "> 0")]
    [InlineData("fps", "0", OutOfRange, "> 0")]
    [InlineData("min-fps", "-1", OutOfRange, ">= 0")]
    [InlineData("percentiles", "101=20", OutOfRange, "> 0 and < 100")]
    [InlineData("percentiles", "30", NotAPair, "")]
    [InlineData("percentiles", "1=", NotANumber, "")]
    [InlineData("percentiles", "=20", NotAPair, "")]
    [InlineData("date", "29.02.2004", NotADate, "")]
    [InlineData("date", "2003-02-29", NotADate, "")]
    public void Name_line_column_and_what_is_legal(string column, string cell, RunLogFaultKind kind, string legal)
    {
        var log = RunLogReader.Read($"title;card;frame-times;{column}\nbrass-corsair;orlan-2400;a.txt;{cell}\n");

        Assert.Empty(log.Rows);
        Assert.Equal(Fault(kind, 2, column, cell, legal.Length == 0 ? None : [legal]), Assert.Single(log.Faults));
    }

    [Fact]
    public void Suggest_the_word_that_was_meant()
    {
        var log = RunLogReader.Read("title,card,score,better\nbrass-corsair,orlan-2400,60,hihger\n");

        Assert.Equal(Fault(UnknownWord, 2, "better", "hihger", ["higher", "lower"], "higher"), Assert.Single(log.Faults));
    }

    [Fact]
    public void Suggest_the_column_that_was_meant_and_read_the_others()
    {
        var log = RunLogReader.Read("title,card,fps,hieght\nbrass-corsair,orlan-2400,60,768\n");

        var fault = Assert.Single(log.Faults);
        Assert.Equal((UnknownColumn, 1, "hieght", "height"), (fault.Kind, fault.Line, fault.Column, fault.Suggestion));
        Assert.Equal(31, fault.Legal.Count);
        Assert.Equal([new RunLogRow { Line = 2, Title = "brass-corsair", Card = "orlan-2400", Fps = 60 }], log.Rows);
    }

    [Fact]
    public void Name_a_column_that_comes_twice()
    {
        var log = RunLogReader.Read("title,card,fps,Fps\nbrass-corsair,orlan-2400,60,61\n");

        Assert.Equal(Fault(RepeatedColumn, 1, "fps", "Fps", None), Assert.Single(log.Faults));
        Assert.Equal(60, Assert.Single(log.Rows).Fps);
    }

    [Fact]
    public void Name_a_missing_column_and_give_no_rows()
    {
        var log = RunLogReader.Read("title,fps\nbrass-corsair,60\nbrass-corsair,x\n");

        Assert.Equal(
            [Fault(MissingColumn, 1, "card", "", None), Fault(NotANumber, 3, "fps", "x", None)],
            log.Faults);
        Assert.Empty(log.Rows);
    }

    [Fact]
    public void Name_what_a_row_must_hold()
    {
        var log = RunLogReader.Read("title,card,fps,score\n,orlan-2400,60,\nbrass-corsair,orlan-2400,,\nbrass-corsair,orlan-2400,,500\n");

        Assert.Equal(
            [
                Fault(MissingValue, 2, "title", "", None),
                Fault(MissingValue, 3, "fps", "", ["fps", "score", "frame-times", "discarded"]),
                Fault(MissingValue, 4, "better", "", ["higher", "lower"]),
            ],
            log.Faults);
    }

    /// <summary>60.5 settled the mark; 1,024 beside it may be a thousand, and nobody can know.</summary>
    [Fact]
    public void Refuse_a_second_decimal_mark()
    {
        var log = RunLogReader.Read("title;card;fps\nbrass-corsair;orlan-2400;60.5\nbrass-corsair;orlan-2400;1,024\n");

        Assert.Equal(Fault(OtherDecimalMark, 3, "fps", "1,024", ["."]), Assert.Single(log.Faults));
    }

    [Fact]
    public void Notice_a_decimal_comma_that_cut_a_cell_in_two()
    {
        var log = RunLogReader.Read("title,card,fps\nbrass-corsair,orlan-2400,60,5\n");

        Assert.Equal(Fault(SurplusCell, 2, "", "5", None), Assert.Single(log.Faults));
        Assert.Empty(log.Rows);
    }

    [Fact]
    public void Notice_a_quote_that_is_not_closed_or_not_quoted()
    {
        var log = RunLogReader.Read(
            "title,card,fps,note\nbrass-corsair,orlan-2400,60,17\" monitor\nbrass-corsair,orlan-2400,61,fine\nbrass-corsair,orlan-2400,62,\"open\n");

        Assert.Equal(
            [Fault(StrayQuote, 2, "", "17\" monitor", None), Fault(OpenQuote, 4, "", "\"open", None)],
            log.Faults);
        Assert.Equal([61.0], log.Rows.Select(row => row.Fps!.Value));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("colour,taste\nred,sweet\n")]
    public void Say_when_it_is_no_run_log_at_all(string text)
    {
        var log = RunLogReader.Read(text);

        var fault = Assert.Single(log.Faults);
        Assert.Equal((NotARunLog, 1, ""), (fault.Kind, fault.Line, fault.Column));
        Assert.Equal(31, fault.Legal.Count);
        Assert.Empty(log.Rows);
    }

    [Fact]
    public void Are_all_reported_at_once_in_order_of_lines()
    {
        var log = RunLogReader.Read("title,card,fps,date\nbrass-corsair,orlan-2400,x,y\nbrass-corsair,,z,\n");

        Assert.Equal(
            [(NotANumber, 2, "fps"), (NotADate, 2, "date"), (NotANumber, 3, "fps"), (MissingValue, 3, "card")],
            log.Faults.Select(fault => (fault.Kind, fault.Line, fault.Column)));
    }

    private static RunLogFault Fault(
        RunLogFaultKind kind, int line, string column, string found, string[] legal, string? suggestion = null) =>
        new(kind, line, column, found, new EquatableList<string>(legal), suggestion);
}
