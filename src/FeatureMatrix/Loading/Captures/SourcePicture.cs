namespace FeatureMatrix.Loading.Captures;

/// <summary>A picture file that lies in a collection's folder. It is read only if a capture names it.</summary>
/// <param name="Path">Its place, as that of a <see cref="Texts.SourceText"/>.</param>
/// <param name="Read">Its first bytes, no more than asked for. May fail as reading files does.</param>
public sealed record SourcePicture(string Path, Func<int, byte[]> Read);
