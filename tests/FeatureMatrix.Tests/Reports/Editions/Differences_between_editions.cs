using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Reports.Editions;

/// <summary>What changed from one edition to the next, and what caused it.</summary>
public sealed class Differences_between_editions
{
    private const string Base =
        """
        collection: {name: Shelf}
        chips: {heron: {name: Heron}}
        cards: {heron-16: {name: Heron 16, chip: heron, memory: {unified: 16 MiB}, drivers-complete: [windows-98se], source: manual}}
        drivers: {heron-9x: {name: Heron 9x, os: [windows-98se], lists: [heron-16], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}}
        titles: {bay: {name: Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [fog-table]}}}}}
        """;

    [Fact]
    public void A_corrected_statement_is_the_cause_and_a_correction()
    {
        var difference = EditionDifference.Between(
            State("facts: [{chip: heron, fog-table: yes, source: manual}]"), State("facts: [{chip: heron, fog-table: no, source: bench}]"));

        Assert.Equal("1 verdict changed; 1 statement corrected.", difference.Headline);
        var cell = Assert.Single(difference.Cells);
        Assert.Equal(("Bay", "Heron 16", "works, natively", "loses table fog (severe), natively"), (cell.Title, cell.Card, cell.Before, cell.Now));
        Assert.Equal(["Heron: table fog: no (measured: The bench), before: yes (documented: A manual)"], cell.Because);
        Assert.Equal([new Correction("Heron: table fog", "yes (documented: A manual)", "no (measured: The bench)")], difference.Corrections);
    }

    [Fact]
    public void A_statement_that_is_new_settles_what_was_not_known()
    {
        var cell = Assert.Single(EditionDifference.Between(State(""), State("facts: [{chip: heron, fog-table: yes, source: manual}]")).Cells);
        Assert.Equal(("runs, table fog not known, natively", "works, natively"), (cell.Before, cell.Now));
        Assert.Equal(["new: Heron: table fog: yes (documented: A manual)"], cell.Because);
    }

    [Fact]
    public void A_statement_that_is_gone_leaves_a_gap()
    {
        var cell = Assert.Single(EditionDifference.Between(State("facts: [{chip: heron, fog-table: yes, source: manual}]"), State("")).Cells);
        Assert.Equal(["no longer said: Heron: table fog: yes (documented: A manual)"], cell.Because);
    }

    [Fact]
    public void A_need_that_was_graded_anew_is_the_cause()
    {
        var cell = Assert.Single(EditionDifference.Between(
            State("facts: [{chip: heron, fog-table: no, source: manual}]"),
            State("facts: [{chip: heron, fog-table: no, source: manual}]", Base.Replace("severe:", "cosmetic:", StringComparison.Ordinal))).Cells);
        Assert.Equal(["Bay, Direct3D 6 without table fog: cosmetic (measured: The bench), before: severe"], cell.Because);
    }

    [Fact]
    public void Other_terms_or_another_program_are_named_where_no_statement_changed()
    {
        var before = State("facts: [{chip: heron, fog-table: yes, source: manual}]");
        var other = State("facts: [{chip: heron, fog-table: yes, source: manual}]") is var same
            ? same with { Cells = [.. same.Cells.Select(cell => cell with { Label = "does not run" })] }
            : null!;
        Assert.Equal(["the terms changed"], Assert.Single(EditionDifference.Between(before, other with { Policy = "wrappers: none" }).Cells).Because);
        Assert.Equal(["the program changed from 1.0 to 2.0"], Assert.Single(EditionDifference.Between(before, other with { Program = "2.0" }).Cells).Because);
    }

    [Fact]
    public void Titles_and_cards_that_come_and_go_are_no_changed_verdicts()
    {
        var more = State("cards: {heron-32: {name: Heron 32, chip: heron, source: manual}}");
        Assert.Equal("No verdict changed; new: Heron 32.", EditionDifference.Between(State(""), more).Headline);
        Assert.Equal("No verdict changed; no longer in it: Heron 32.", EditionDifference.Between(more, State("")).Headline);
    }

    [Fact]
    public void The_history_is_in_the_order_of_dates_and_ends_with_what_changed_since()
    {
        var first = State("") with { Name = "b-first", Date = new DateOnly(2026, 3, 1), Note = "A start." };
        var second = State("facts: [{chip: heron, fog-table: yes, source: manual}]") with { Name = "a-second", Date = new DateOnly(2026, 4, 1) };
        var history = new EditionHistory([second, first], State("facts: [{chip: heron, fog-table: no, source: manual}]"));

        Assert.Equal(
            [["2026-04-01", "a-second", "1 verdict changed.", ""], ["2026-03-01", "b-first", "The first edition.", "A start."]],
            history.ToTable().Rows.Select(row => row.Select(cell => cell.Text)));
        Assert.Equal("Since a-second: 1 verdict changed; 1 statement corrected.", history.ToReport().Headline);
        Assert.Equal(
            ["Editions", "Verdicts that changed from a-second to now", "Corrections from a-second to now", "Verdicts that changed from b-first to a-second"],
            history.ToReport().Tables.Select(table => table.Title));
    }

    internal static EditionState State(string yaml, string common = Base) => EditionState.Of(new Decisions(Worlds.Load(common, yaml), null), "1.0");
}
