using FeatureMatrix.Pictures.Texts;

namespace FeatureMatrix.Pictures;

/// <summary>The words of one illustration.</summary>
internal sealed record PictureText(string Title, string LookFor, PaneText With, PaneText Without, params IReadOnlyList<string> Assumptions);

/// <summary>Every sentence that belongs to a picture, by the picture's id. No file outside the folder Texts carries user wording.</summary>
internal static class PictureTexts
{
    public const string Label = "Computed illustration, not a screenshot";

    // In the order in which pictures of one feature are shown.
    private static readonly Dictionary<string, PictureText> Texts = new IReadOnlyDictionary<string, PictureText>[]
    {
        FogTexts.All,
        FilteringTexts.All,
        TextureFormatTexts.All,
        TextureShapeTexts.All,
        DepthTexts.All,
        BlendingTexts.All,
        LightTexts.All,
        ShaderTexts.All,
        ScreenTexts.All,
    }.SelectMany(texts => texts).ToDictionary(text => text.Key, text => text.Value, StringComparer.Ordinal);

    public static IReadOnlyCollection<string> Ids => Texts.Keys;

    public static PictureText For(string id) => Texts[id];
}
