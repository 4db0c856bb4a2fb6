using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>data/vocabulary by itself, loaded once.</summary>
internal static class VocabularyFixture
{
    private static readonly Lazy<LoadResult> Loaded = new(() =>
    {
        var texts = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), vocabularyFolder: null);
        return CollectionLoader.Load(texts.Files, texts.Faults);
    });

    /// <summary>Faults and warnings of the vocabulary.</summary>
    public static IReadOnlyList<Fault> Faults => Loaded.Value.Faults;

    public static Catalog Catalog
    {
        get
        {
            Assert.NotNull(Loaded.Value.Catalog);
            return Loaded.Value.Catalog;
        }
    }

    /// <summary>Features and APIs.</summary>
    public static IReadOnlyList<Feature> Features => Catalog.Features;

    public static Feature Feature(string id) => Features.Single(feature => feature.Id == id);
}
