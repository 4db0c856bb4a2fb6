using FeatureMatrix.Cli;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>Whoever stops an import leaves the collection as it was or as it is to be, never a mix of both.</summary>
public sealed class InterruptedWrites
{
    private const string Old = "chips: {ox-4: {name: OX-4, source: A book}}\n";
    private const string New = "chips: {ox-4: {name: OX-4, source: A book}}\ncards:\n  ox4: {name: Ostrel 4, chip: ox-4, source: dump-1}\n";
    private const string Sources = "sources:\n  dump-1: {text: A dump}\n";
    private const int StepCount = 9;

    private static readonly FileChange[] Changes = [new("more/sources.yaml", null, Sources), new("cards.yaml", Old, New)];

    [Fact]
    public void After_any_number_of_steps_the_next_command_sees_all_of_it_or_nothing()
    {
        for (var stopAfter = 0; stopAfter <= StepCount; stopAfter++)
        {
            using var bench = Stopped(stopAfter);
            var isFinal = stopAfter >= 6;
            bench.Run("check");
            Assert.Equal((isFinal ? New : Old, isFinal ? Sources : null), (bench.Texts()["cards.yaml"], bench.Texts().GetValueOrDefault("more/sources.yaml")));
            Assert.Equal(isFinal ? 1 : 0, bench.Load().Cards.Count);
            if (isFinal)
                Assert.Equal(Old, File.ReadAllText(bench.PathOf("cards.yaml.before")));

            // A second try finishes what the first began, and nothing is left over.
            CollectionWriter.Write(bench.Folder, Changes);
            Assert.Equal(New, File.ReadAllText(bench.PathOf("cards.yaml")));
            Assert.Empty(Directory.GetFiles(bench.Folder, ".*", SearchOption.AllDirectories));
        }
    }

    [Fact]
    public void A_change_that_is_finished_later_is_told_of()
    {
        using var bench = Stopped(7);
        bench.Run("check");
        Assert.Contains($"A change of {bench.Folder} had been stopped before its last step; it is finished now.", bench.Told, StringComparison.Ordinal);
        bench.Run("check");
        Assert.DoesNotContain("had been stopped", bench.Told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../outside.yaml")]
    [InlineData("/outside.yaml")]
    [InlineData("more/../../outside.yaml")]
    [InlineData("..\\outside.yaml")]
    [InlineData("c:outside.yaml")]
    public void A_list_that_leads_out_of_the_folder_moves_nothing(string name)
    {
        using var bench = Stopped(0);
        var outside = Path.Combine(Path.GetDirectoryName(bench.Folder)!, ".outside.yaml.being-written");
        File.WriteAllText(outside, "x");
        try
        {
            bench.Write(CollectionWriter.ListName, System.Text.Encoding.UTF8.GetBytes(name + "\n"));
            Assert.Equal(ExitCode.Faults, bench.Run("check"));
            Assert.Equal($"'{name}' does not lie in {bench.Folder}. Nothing was changed.\n", bench.Told);
            Assert.True(File.Exists(outside));
        }
        finally
        {
            File.Delete(outside);
        }
    }

    [Fact]
    public void A_file_or_folder_that_is_a_link_is_neither_written_nor_replaced()
    {
        using var outside = new ImportBench();
        using var bench = new ImportBench();
        bench.Write("cards.yaml", Old);
        Directory.CreateSymbolicLink(bench.PathOf("more"), outside.Folder);
        var problem = Assert.Throws<IOException>(() => CollectionWriter.Write(bench.Folder, Changes));
        Assert.Equal($"{bench.PathOf("more")} is a link, and the collection reads and writes no links. Put the file itself in its place", problem.Message);
        Assert.Equal((Old, false), (bench.Texts()["cards.yaml"], File.Exists(outside.PathOf("sources.yaml"))));
    }

    [Fact]
    public void Two_imports_at_once_do_not_mix()
    {
        using var bench = Stopped(0);
        using (FileLock.Take(bench.PathOf(".import-locked"), "held"))
        {
            var problem = Assert.ThrowsAny<IOException>(() => CollectionWriter.Write(bench.Folder, Changes));
            Assert.Equal($"Another import is writing to {bench.Folder}. Wait until it has finished", problem.Message);
        }

        CollectionWriter.Write(bench.Folder, Changes);
        Assert.Equal(New, bench.Texts()["cards.yaml"]);
    }

    private static ImportBench Stopped(int after)
    {
        var bench = new ImportBench();
        bench.Write("cards.yaml", System.Text.Encoding.UTF8.GetBytes(Old));
        var steps = CollectionWriter.Steps(bench.Folder, Changes).ToList();
        Assert.Equal(StepCount, steps.Count);
        foreach (var step in steps.Take(after))
            step();
        return bench;
    }
}
