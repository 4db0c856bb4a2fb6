namespace FeatureMatrix.Loading.Texts;

/// <summary>One file of a collection, already in memory.</summary>
/// <param name="Path">Its place below the collection's folder, with <c>/</c> between the parts; only used in messages and for the order.</param>
/// <param name="Text">Its text.</param>
/// <param name="Layer">
/// 0 for vocabulary and collection; 1 for a collection that it builds on, 2 for one that this builds on, and so on. Of an entity that
/// several layers describe, the keys of the lowest number count.
/// </param>
public sealed record SourceText(string Path, string Text, int Layer = 0);
