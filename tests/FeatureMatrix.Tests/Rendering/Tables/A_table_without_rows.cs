using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Tests.Rendering.Tables;

/// <summary>A head without rows tells nobody anything: formats for people say why there are none, formats for programs keep the head.</summary>
public sealed class A_table_without_rows
{
    private static readonly Table Bare = new("What changes", "On any card.", [new("Title"), new("Now", true)], []);

    private static readonly Table Explained = Bare with { WhenEmpty = "Nothing [at all] changes." };

    [Theory]
    [InlineData(TableFormat.Text, "What changes\nOn any card. Nothing to list.\n", "What changes\nNothing [at all] changes.\n")]
    [InlineData(TableFormat.Markdown, "**What changes**\n\nOn any card. Nothing to list.\n", "**What changes**\n\nNothing \\[at all\\] changes.\n")]
    [InlineData(TableFormat.Forum, "[b]What changes[/b]\nOn any card. Nothing to list.\n", "[b]What changes[/b]\nNothing (at all) changes.\n")]
    [InlineData(TableFormat.Csv, "Title,Now\n", "Title,Now\n")]
    public void Says_so_in_a_sentence(TableFormat format, string bare, string explained) =>
        Assert.Equal((bare, explained), (TableWriter.Write(Bare, format), TableWriter.Write(Explained, format)));

    [Fact]
    public void Has_its_columns_and_no_rows_in_json() => Assert.Equal(
        """
        {
          "title": "What changes",
          "note": "On any card.",
          "columns": [
            "Title",
            "Now"
          ],
          "rows": []
        }

        """,
        TableWriter.Write(Bare, TableFormat.Json));
}
