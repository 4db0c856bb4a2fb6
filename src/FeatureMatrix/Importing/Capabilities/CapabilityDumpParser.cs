using System.Text;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Capabilities;

/// <summary>Reads the lines of a dump; src/probe/README.md is the definition it follows.</summary>
internal sealed class CapabilityDumpParser
{
    /// <summary>A file is read to this length; a real dump is a few hundred kilobytes at most.</summary>
    public const int LongestFile = 4 * 1024 * 1024;

    /// <summary>The longest line in bytes.</summary>
    public const int LongestLine = 8192;

    private const int LongestKept = 400;
    private const string FirstLine = "capability-dump 1";

    private readonly ImportFaults _faults = new();
    private readonly List<DumpSection> _sections = [];
    private readonly HashSet<(string Kind, EquatableList<uint> Ordinals)> _opened = [];
    private readonly HashSet<(string Structure, string Field)> _fields = [];
    private readonly List<DumpEntry> _entries = [];
    private (string Kind, EquatableList<uint> Ordinals, int Line)? _open;
    private string _madeBy = "";
    private bool _ended;
    private int _line;

    public static CapabilityDump Parse(ReadOnlySpan<byte> file)
    {
        var parser = new CapabilityDumpParser();
        return parser.Read(file);
    }

    private CapabilityDump Read(ReadOnlySpan<byte> file)
    {
        if (file.StartsWith("\uFEFF"u8))
            file = file[3..];
        var isCut = file.Length > LongestFile;
        if (isCut)
            file = file[..LongestFile];

        foreach (var range in file.Split((byte)'\n'))
        {
            _line++;
            var bytes = file[range];
            if (bytes.EndsWith("\r"u8))
                bytes = bytes[..^1];
            if (_line == 1)
            {
                if (!bytes.SequenceEqual(Encoding.ASCII.GetBytes(FirstLine)))
                {
                    _faults.Add(ImportFaultKind.NotThisFormat, 1, 1, Latin(bytes));
                    return new CapabilityDump(new([]), "", false, _faults.ToList());
                }

                continue;
            }

            ReadLine(bytes);
        }

        CloseSection();
        if (isCut)
            _faults.Add(ImportFaultKind.FileTooLong, _line, 1, "");
        else if (!_ended)
            _faults.Add(ImportFaultKind.NoEnd, _line, 1, LastStep());
        return new CapabilityDump(new(_sections), _madeBy, _ended, _faults.ToList());
    }

    private void ReadLine(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty || bytes[0] == '#')
            return;
        if (_ended)
        {
            _faults.Add(ImportFaultKind.AfterEnd, _line, 1, Latin(bytes));
            return;
        }

        if (bytes.Length > LongestLine)
        {
            Keep(bytes, ImportFaultKind.LineTooLong, LongestLine + 1, "");
            return;
        }

        var bad = bytes.IndexOfAnyExceptInRange((byte)0x20, (byte)0x7E);
        if (bad >= 0)
        {
            Keep(bytes, ImportFaultKind.BadByte, bad + 1, $"0x{bytes[bad]:X2}");
            return;
        }

        var text = Encoding.ASCII.GetString(bytes);
        var reader = new DumpLineReader(text, _line);
        var keyword = reader.Word("a word");
        switch (keyword)
        {
            case "section":
                OpenSection(reader, bytes);
                return;
            case "end":
                reader.End();
                if (reader.Fault is { } fault)
                    Keep(bytes, fault.Kind, fault.Column, fault.Found);
                else
                    _ended = true;
                return;
            case "text" when _open is null:
                ReadPreamble(reader, bytes);
                return;
        }

        var entry = DumpLines.Read(keyword, reader);
        if (entry is null)
            Keep(bytes, reader.Fault?.Kind ?? ImportFaultKind.UnknownKeyword, reader.Fault?.Column ?? 1, reader.Fault?.Found ?? keyword);
        else if (_open is null)
            Keep(bytes, ImportFaultKind.OutsideSection, 1, keyword);
        else
            Add(entry);
    }

    private void Add(DumpEntry entry)
    {
        switch (entry)
        {
            case FieldEntry field:
                if (!_fields.Add((field.Structure, field.Field)))
                {
                    _faults.Add(ImportFaultKind.RepeatedField, _line, 7, $"{field.Structure}.{field.Field}");
                    return;
                }

                if (CapabilityStructures.Find(field.Structure)?.Member(field.Field) is { } member && member.Bytes != field.Bytes)
                {
                    _faults.Add(ImportFaultKind.WrongFieldWidth, _line, 7, $"{field.Structure}.{field.Field}");
                    return;
                }

                break;
            case SizeEntry size when CapabilityStructures.Find(size.Structure) is { } known && !known.Sizes.Contains((int)size.Bytes):
                _faults.Add(ImportFaultKind.WrongStructureSize, _line, 6, size.Structure);
                break;
        }

        _entries.Add(entry);
    }

    private void OpenSection(DumpLineReader reader, ReadOnlySpan<byte> bytes)
    {
        var kind = reader.Word("the kind of section");
        var ordinals = new List<uint>();
        while (!reader.AtEnd)
            ordinals.Add(reader.Decimal("a number"));
        if (reader.Fault is { } fault)
        {
            Keep(bytes, fault.Kind, fault.Column, fault.Found);
            return;
        }

        CloseSection();
        _open = (kind, new(ordinals), _line);
        if (!_opened.Add((kind, _open.Value.Ordinals)))
            _faults.Add(ImportFaultKind.RepeatedSection, _line, 1, kind);
    }

    private void CloseSection()
    {
        if (_open is var (kind, ordinals, line))
            _sections.Add(new DumpSection(kind, ordinals, line, new(_entries)));
        _entries.Clear();
        _fields.Clear();
    }

    /// <summary>Before the first section only the maker of the file may be named.</summary>
    private void ReadPreamble(DumpLineReader reader, ReadOnlySpan<byte> bytes)
    {
        var entry = DumpLines.Read("text", reader);
        if (entry is TextEntry { Key: "made-by" } maker)
            _madeBy = maker.Value;
        else
            Keep(bytes, reader.Fault?.Kind ?? ImportFaultKind.OutsideSection, reader.Fault?.Column ?? 1, reader.Fault?.Found ?? "text");
    }

    private void Keep(ReadOnlySpan<byte> bytes, ImportFaultKind kind, int column, string found)
    {
        _faults.Add(kind, _line, column, found);
        if (_open is not null)
            _entries.Add(new UnknownEntry(_line, Latin(bytes)));
    }

    private string LastStep() =>
        _sections.SelectMany(s => s.Entries).OfType<StepEntry>().LastOrDefault()?.Call ?? "";

    private static string Latin(ReadOnlySpan<byte> bytes) =>
        Encoding.Latin1.GetString(bytes.Length > LongestKept ? bytes[..LongestKept] : bytes);
}
