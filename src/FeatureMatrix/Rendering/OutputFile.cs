namespace FeatureMatrix.Rendering;

/// <summary>A finished file of an edition.</summary>
/// <param name="Path">Relative to the output folder, with forward slashes.</param>
/// <param name="Bytes">Its content; the same edition gives the same bytes.</param>
public sealed record OutputFile(string Path, byte[] Bytes)
{
    /// <summary>A text file in UTF-8 without byte order mark.</summary>
    public static OutputFile Text(string path, string text) => new(path, System.Text.Encoding.UTF8.GetBytes(text));
}
