namespace FeatureMatrix.Pictures.Texts;

/// <summary>The words of the pictures of light, multitexture and bumps.</summary>
internal static class LightTexts
{
    public static readonly IReadOnlyDictionary<string, PictureText> All = new Dictionary<string, PictureText>
    {
        ["mt-units"] = new("Several textures in one pass",
            "Surface and light map are two textures. A title that only uses one drops the light.",
            new("surface times light map", "A brick hall with pools of lamp light and dark corners."),
            new("surface only", "The same hall, flat and evenly bright."),
            "The title drops its light map where only one texture can be applied; others draw a second, slower pass."),
        ["mt-stages"] = new("Texture-blend stages",
            "More stages allow richer materials: paint, rust, shade and reflection in one. Few stages leave the paint.",
            new("four stages", "Two painted metal balls with rust, shade and a reflected sky."),
            new("one stage", "The same balls in flat paint."),
            "Stages: paint, rust mask, light, reflection; the title keeps the first only."),
        ["mt-combine"] = new("Combine operators (×2)",
            "Lamps should over-brighten what is near them. Without the doubling operator the hall stays dim.",
            new("light doubled", "A brick hall glowing near its lamps."),
            new("plain multiplication", "The same hall, dim throughout."),
            "Light maps are stored at half brightness, so that doubling can exceed the surface's own colour."),
        ["bump-embm"] = new("Environment-mapped bump mapping",
            "Look at the pond: with bump maps the mirrored hills ripple; without, the water is a flat mirror.",
            new("with bump mapping", "A pond with rings of ripples that bend the mirrored hills and sun."),
            new("without bump mapping", "The same pond as a flat, still mirror."),
            "The slopes of the ripples shift where the mirrored surroundings are read."),
        ["bump-embm-lum"] = new("Bump mapping with luminance",
            "Look at the ripples: luminance also shades them bright and dark; without it they look thin.",
            new("with luminance", "A pond whose ripples have bright and dark flanks."),
            new("without luminance", "The same ripples, faint and evenly lit."),
            "The same slopes in both; luminance scales the mirrored picture from 0.3 to 1.3."),
        ["bump-dot3"] = new("Dot-product (DOT3) bump mapping",
            "Look at the wall: stones stand out in the lamp light; without DOT3 the wall is smooth.",
            new("with DOT3", "A wall of raised stones, lit from a lamp at the left."),
            new("without DOT3", "The same wall, smooth as plaster."),
            "The shape of the stones is only in the bump map, not in the surface texture; one lamp, full precision."),
        ["tnl-lights"] = new("Number of lights",
            "Eight lamps hang in the hall. Where only two can be lit at once, the rest glow but light nothing.",
            new("eight lights", "A hall lit in many colours by eight lamps."),
            new("two lights", "The same hall, dark beyond the first two lamps."),
            "Light is worked out at finely spaced corners; the title does not choose other lamps as one walks on."),
    };
}
