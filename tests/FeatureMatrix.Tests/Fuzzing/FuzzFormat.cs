namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>A format that the program reads, for feeding it inputs.</summary>
/// <param name="Name">What the figures call it.</param>
/// <param name="Share">Inputs of this format in a campaign of 1,000,000 of all.</param>
/// <param name="Read">Reads one input and checks what must hold of any answer. True where it got past the first stage of parsing.</param>
/// <param name="Input">The input of a number.</param>
internal sealed record FuzzFormat(string Name, int Share, Func<byte[], bool> Read, Func<int, byte[]> Input);

/// <summary>What came of feeding one format.</summary>
/// <param name="Inputs">How many were read.</param>
/// <param name="Passed">How many got past the first stage.</param>
/// <param name="Slowest">The longest time one took, the shortest of three tries where it seemed long, in milliseconds.</param>
/// <param name="MostAllocated">The most memory one allocated in all, in bytes.</param>
internal sealed record FuzzFigures(int Inputs, int Passed, double Slowest, long MostAllocated)
{
    /// <summary>Feeds a range of inputs; what a reader throws is thrown on with the number that finds the input again.</summary>
    public static FuzzFigures Of(FuzzFormat format, int first, int count)
    {
        var (passed, slowest, most) = (0, 0.0, 0L);
        for (var number = first; number < first + count; number++)
        {
            var input = format.Input(number);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var (isPassed, milliseconds) = Timed(format, input, number);
            most = Math.Max(most, GC.GetAllocatedBytesForCurrentThread() - before);
            // Another process may have had the processor: only what is slow three times is slow.
            for (var again = 0; again < 2 && milliseconds > 300; again++)
                milliseconds = Math.Min(milliseconds, Timed(format, input, number).Milliseconds);
            slowest = Math.Max(slowest, milliseconds);
            passed += isPassed ? 1 : 0;
        }

        return new FuzzFigures(count, passed, slowest, most);
    }

    private static (bool IsPassed, double Milliseconds) Timed(FuzzFormat format, byte[] input, int number)
    {
        var start = System.Diagnostics.Stopwatch.GetTimestamp();
        try
        {
            return (format.Read(input), System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        catch (Exception problem)
        {
            throw new InvalidOperationException($"{format.Name} input {number} ({input.Length} bytes): {Convert.ToBase64String(input.AsSpan(0, Math.Min(input.Length, 3000)))}", problem);
        }
    }
}
