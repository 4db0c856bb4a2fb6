using System.Buffers.Binary;
using System.Text;

namespace FeatureMatrix.Importing.Executables;

/// <summary>Why the import table of a file could not be read, or not to its end.</summary>
public enum ExecutableFaultKind
{
    /// <summary>The file does not begin like a DOS or Windows program.</summary>
    NotAProgram,

    /// <summary>A DOS program, or another kind of program than a 32- or 64-bit Windows one; it has no import table.</summary>
    NotPortableExecutable,

    /// <summary>A header or table points outside the file.</summary>
    OutsideFile,

    /// <summary>The table holds more than the limits allow; the rest was not read.</summary>
    TooManyImports,

    /// <summary>The file is longer than <see cref="PortableExecutable.LargestFile"/> and was not read at all.</summary>
    FileTooLarge,
}

/// <summary>One fault and the file offset it was met at.</summary>
public sealed record ExecutableFault(ExecutableFaultKind Kind, long Offset);

/// <summary>One imported function.</summary>
/// <param name="Name">Its name; null where it is imported by number.</param>
/// <param name="Ordinal">Its number; null where it is imported by name.</param>
/// <param name="Offset">File offset of the name, or of the number.</param>
public sealed record ImportedFunction(string? Name, int? Ordinal, long Offset);

/// <summary>One library that a program asks for.</summary>
/// <param name="Name">The library's file name, as written.</param>
/// <param name="Offset">File offset of the name.</param>
/// <param name="Delayed">True where it is loaded at the first call only.</param>
/// <param name="Functions">What is imported from it, in the order of the table.</param>
public sealed record ImportedLibrary(string Name, long Offset, bool Delayed, IReadOnlyList<ImportedFunction> Functions);

/// <summary>
/// The import tables of a Windows program or library. Nothing is executed; any bytes give an answer.
/// Source: Microsoft's PE Format specification, ".idata Section" and "Delay-Load Import Tables".
/// </summary>
/// <param name="Libraries">The libraries in the order of the tables, delay-loaded ones last.</param>
/// <param name="Faults">What kept the tables from being read to their end.</param>
public sealed record PortableExecutable(IReadOnlyList<ImportedLibrary> Libraries, IReadOnlyList<ExecutableFault> Faults)
{
    /// <summary>Longest file that is looked at, 64 MiB: programs of the period are far smaller.</summary>
    public const int LargestFile = 64 * 1024 * 1024;

    /// <summary>Most libraries of one file.</summary>
    public const int MostLibraries = 512;

    /// <summary>Most functions of one file.</summary>
    public const int MostFunctions = 32_768;

    /// <summary>Reads the import tables of a file.</summary>
    public static PortableExecutable Read(ReadOnlySpan<byte> file) => new Reader(file).Run();

