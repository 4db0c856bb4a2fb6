using System.Globalization;

namespace FeatureMatrix.Loading.Texts;

/// <summary>
/// Numbers made of digits and nothing else. The framework's own parsers pass over zero characters at the end, which
/// broken files do contain.
/// </summary>
internal static class Digits
{
    /// <summary>The value of one to eight hexadecimal digits, or null.</summary>
    public static uint? Hexadecimal(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
        {
            if (!char.IsAsciiHexDigit(c))
                return null;
        }

        return uint.TryParse(text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value) ? value : null;
    }

    /// <summary>The value of decimal digits up to 4294967295, or null.</summary>
    public static uint? Unsigned(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
        {
            if (!char.IsAsciiDigit(c))
                return null;
        }

        return uint.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : null;
    }

    /// <summary>The value of decimal digits up to 2147483647, or null.</summary>
    public static int? Decimal(ReadOnlySpan<char> text) =>
        Unsigned(text) is { } value and <= int.MaxValue ? (int)value : null;
}
