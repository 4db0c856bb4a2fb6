namespace FeatureMatrix.Pictures;

/// <summary>The everyday ways to colour a pixel.</summary>
internal static class Shaders
{
    /// <summary>Texture times vertex colour.</summary>
    public static Shader Textured(Sampler texture) => (in Fragment f) => texture.First(f) * f.Colour;

    /// <summary>Two textures multiplied, the second by its own coordinates: a surface and its light map.</summary>
    public static Shader LightMapped(Sampler surface, Sampler light) => (in Fragment f) => surface.First(f) * light.Second(f) * f.Colour;
}
