namespace FeatureMatrix.Tests.Importing.Fuzzing;

/// <summary>Seeded inputs for parsers: half random bytes, half a good file with bytes changed, lost, doubled or cut off.</summary>
internal static class Rubbish
{
    /// <summary>Feeds a parser; a failure names the input's number, which with the fixed seed finds it again.</summary>
    public static void Feed(int inputs, byte[] good, Action<byte[]> parse)
    {
        for (var i = 0; i < inputs; i++)
        {
            var random = new Random(unchecked((i * 7919) + 20_061_125));
            var input = i % 2 == 0 ? Noise(random) : Mutation(random, good);
            try
            {
                parse(input);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"input {i} ({input.Length} bytes)", e);
            }
        }
    }

    private static byte[] Noise(Random random)
    {
        var bytes = new byte[random.Next(600)];
        random.NextBytes(bytes);
        // Most formats here are text: half the noise is made of the characters that text formats give meaning to.
        if (random.Next(2) == 0)
        {
            const string Meaningful = "[]=,;%\"\\\t\r\n #&_.0123456789abcdefPCIVENDEVSUBSYSNTx";
            for (var i = 0; i < bytes.Length; i++)
                bytes[i] = (byte)Meaningful[bytes[i] % Meaningful.Length];
        }

        return bytes;
    }

    private static byte[] Mutation(Random random, byte[] good)
    {
        var bytes = good.ToList();
        for (var changes = random.Next(1, 9); changes > 0 && bytes.Count > 1; changes--)
        {
            var at = random.Next(bytes.Count);
            var length = Math.Min(random.Next(1, 40), bytes.Count - at);
            switch (random.Next(5))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 2:
                    bytes.RemoveRange(at, length);
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                default:
                    bytes.RemoveRange(at, bytes.Count - at);
                    break;
            }
        }

        return [.. bytes];
    }
}
