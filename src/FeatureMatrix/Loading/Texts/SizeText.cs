namespace FeatureMatrix.Loading.Texts;

/// <summary>Sizes of memory, written as in the files of a collection.</summary>
public static class SizeText
{
    /// <summary>The bytes that a text such as <c>16MiB</c> or <c>512 KiB</c> stands for; null where it is no size or none at all.</summary>
    public static long? Bytes(string text) => Quantities.WithUnit(text, Quantities.SizeUnits) is { } bytes and > 0 ? (long)Math.Round(bytes) : null;
}
