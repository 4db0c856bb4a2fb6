using System.Buffers.Binary;
using Microsoft.Win32.SafeHandles;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>
/// The answer, the same bytes from every engine: for each title one byte for each setup, the place of its best route or 255 where none may
/// run; then for each setup the counts over all titles.
/// </summary>
internal sealed class AnswerFile : IDisposable
{
    private readonly SafeFileHandle _file;
    private readonly int _titles;
    private readonly int _setups;

    public AnswerFile(string path, int titles, int setups)
    {
        (_titles, _setups) = (titles, setups);
        _file = File.OpenHandle(path, FileMode.Create, FileAccess.Write);
    }

    /// <summary>Writes the best routes of one title, or of several one after the other, on all setups. May be called from several threads.</summary>
    public void WriteTitles(int first, ReadOnlySpan<byte> routes) => RandomAccess.Write(_file, routes, (long)first * _setups);

    /// <summary>Writes the counts.</summary>
    public void WriteCounts(IReadOnlyList<SetupCounts> counts)
    {
        var bytes = new byte[counts.Count * SetupCounts.Bytes];
        for (var i = 0; i < counts.Count; i++)
            counts[i].Write(bytes.AsSpan(i * SetupCounts.Bytes));
        RandomAccess.Write(_file, bytes, (long)_titles * _setups);
    }

    public void Dispose() => _file.Dispose();
}

/// <summary>What is counted for each setup. The sums of the codes of both ends stand for all the ranges: engines that differ in one cell differ here.</summary>
internal record struct SetupCounts(int RunAtWorst, int RunAtBest, int CompleteAtWorst, int CompleteAtBest, long WorstCodes, long BestCodes)
{
    public const int Bytes = (4 * sizeof(int)) + (2 * sizeof(long));

    /// <summary>Counts one cell.</summary>
    public void Add(int worst, int best, int times = 1)
    {
        RunAtWorst += worst < 0x8000 ? times : 0;
        RunAtBest += best < 0x8000 ? times : 0;
        CompleteAtWorst += worst == 0 ? times : 0;
        CompleteAtBest += best == 0 ? times : 0;
        WorstCodes += (long)worst * times;
        BestCodes += (long)best * times;
    }

    /// <summary>Both counts together.</summary>
    public readonly SetupCounts With(SetupCounts other) => new(
        RunAtWorst + other.RunAtWorst, RunAtBest + other.RunAtBest, CompleteAtWorst + other.CompleteAtWorst, CompleteAtBest + other.CompleteAtBest,
        WorstCodes + other.WorstCodes, BestCodes + other.BestCodes);

    public readonly void Write(Span<byte> bytes)
    {
        BinaryPrimitives.WriteInt32LittleEndian(bytes, RunAtWorst);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[4..], RunAtBest);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[8..], CompleteAtWorst);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[12..], CompleteAtBest);
        BinaryPrimitives.WriteInt64LittleEndian(bytes[16..], WorstCodes);
        BinaryPrimitives.WriteInt64LittleEndian(bytes[24..], BestCodes);
    }
}
