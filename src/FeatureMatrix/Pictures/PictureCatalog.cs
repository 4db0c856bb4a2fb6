using FeatureMatrix.Pictures.Scenes;

namespace FeatureMatrix.Pictures;

/// <summary>A scene that can be drawn with (true) and without (false) its feature.</summary>
internal sealed record Scene(string Id, string FeatureId, Func<bool, Picture> Draw);

/// <summary>All illustrations there are. Making the catalogue draws nothing; each picture is drawn when asked for.</summary>
public static class PictureCatalog
{
    private static readonly IReadOnlyList<IllustrationPair> Pairs =
    [
        .. new[] { FogScenes.All, FilteringScenes.All, TextureFormatScenes.All, TextureShapeScenes.All, DepthScenes.All, BlendingScenes.All, LightScenes.All, ShaderScenes.All, ScreenScenes.All }
            .SelectMany(scenes => scenes).Select(scene => new IllustrationPair(scene, PictureTexts.For(scene.Id))),
    ];

    private static readonly ILookup<string, IllustrationPair> ByFeature = Pairs.ToLookup(pair => pair.FeatureId);

    /// <summary>Every illustration, in a fixed order, those of one feature one after the other.</summary>
    public static IReadOnlyList<IllustrationPair> All => Pairs;

    /// <summary>The ids of all features that have at least one illustration, in catalogue order.</summary>
    public static IReadOnlyList<string> FeatureIds { get; } = [.. ByFeature.Select(group => group.Key)];

    /// <summary>The illustration that explains a feature best; null where none can honestly show it.</summary>
    public static IllustrationPair? For(string featureId) => ByFeature[featureId].FirstOrDefault();

    /// <summary>All illustrations of a feature, the best first; empty where there is none.</summary>
    public static IReadOnlyList<IllustrationPair> AllFor(string featureId) => [.. ByFeature[featureId]];
}
