namespace FeatureMatrix.Loading;

/// <summary>One file of a collection, already in memory.</summary>
/// <param name="Path">Its place below the collection's folder, with <c>/</c> between the parts; only used in messages and for the order.</param>
/// <param name="Text">Its text.</param>
public sealed record SourceText(string Path, string Text);
