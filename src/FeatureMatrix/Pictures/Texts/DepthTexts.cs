namespace FeatureMatrix.Pictures.Texts;

/// <summary>The words of the pictures of depth, stencil and shadows.</summary>
internal static class DepthTexts
{
    public static readonly IReadOnlyDictionary<string, PictureText> All = new Dictionary<string, PictureText>
    {
        ["depth-bits"] = new("Depth-buffer bits",
            "Look at the runway and the roofs: with 16 bits far layers cannot be told apart and break into stripes.",
            new("24-bit depth", "An airfield with a clean runway, white dashes and coloured roofs."),
            new("16-bit depth", "Grass stripes cut through the runway, and roofs are torn by lines."),
            "Layers lie 0.4 units apart; near plane at 0.5, far plane at 1400; the ground is drawn last.",
            "In motion the stripes flicker."),
        ["depth-wbuffer"] = new("W-buffer",
            "Both have 16 bits. The Z-buffer spends them close to the eye, so far windows sink into their walls.",
            new("16-bit W-buffer", "A row of harbour houses with complete windows and doors."),
            new("16-bit Z-buffer", "The same houses; windows and doors are cut to slivers or gone."),
            "Windows lie half a unit before the walls at about 400 units; near plane at 1, far plane at 900."),
        ["depth-bias"] = new("Depth bias",
            "Marks painted on walls and floors need a little push towards the viewer, else they sink in and flicker.",
            new("with depth bias", "Two round marks on a wall and two clean yellow lines on the floor."),
            new("without depth bias", "The marks are torn and the yellow lines are ragged and broken."),
            "Corners of the marks are off the surface by up to a hundredth of a unit, as stored corners are; 16-bit depth."),
        ["stencil-bits"] = new("Stencil buffer: shadows",
            "Shadows counted in the stencil buffer fall across floor, wall and crates. Without it there are none.",
            new("with stencil shadows", "Crates and a figure in a room with sharp shadows on floor and wall."),
            new("without a stencil buffer", "The same room without any shadow."),
            "Shadow volumes counted with 8 bits; the title has no simpler shadow to fall back on."),
        ["stencil-bits-overlap"] = new("Stencil buffer: overlapping shadows",
            "Each spot should darken once. Without the stencil buffer overlapping shadows darken twice and more.",
            new("each pixel darkened once", "A row of pillars with even grey shadows on the pavement."),
            new("darkened at every overlap", "The same shadows, black where they overlap."),
            "Flat shadows blended onto the floor, one for every face of the pillars."),
        ["stencil-wrap"] = new("Wrapping stencil counts",
            "Counting down from 0 must wrap around. Where it stops at 0, shadow is left hanging in the open.",
            new("counts wrap around", "Crates and a figure with correct shadows."),
            new("counts stop at 0", "The same room; false shadow covers the wall beside the tall crate and the floor."),
            "The title draws the far sides of the shadow volumes first."),
        ["shadow-map"] = new("Shadow maps",
            "With depth textures figures cast their own outline. Without, a round blob must do.",
            new("with depth textures", "Two wooden figures and a crate with shadows of their own shape."),
            new("blob shadows", "The same figures with a round dark spot below each."),
            "A shadow map of 384 × 384 read nine times a pixel; the title falls back to blobs."),
    };
}
