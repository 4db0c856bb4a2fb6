using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace FeatureMatrix.Pictures;

/// <summary>What one pane of an illustration is and shows, in words.</summary>
/// <param name="Heading">A few words to stand over the pane, such as "with table fog".</param>
/// <param name="AltText">What the pane shows, for those who do not see it.</param>
public sealed record PaneText(string Heading, string AltText);

/// <summary>
/// One invented scene drawn twice, with and without a rendering feature, everything else being equal. Computed, never a
/// screenshot of any card or title; <see cref="Assumptions"/> say what was taken for granted. Pairs may be drawn on several threads at once.
/// </summary>
public sealed class IllustrationPair
{
    /// <summary>Changes with the code of this folder, which the build writes into the library.</summary>
    private static readonly string Code = typeof(IllustrationPair).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(one => one.Key == "PictureCode").Value!;

    private readonly Scene scene;
    private readonly PictureText text;

    internal IllustrationPair(Scene scene, PictureText text)
    {
        this.scene = scene;
        this.text = text;
        ContentKey = KeyOf(scene, text);
    }

    /// <summary>What every such picture must be labelled as.</summary>
    public static string Label => PictureTexts.Label;

    /// <summary>Kebab-case name of the picture, unique in the catalogue and fit for a file name.</summary>
    public string Id => scene.Id;

    /// <summary>The feature of the vocabulary that differs between the panes.</summary>
    public string FeatureId => scene.FeatureId;

    /// <summary>What is compared, a few words.</summary>
    public string Title => text.Title;

    /// <summary>Where to look and what the difference means, one or two sentences.</summary>
    public string LookFor => text.LookFor;

    /// <summary>The words of the pane with the feature.</summary>
    public PaneText With => text.With;

    /// <summary>The words of the pane without it.</summary>
    public PaneText Without => text.Without;

    /// <summary>What the scene takes for granted, a sentence each; never empty.</summary>
    public IReadOnlyList<string> Assumptions => text.Assumptions;

    /// <summary>
    /// A key for caching drawn files: it changes with the scene's name, its words, and with any change of the code that draws, so a cached
    /// file never outlives the renderer that drew it. Not for publication: it follows the code, not the picture.
    /// </summary>
    public string ContentKey { get; }

    /// <summary>The pane with the feature, 480 × 300 pixels. Drawn anew at each call, the same every time.</summary>
    public Picture DrawWith() => scene.Draw(true);

    /// <summary>The pane without the feature, 480 × 300 pixels. Drawn anew at each call, the same every time.</summary>
    public Picture DrawWithout() => scene.Draw(false);

    /// <summary>Both panes with headings and label on one frame of 1920 × 1080 pixels.</summary>
    public Picture DrawForVideo() => VideoFrame.Compose(this, DrawWith(), DrawWithout());

    private static string KeyOf(Scene scene, PictureText text)
    {
        var all = string.Join('\n', [Code, scene.Id, scene.FeatureId, PictureTexts.Label, text.Title, text.LookFor,
            text.With.Heading, text.With.AltText, text.Without.Heading, text.Without.AltText, .. text.Assumptions]);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)).AsSpan(0, 16));
    }
}
