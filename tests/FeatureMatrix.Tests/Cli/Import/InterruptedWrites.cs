using FeatureMatrix.Cli;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>Whoever stops an import finds each file as it was or as it is to be, and a collection that loads.</summary>
public sealed class InterruptedWrites
{
    private const string Old = "chips: {ox-4: {name: OX-4, source: A book}}\n";
    private const string New = "chips: {ox-4: {name: OX-4, source: A book}}\ncards:\n  ox4: {name: Ostrel 4, chip: ox-4, source: dump-1}\n";
    private const string Sources = "sources:\n  dump-1: {text: A dump}\n";

    [Fact]
    public void After_any_number_of_steps_each_file_is_whole_and_the_collection_loads()
    {
        FileChange[] changes = [new("more/sources.yaml", null, Sources), new("cards.yaml", Old, New)];
        for (var stopAfter = 0; stopAfter <= 7; stopAfter++)
        {
            using var bench = new ImportBench();
            bench.Write("cards.yaml", Old);
            var steps = CollectionWriter.Steps(bench.Folder, changes).ToList();
            Assert.Equal(7, steps.Count);
            foreach (var step in steps.Take(stopAfter))
                step();
            var texts = bench.Texts();
            Assert.Equal(stopAfter == 7 ? New : Old, texts["cards.yaml"]);
            Assert.Equal(stopAfter >= 3 ? Sources : null, texts.GetValueOrDefault("more/sources.yaml"));
            Assert.Equal(stopAfter == 7 ? 1 : 0, bench.Load().Cards.Count);
            if (stopAfter >= 6)
                Assert.Equal(Old, File.ReadAllText(bench.PathOf("cards.yaml.before")));

            // A second try finishes what the first began.
            CollectionWriter.Write(bench.Folder, changes);
            Assert.Equal(New, File.ReadAllText(bench.PathOf("cards.yaml")));
            Assert.Empty(Directory.GetFiles(bench.Folder, ".*", SearchOption.AllDirectories));
        }
    }
}
