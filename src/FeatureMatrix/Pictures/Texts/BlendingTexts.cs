namespace FeatureMatrix.Pictures.Texts;

/// <summary>The words of the pictures of blending, alpha and colour depth.</summary>
internal static class BlendingTexts
{
    public static readonly IReadOnlyDictionary<string, PictureText> All = new Dictionary<string, PictureText>
    {
        ["blend-alpha"] = new("Alpha blending",
            "Look at the smoke and the green pane: without blending they are drawn as a mesh of dots.",
            new("with blending", "A hall with soft smoke and a clear pane of green glass."),
            new("dots instead (stipple)", "Smoke and glass as patterns of solid dots."),
            "The driver replaces blending by a fixed 4 × 4 dot pattern; pixels are shown at twice their size."),
        ["blend-modulate"] = new("Multiplicative blending",
            "Coloured window light and shade are multiplied over the room. Without that the room is flat and bright.",
            new("with multiplication", "A dark hall with light from a coloured window on the floor."),
            new("without multiplication", "The same hall, evenly bright, with no window light."),
            "The title draws light in a second pass and leaves it out where it cannot multiply."),
        ["blend-dest-alpha"] = new("Destination-alpha blending",
            "Reflections belong in the puddles only. Without the mask the whole street becomes a mirror.",
            new("reflections in puddles only", "A street at dusk; houses and lamps are mirrored in dark puddles between dry paving."),
            new("reflection everywhere", "The paving is gone; houses stand mirrored as on glass."),
            "How wet each spot is lies in the frame buffer's alpha; without it the mirror image is drawn over everything."),
        ["blend-op"] = new("Subtractive blending",
            "Dark smoke is subtracted from the sky. Where only adding is possible it turns glaring white.",
            new("subtracted", "Dark smoke from three chimneys."),
            new("added instead", "The same smoke, glaring white."),
            "The title does not check and the driver adds where it should subtract."),
        ["alpha-test"] = new("Alpha test",
            "Trees are pictures with clear corners. Without the test these corners hide the trees and walls behind them.",
            new("with alpha test", "A wood of many trees before two brick buildings."),
            new("without alpha test", "Most far trees are gone; sky and grass show in boxes around the near ones."),
            "Nearest trees are drawn first; the clear corners are blended but still fill the depth buffer."),
        ["dither-16bpp"] = new("Dithering in 16-bit colour",
            "Look around the moon: dithering hides the steps of 16-bit colour in a fine grain; without it rings show.",
            new("16 bit with dithering", "A moonlit night sky with a smooth, slightly grainy glow."),
            new("16 bit without dithering", "The same sky with rings around the moon."),
            "5:6:5 bits with an ordered 4 × 4 pattern, against rounding to the nearest colour; pixels are shown at three times their size."),
        ["render-32bpp"] = new("Drawing in 32-bit colour",
            "Many thin layers of mist: in 16 bits each is rounded, and the errors add up to blotches and a green cast.",
            new("32-bit drawing", "Two crates in soft bluish mist."),
            new("16-bit drawing", "The same mist with rings, blotches and a green cast."),
            "36 layers of 4.5 % each, rounded to 5:6:5 after every layer without dithering; pixels are shown at twice their size."),
        ["specular-separate"] = new("Separate specular highlight",
            "Look at the bright spots: added after the texture they are white; mixed into it they turn dull.",
            new("highlight added last", "Three glazed vases with bright white highlights."),
            new("highlight tinted by texture", "The same vases with dull spots in the colour of the glaze."),
            "One lamp; without the separate colour the highlight is multiplied by the texture."),
    };
}