    private ref struct Reader(ReadOnlySpan<byte> file)
    {
        private const int ImportDirectory = 1;
        private const int DelayImportDirectory = 13;
        private const int DescriptorSize = 20;
        private const int DelayDescriptorSize = 32;
        private const int LongestName = 512;

        // The limit of the Windows loader: PE Format specification, "COFF File Header".
        private const int MostSections = 96;

        private readonly ReadOnlySpan<byte> _file = file;
        private readonly List<ImportedLibrary> _libraries = [];
        private readonly List<ExecutableFault> _faults = [];
        private int _functions;
        private bool _is64;
        private uint _imageBase;
        private uint _headerSize;
        private int _sections;
        private int _sectionCount;

        public PortableExecutable Run()
        {
            if (_file.Length > LargestFile)
                Fault(ExecutableFaultKind.FileTooLarge, 0);
            else if (!_file.StartsWith("MZ"u8))
                Fault(ExecutableFaultKind.NotAProgram, 0);
            else
                Headers();
            return new PortableExecutable(_libraries, _faults);
        }

        private void Headers()
        {
            if (U32(0x3C) is not { } at || at > int.MaxValue || !Span(at, 24).StartsWith("PE\0\0"u8))
            {
                Fault(ExecutableFaultKind.NotPortableExecutable, 0x3C);
                return;
            }

            var optional = (int)at + 24;
            var magic = U16(optional);
            if (magic is not (0x10B or 0x20B))
            {
                Fault(ExecutableFaultKind.NotPortableExecutable, optional);
                return;
            }

            _is64 = magic == 0x20B;
            _sectionCount = Math.Min((int?)U16(at + 6) ?? 0, MostSections);
            _sections = optional + (U16(at + 20) ?? 0);
            // Addresses in a 32-bit program's delay-load table may be absolute; a 64-bit program's never are.
            _imageBase = _is64 ? 0 : U32(optional + 28) ?? 0;
            _headerSize = U32(optional + 60) ?? 0;
            var directories = optional + (_is64 ? 112 : 96);
            var directoryCount = U32(directories - 4) ?? 0;
            if (directoryCount > ImportDirectory)
                Imports(U32(directories + (8 * ImportDirectory)) ?? 0);
            if (directoryCount > DelayImportDirectory)
                DelayedImports(U32(directories + (8 * DelayImportDirectory)) ?? 0);
        }

        private void Imports(uint table)
        {
            for (var address = table; table != 0; address += DescriptorSize)
            {
                if (Offset(address) is not { } at || Span(at, DescriptorSize) is not { Length: DescriptorSize } descriptor)
                {
                    Fault(ExecutableFaultKind.OutsideFile, Offset(address) ?? 0);
                    return;
                }

                var (lookup, name, bound) = (Word(descriptor, 0), Word(descriptor, 12), Word(descriptor, 16));
                // Some linkers leave the lookup table out and write the names into the address table alone.
                if (name == 0 || !Add(name, lookup != 0 ? lookup : bound, delayed: false, at))
                    return;
            }
        }

        private void DelayedImports(uint table)
        {
            for (var address = table; table != 0; address += DelayDescriptorSize)
            {
                if (Offset(address) is not { } at || Span(at, DelayDescriptorSize) is not { Length: DelayDescriptorSize } descriptor)
                {
                    Fault(ExecutableFaultKind.OutsideFile, Offset(address) ?? 0);
                    return;
                }

                var origin = (Word(descriptor, 0) & 1) != 0 ? 0 : _imageBase;
                var (name, lookup) = (Word(descriptor, 4), Word(descriptor, 16));
                if (name == 0 || !Add(name - origin, lookup - origin, delayed: true, at))
                    return;
            }
        }

        private bool Add(uint name, uint lookup, bool delayed, long descriptor)
        {
            if (_libraries.Count == MostLibraries)
            {
                Fault(ExecutableFaultKind.TooManyImports, descriptor);
                return false;
            }

            if (Offset(name) is not { } nameAt || Name(nameAt) is not { } library)
            {
                Fault(ExecutableFaultKind.OutsideFile, descriptor);
                return false;
            }

            _libraries.Add(new ImportedLibrary(library, nameAt, delayed, Functions(lookup, descriptor)));
            return true;
        }

        private List<ImportedFunction> Functions(uint lookup, long descriptor)
        {
            var functions = new List<ImportedFunction>();
            var size = _is64 ? 8u : 4u;
            for (var address = lookup; ; address += size)
            {
                if (Offset(address) is not { } at || Span(at, (int)size) is not { Length: > 0 } thunk)
                {
                    Fault(ExecutableFaultKind.OutsideFile, descriptor);
                    return functions;
                }

                var value = _is64 ? BinaryPrimitives.ReadUInt64LittleEndian(thunk) : Word(thunk, 0);
                if (value == 0)
                    return functions;
                if (_functions == MostFunctions)
                {
                    Fault(ExecutableFaultKind.TooManyImports, at);
                    return functions;
                }

                _functions++;

                if (value >> (_is64 ? 63 : 31) != 0)
                    functions.Add(new ImportedFunction(null, (int)(value & 0xFFFF), at));
                else if (Offset((uint)(value & 0x7FFFFFFF)) is { } hint && Name(hint + 2) is { } name)
                    functions.Add(new ImportedFunction(name, null, hint + 2));
                else
                    Fault(ExecutableFaultKind.OutsideFile, at);
            }
        }

        /// <summary>File offset of an address in the loaded image; null where the file holds nothing for it.</summary>
        private readonly long? Offset(uint address)
        {
            for (var i = 0; i < _sectionCount; i++)
            {
                if (Span(_sections + (40L * i), 40) is not { Length: 40 } section)
                    break;
                var (start, raw, at) = (Word(section, 12), Word(section, 16), Word(section, 20));
                if (address >= start && address - start < raw)
                    return (long)at + (address - start);
            }

            return address < _headerSize ? address : null;
        }

        private readonly string? Name(long at)
        {
            var rest = at < _file.Length ? _file[(int)at..Math.Min(_file.Length, (int)at + LongestName)] : default;
            var end = rest.IndexOf((byte)0);
            return end <= 0 ? null : Encoding.Latin1.GetString(rest[..end]);
        }

        private readonly ReadOnlySpan<byte> Span(long at, int length) =>
            at >= 0 && at + length <= _file.Length ? _file.Slice((int)at, length) : default;

        private readonly ushort? U16(long at) =>
            Span(at, 2) is { Length: 2 } bytes ? BinaryPrimitives.ReadUInt16LittleEndian(bytes) : null;

        private readonly uint? U32(long at) =>
            Span(at, 4) is { Length: 4 } bytes ? BinaryPrimitives.ReadUInt32LittleEndian(bytes) : null;

        private static uint Word(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt32LittleEndian(bytes[at..]);

        private readonly void Fault(ExecutableFaultKind kind, long offset)
        {
            if (_faults.Count < 100)
                _faults.Add(new ExecutableFault(kind, offset));
        }
    }
}
