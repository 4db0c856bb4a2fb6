using FeatureMatrix.Loading;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>What the project brings along loads by itself.</summary>
public sealed class The_collections_in_the_repository
{
    [Fact]
    public void Demo_and_vocabulary_load_without_a_fault()
    {
        var texts = CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary"));

        var result = CollectionLoader.Load(texts.Files, texts.Faults);

        Assert.Equal("", string.Join('\n', result.Faults));
        Assert.NotEmpty(result.Catalog!.Observations);
        Assert.NotEmpty(result.Catalog.Runs);
    }
}
