using ClosedXML.Excel;
using FeatureMatrix.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>What the program says to what people type wrongly, and to what they may not have meant.</summary>
public sealed class Answers_to_slips : IDisposable
{
    private static readonly string Demo = Repository.PathTo("data", "demo");

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("coverage --format bbcode", "--format bbcode: say one of csv, forum, json, markdown, text.")]
    [InlineData("plan --budget much", "--budget much: that is not what it takes.")]
    [InlineData("preview --port web", "--port web: that is not what it takes.")]
    public void A_word_of_the_wrong_kind_is_answered_without_names_of_types(string line, string told) => Assert.Equal(
        (ExitCode.Usage, $"{told}\nSay --help after a command for its options and examples.\n"), Told(line.Split(' ')));

    [Fact]
    public void A_library_is_not_looked_for_where_there_is_none()
    {
        File.WriteAllText(_folder["collection.yaml"], OneBoard.World);
        Assert.Equal((ExitCode.Usage, "No library 'evening'. The collection has none.\n"), Told("rank", "--library", "evening", "--collection", _folder.Path));
    }

    [Fact]
    public void A_system_that_the_policy_forbids_is_not_answered_as_if_nothing_ran_there() => Assert.Equal(
        (ExitCode.Usage, "The policy does not allow Windows 2000 Professional. Take another library, or lay a policy over it with --policy.\n"),
        Told("whatif", "kite-2", "--os", "windows-2000", "--library", "sluice-evening", "--collection", Demo));

    [Fact]
    public void An_interface_without_the_blank_before_its_level_is_understood()
    {
        File.WriteAllText(_folder["collection.yaml"], OneBoard.World.Replace("api: direct3d 6", "api: direct3d6", StringComparison.Ordinal));
        var (code, messages) = Told("check", "--collection", _folder.Path);
        Assert.Equal(ExitCode.Faults, code);
        Assert.Equal($"collection.yaml(6,102): error FM103: unknown API 'direct3d6'; did you mean 'direct3d 6'?\n1 fault in {_folder.Path}.\n", messages);
    }

    [Fact]
    public void What_could_not_be_looked_up_is_said()
    {
        File.WriteAllText(_folder["collection.yaml"], OneBoard.World);
        File.WriteAllText(_folder["more.yaml"], "cards:\n\tdelta: {}\n");
        Assert.Equal(
            $"more.yaml(2,1): error FM003: a tab at the beginning of a line; YAML is indented with spaces\n1 fault in {_folder.Path}. Words that name other records were not looked up, because a file cannot be read.\n",
            Told("check", "--collection", _folder.Path).Messages);
    }

    [Fact]
    public void A_second_worksheet_gets_a_name_of_its_own()
    {
        File.WriteAllText(_folder["collection.yaml"], OneBoard.World);
        Directory.CreateDirectory(_folder["observations"]);
        File.WriteAllText(_folder["observations/from-worksheet-bench.yaml"], "observations: []\n");
        Assert.Equal(ExitCode.Fine, Told("worksheet", "--collection", _folder.Path, "--out", _folder["sheet.xlsx"]).Exit);
        using var book = new XLWorkbook(_folder["sheet.xlsx"]);
        Assert.Contains("bench-2", book.Worksheets.SelectMany(sheet => sheet.CellsUsed()).Select(cell => cell.GetString()));
    }

    private static (int Exit, string Messages) Told(params string[] args)
    {
        var (code, _, messages) = CommandRun.Of(args);
        return (code, messages.ReplaceLineEndings("\n"));
    }
}
