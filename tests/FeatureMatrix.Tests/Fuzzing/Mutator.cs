namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>
/// Makes inputs out of good ones: mostly small slips that a reader gets past (a word for another, a line lost, doubled or moved,
/// a number changed), sometimes rough damage (bytes flipped, pieces cut, control characters, text of another seed).
/// </summary>
internal sealed class Mutator(IReadOnlyList<byte[]> seeds, IReadOnlyList<byte[]> words)
{
    /// <summary>Longest input; what is longer has tests of its own.</summary>
    public const int Longest = 64 * 1024;

    private static readonly byte[][] Rough =
    [
        "\0"u8.ToArray(), [0xFF], [0xC0, 0xAF], [0xED, 0xA0, 0x80], "\u2028"u8.ToArray(), "\r"u8.ToArray(), "\n\n\n"u8.ToArray(), "\t"u8.ToArray(), "\x1b[31m"u8.ToArray(),
        "&a "u8.ToArray(), "*a "u8.ToArray(), "!!x "u8.ToArray(), "{{"u8.ToArray(), "}}"u8.ToArray(), "[["u8.ToArray(), "\""u8.ToArray(), "'"u8.ToArray(), "\\"u8.ToArray(), "%"u8.ToArray(), "<"u8.ToArray(), "&lt;"u8.ToArray(),
        "4294967295"u8.ToArray(), "-1"u8.ToArray(), "99999999999999999999"u8.ToArray(), "1e999"u8.ToArray(), "NaN"u8.ToArray(), "0x"u8.ToArray(), "=cmd()"u8.ToArray(), "\uFEFF"u8.ToArray(),
    ];

    /// <summary>The input of this number; the same each time.</summary>
    public byte[] Input(int number)
    {
        var random = new Random(unchecked((number * 7919) + 20_261_125));
        var bytes = seeds[random.Next(seeds.Count)].ToList();
        for (var changes = random.Next(1, 5); changes > 0 && bytes.Count > 0; changes--)
            Change(bytes, random, isRough: random.Next(6) == 0);
        return [.. bytes.Take(Longest)];
    }

    private void Change(List<byte> bytes, Random random, bool isRough)
    {
        var at = random.Next(bytes.Count);
        if (isRough)
        {
            switch (random.Next(5))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes.InsertRange(at, Rough[random.Next(Rough.Length)]);
                    break;
                case 2:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 60), bytes.Count - at));
                    break;
                case 3:
                    bytes.InsertRange(at, Enumerable.Repeat(bytes[at], random.Next(1, 300)).ToList());
                    break;
                default:
                    bytes.RemoveRange(at, bytes.Count - at);
                    break;
            }

            return;
        }

        var (start, end) = Line(bytes, at);
        switch (random.Next(5))
        {
            case 0:
                bytes.RemoveRange(start, end - start);
                break;
            case 1:
                bytes.InsertRange(end, bytes.GetRange(start, end - start));
                break;
            case 2:
                var moved = bytes.GetRange(start, end - start);
                bytes.RemoveRange(start, end - start);
                bytes.InsertRange(Line(bytes, bytes.Count == 0 ? 0 : random.Next(bytes.Count)).Start, moved);
                break;
            default:
                var (first, last) = Word(bytes, at);
                bytes.RemoveRange(first, last - first);
                bytes.InsertRange(first, words[random.Next(words.Count)]);
                break;
        }
    }

    private static (int Start, int End) Line(List<byte> bytes, int at)
    {
        if (bytes.Count == 0)
            return (0, 0);
        var start = bytes.LastIndexOf((byte)'\n', Math.Min(at, bytes.Count - 1)) + 1;
        var end = start >= bytes.Count ? -1 : bytes.IndexOf((byte)'\n', start);
        return (Math.Min(start, bytes.Count), end < 0 ? bytes.Count : end + 1);
    }

    private static (int Start, int End) Word(List<byte> bytes, int at)
    {
        var (start, end) = (at, at);
        while (start > 0 && IsWord(bytes[start - 1]))
            start--;
        while (end < bytes.Count && IsWord(bytes[end]))
            end++;
        return (start, end);
    }

    private static bool IsWord(byte b) => char.IsAsciiLetterOrDigit((char)b) || b is (byte)'.' or (byte)'-' or (byte)'_';
}
