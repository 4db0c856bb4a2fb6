namespace FeatureMatrix.Pictures.Texts;

/// <summary>The words of the pictures of antialiasing and the screen.</summary>
internal static class ScreenTexts
{
    public static readonly IReadOnlyDictionary<string, PictureText> All = new Dictionary<string, PictureText>
    {
        ["aa-multisample"] = new("Multisample antialiasing",
            "Look at the rigging and the sails: smooth with four samples, broken stair-steps with one.",
            new("4 samples a pixel", "A sailing ship with fine, even ropes."),
            new("1 sample a pixel", "The same ship with dotted ropes and jagged edges."),
            "Four samples on a turned grid; pixels are shown at twice their size."),
        ["aa-sort-independent"] = new("Full-scene antialiasing",
            "Look at the arch and the diagonal beams: softer steps with antialiasing, jagged without.",
            new("with antialiasing", "A red lattice bridge with softened edges."),
            new("without antialiasing", "The same bridge with jagged beams."),
            "Two samples a pixel; pixels are shown at twice their size."),
        ["aa-edge"] = new("Line antialiasing",
            "Look at the lines of the globe: even with antialiasing, stepped and gritty without.",
            new("with line antialiasing", "A green wire globe and grid with smooth lines."),
            new("without line antialiasing", "The same globe and grid with stepped lines."),
            "Lines about one pixel wide; pixels are shown at twice their size."),
        ["gamma-ramp"] = new("Gamma ramp",
            "The brightness slider works through the gamma ramp. Without it dark scenes stay dark.",
            new("slider obeyed", "A brick cellar with crates, bright enough to see the end."),
            new("slider does nothing", "The same cellar, its far end too dark to see."),
            "A gamma of 2 on all channels."),
        ["overlay-yuv"] = new("Hardware video overlay",
            "A small film shown full screen: the overlay smooths it while enlarging; without, each stored pixel is a block.",
            new("through the overlay", "A lake scene, soft but even."),
            new("copied by the processor", "The same scene in large square blocks."),
            "A film of 80 × 50 pixels enlarged six times; without the overlay nothing smooths it. The overlay's coarser colour is not drawn."),
    };
}
