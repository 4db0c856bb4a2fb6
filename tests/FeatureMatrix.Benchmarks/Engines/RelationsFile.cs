using System.Runtime.InteropServices;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>A file of <see cref="Relations"/>, read setup by setup, for who need not hold all of it.</summary>
internal sealed class RelationsFile : IDisposable
{
    private readonly FileStream _stream;
    private readonly int[] _numbers;
    private readonly int _titles;

    /// <summary>Opens a file and reads what stands before the setups.</summary>
    public RelationsFile(string path)
    {
        _stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);
        using var reader = new BinaryReader(_stream, System.Text.Encoding.UTF8, leaveOpen: true);
        if (!reader.ReadBytes(Relations.Signature.Length).AsSpan().SequenceEqual(Relations.Signature))
            throw new InvalidDataException($"{path} does not hold relations");
        (Setups, Demands, _titles) = (reader.ReadInt32(), reader.ReadInt32(), reader.ReadInt32());
        Tolls = Enumerable.Range(0, reader.ReadInt32()).Select(_ => new Toll(reader.ReadUInt16(), reader.ReadUInt16(), (BulkMarks)reader.ReadUInt16())).ToList();
        _numbers = new int[reader.ReadInt32()];
        _stream.ReadExactly(MemoryMarshal.AsBytes(_numbers.AsSpan()));
    }

    /// <summary>The number of setups.</summary>
    public int Setups { get; }

    /// <summary>The number of demands.</summary>
    public int Demands { get; }

    /// <summary>The different tolls that occur.</summary>
    public IReadOnlyList<Toll> Tolls { get; }

    /// <summary>For each title its numbers as they stand in the file: the same for titles that ask for the same.</summary>
    public IEnumerable<ReadOnlyMemory<int>> Titles()
    {
        for (int title = 0, at = 0; title < _titles; title++)
        {
            var start = at;
            for (var left = _numbers[at++]; left > 0; left--)
                at += 2 + _numbers[at + 1];
            yield return _numbers.AsMemory(start, at - start);
        }
    }

    /// <summary>The routes of a title, and the ways they lead.</summary>
    public static (int[][] Routes, int[] Ways) Routes(ReadOnlySpan<int> numbers)
    {
        var (routes, ways, at) = (new int[numbers[0]][], new int[numbers[0]], 1);
        for (var i = 0; i < routes.Length; i++)
        {
            ways[i] = numbers[at];
            routes[i] = numbers.Slice(at + 2, numbers[at + 1]).ToArray();
            at += 2 + routes[i].Length;
        }

        return (routes, ways);
    }

    /// <summary>Reads the next setup: for each demand the number of its toll.</summary>
    public void ReadSetup(Span<byte> tolls) => _stream.ReadExactly(tolls);

    public void Dispose() => _stream.Dispose();
}
