using FeatureMatrix.Loading;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Measuring;

/// <summary>Vocabularies to read reports with.</summary>
internal static class Vocabularies
{
    private static readonly Evidence Nobody = new(Grade.Documented, null, Origin.None);

    public static Feature Direct3D { get; } = Api("direct3d", "3", "5", "6", "7", "8", "8.1", "9");

    public static Feature OpenGl { get; } = Api("opengl", "1.1", "1.2", "1.3", "1.4", "1.5", "2.0", "2.1");

    /// <summary>The project's own, data/vocabulary.</summary>
    public static IReadOnlyList<Feature> Ours() =>
        CollectionLoader.Load(CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null).Files).Catalog!.Features;

    public static Feature Flag(string id, Detection how) => Made(id, [], how);

    public static Feature Ladder(string id, string[] levels, Detection how) => Made(id, levels, how);

    public static Detection By(int generation, string field, string constant = "", uint value = 0, bool inverted = false) =>
        new() { Direct3D = [new(generation, field, constant, value, inverted)] };

    private static Feature Made(string id, string[] levels, Detection how) =>
        new() { Id = id, Name = id, Family = "test", Levels = levels, Detection = how, Evidence = Nobody };

    private static Feature Api(string id, params string[] levels) =>
        new() { Id = id, Name = id, Family = "api", Levels = levels, IsApi = true, Evidence = Nobody };
}
