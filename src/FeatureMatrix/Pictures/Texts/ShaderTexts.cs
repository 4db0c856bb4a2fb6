namespace FeatureMatrix.Pictures.Texts;

/// <summary>The words of the pictures of geometry, shaders and surfaces.</summary>
internal static class ShaderTexts
{
    public static readonly IReadOnlyDictionary<string, PictureText> All = new Dictionary<string, PictureText>
    {
        ["vs-version"] = new("Vertex shaders",
            "The waves are shaped by a vertex shader. Without it the sea is a flat sheet.",
            new("with vertex shaders", "A boat tilting on a choppy sea."),
            new("without vertex shaders", "The same boat on a flat, still sea."),
            "The title has no waves worked out by the processor to fall back on."),
        ["ps-version"] = new("Pixel shaders",
            "Per-pixel water mirrors the hills, glitters in the sun and lets the bottom show. Without, it is a plain picture.",
            new("with pixel shaders", "Water with glittering sun, mirrored hills and paving seen below the surface."),
            new("without pixel shaders", "The same bay as a plain blue texture."),
            "Reflection, angle and sparkle are computed at every pixel at full precision, more than the first versions allowed."),
        ["vtx-blend"] = new("Vertex blending (skinning)",
            "Look at the elbow: with blending the skin bends; without, two stiff pieces poke through each other.",
            new("with blending", "A bent arm with a smooth, round elbow."),
            new("without blending", "The same arm as two tubes that meet in a torn corner."),
            "Two bones; without blending every corner follows one bone only."),
        ["point-sprite"] = new("Point sprites",
            "Sparks are points that carry a picture. Without point sprites they are hard squares.",
            new("with point sprites", "A fountain of soft glowing sparks over a brazier."),
            new("plain points", "The same sparks as hard orange squares."),
            "The title does not draw the sparks as textured triangles instead."),
        ["npatch"] = new("Curved-surface tessellation",
            "Look at the outline of the vase: the card rounds the coarse model; without that it keeps its corners.",
            new("with tessellation", "A round vase on a stone block."),
            new("without tessellation", "The same vase with an angular outline."),
            "Both have the same smooth shading; the coarse model has six sides in six rings."),
        ["float-target"] = new("Floating-point render target",
            "Look around the bright window: light beyond white can glow and be toned; in 8 bits it is cut off.",
            new("floating-point target", "A dark hall with a bright window that glows softly over its surroundings."),
            new("8-bit target", "The same window as a hard white square with glaring bricks around it."),
            "Glare is a blurred copy of all light above white; tone is 1 - exp(-1.4 c)."),
        ["render-to-texture"] = new("Render to texture",
            "The monitor shows a live view of the yard. Without render-to-texture it stays blank.",
            new("with render to texture", "A monitor that shows a yard with a figure."),
            new("without it", "The same monitor, black."),
            "The title leaves the screen blank; others copy the frame buffer, which is slower."),
        ["occlusion-query"] = new("Occlusion query",
            "The sun is behind the tower. Without the query the title cannot know and draws its flare over the wall.",
            new("with occlusion query", "A tower on a meadow; the sun is hidden behind it."),
            new("without occlusion query", "A glaring sun and coloured rings shine through the tower."),
            "The title draws the flare wherever the sun is in view and asks the card only whether it is hidden."),
    };
}
