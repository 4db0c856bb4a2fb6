using System.Text;

namespace FeatureMatrix.Importing.Executables;

/// <summary>A word of ASCII text in a binary file.</summary>
internal readonly record struct TextToken(string Text, long Offset);

/// <summary>Finds words of letters, digits, underscores and dots in any bytes, one or two bytes a character.</summary>
internal static class TextTokens
{
    private const int Shortest = 5;
    private const int Longest = 128;

    /// <summary>The words of five to 128 characters, in the order of the file.</summary>
    public static IEnumerable<TextToken> In(ReadOnlyMemory<byte> file)
    {
        for (var at = 0; at < file.Length;)
        {
            var bytes = file.Span[at..];
            var length = Length(bytes, 1);
            // A single character with a zero byte after it may begin a two-byte word.
            var wide = length == 1 ? Length(bytes, 2) : 0;
            var (characters, stride) = wide > 1 ? (wide, 2) : (length, 1);
            if (characters is >= Shortest and <= Longest)
                yield return new TextToken(Text(bytes, characters, stride), at);
            at += Math.Max(1, characters * stride);
        }
    }

    private static int Length(ReadOnlySpan<byte> bytes, int stride)
    {
        var count = 0;
        while (((count + 1) * stride) <= bytes.Length && IsWord(bytes[count * stride]) && (stride == 1 || bytes[(count * stride) + 1] == 0))
            count++;
        return count;
    }

    private static string Text(ReadOnlySpan<byte> bytes, int characters, int stride)
    {
        var text = new StringBuilder(characters);
        for (var i = 0; i < characters; i++)
            text.Append((char)bytes[i * stride]);
        return text.ToString();
    }

    private static bool IsWord(byte b) => char.IsAsciiLetterOrDigit((char)b) || b is (byte)'_' or (byte)'.';
}
