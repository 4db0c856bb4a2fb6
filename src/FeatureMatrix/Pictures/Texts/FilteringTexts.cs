namespace FeatureMatrix.Pictures.Texts;

/// <summary>The words of the pictures of filtering.</summary>
internal static class FilteringTexts
{
    public static readonly IReadOnlyDictionary<string, PictureText> All = new Dictionary<string, PictureText>
    {
        ["filter-bilinear"] = new("Bilinear filtering",
            "Look at the near crate: smooth blur with filtering, hard square blocks without.",
            new("bilinear filtering", "Two crates before a brick wall, their small textures smoothly enlarged."),
            new("nearest texel only", "The same crates, drawn in visible squares with stair-stepped diagonals."),
            "Crate textures of 32 × 32 texels, wall and floor of 64 × 64; no mipmaps."),
        ["filter-mipmap"] = new("Mipmapping",
            "Look far down the hall: without mipmaps the bricks break into a false pattern that sparkles as you move.",
            new("with mipmaps", "A tiled hall whose far walls and floor blend to an even tone."),
            new("without mipmaps", "The same hall; far bricks and tiles break into noisy dots and ripples."),
            "Bilinear reading in both; pixels are shown at twice their size."),
        ["filter-trilinear"] = new("Trilinear filtering",
            "Look at the gravel in the foreground: without blending between copies, sharpness jumps at visible lines.",
            new("with trilinear filtering", "A gravel plain that grows smoother evenly towards the horizon."),
            new("bilinear with nearest mipmap", "The same plain with sudden steps from coarse to smooth gravel."),
            "A texture of single-texel grains, the hardest case; pixels are shown at twice their size."),
        ["filter-anisotropic"] = new("Anisotropic filtering",
            "Try to read the road ahead: without it the lettering and bricks smear after the first few metres.",
            new("with 16:1 filtering", "A paved road with the word SLOW painted again and again, readable far ahead."),
            new("trilinear only", "The same road; the lettering smears into grey after the first word."),
            "Up to 16 readings along the longer side of each pixel's footprint, against trilinear filtering."),
        ["filter-lod-bias"] = new("Mipmap detail bias",
            "The title asks for sharper mipmaps. Without the setting, posters and bricks stay soft.",
            new("bias -1.5 obeyed", "A brick wall seen at a slant with three sharp posters."),
            new("bias ignored", "The same wall; the far posters and bricks are soft and hard to read."),
            "Trilinear filtering; the title asks for a level-of-detail bias of -1.5. Sharper also means more sparkle in motion."),
    };
}
