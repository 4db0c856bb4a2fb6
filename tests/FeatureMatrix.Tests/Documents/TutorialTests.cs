using FeatureMatrix.Tests.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Documents;

public sealed class The_tutorial : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Comes_out_word_for_word_as_it_is_printed()
    {
        var path = Repository.PathTo("data", "TUTORIAL.md");
        var tutorial = File.ReadAllText(path).ReplaceLineEndings("\n");

        var followed = Walkthrough.Follow(tutorial, _folder.Path);

        if (Environment.GetEnvironmentVariable("UPDATE_GOLDENS") == "1")
            File.WriteAllText(path, followed);
        else
            Assert.Equal(tutorial, followed);
        Assert.True(File.Exists(_folder["reed-bench/edition/index.html"]));
        Assert.True(File.Exists(_folder["reed-bench/edition/coverage/salt-road/reed-8.html"]));
    }
}
