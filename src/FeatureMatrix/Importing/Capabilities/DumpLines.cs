using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Capabilities;

/// <summary>The kinds of line that stand inside a section: which words follow which keyword.</summary>
internal static class DumpLines
{
    /// <summary>The entry that a line says; null for an unknown keyword or, with the reader's fault set, for a bad line.</summary>
    public static DumpEntry? Read(string keyword, DumpLineReader r)
    {
        DumpEntry? entry = keyword switch
        {
            "text" => new TextEntry(r.Line, r.Word("a key"), r.Quoted("a quoted text")),
            "number" => new NumberEntry(r.Line, r.Word("a key"), r.Decimal("a number")),
            "size" => new SizeEntry(r.Line, r.Word("a structure"), r.Decimal("bytes")),
            "field" => Field(r),
            "version" => new VersionEntry(r.Line, r.Word("a key"), Version(r)),
            "file" => new FileEntry(r.Line, r.Quoted("a quoted file name"), Version(r)),
            "pci" => new PciEntry(r.Line, Word32(r), Word32(r), Word32(r), Word32(r)),
            "hardware-id" => new HardwareIdEntry(r.Line, r.Word("a bus"), r.Quoted("a quoted identifier")),
            "memory" => new MemoryEntry(r.Line, r.Word("a pool"), r.Decimal("bytes in all"), r.Decimal("bytes free")),
            "fourcc" => new FourCcEntry(r.Line, Words32(r)),
            "pixel-format" => new PixelFormatEntry(
                r.Line, r.Word("a use"), Word32(r), Word32(r), Word32(r), Word32(r), Word32(r), Word32(r), Word32(r)),
            "formats" => Formats(r),
            "samples" => Samples(r),
            "mode" => Mode(r),
            "query" => new QueryEntry(r.Line, r.Word("a query"), YesOrNo(r)),
            "extension" => new ExtensionEntry(r.Line, r.Word("gl or wgl"), r.Quoted("a quoted name")),
            "extension-length" => new ExtensionLengthEntry(r.Line, r.Word("gl or wgl"), r.Decimal("bytes")),
            "limit" => new LimitEntry(r.Line, r.Word("a limit"), Decimals(r)),
            "step" => Step(r),
            "absent" => new AbsentEntry(r.Line, r.Word("a name")),
            "failed" => new FailedEntry(r.Line, r.Word("a call"), Word32(r)),
            _ => null,
        };
        if (entry is not null)
            r.End();
        return r.Fault is null ? entry : null;
    }

    private static FieldEntry? Field(DumpLineReader r)
    {
        var name = r.Word("a structure's field");
        var (value, bytes) = r.Hexadecimal("a word in hexadecimal");
        var dot = name.IndexOf('.', StringComparison.Ordinal);
        if (dot > 0 && dot < name.Length - 1)
            return new FieldEntry(r.Line, name[..dot], name[(dot + 1)..], value, bytes);
        r.Refuse(ImportFaultKind.Missing, "field ".Length, "structure.field");
        return null;
    }

    private static EquatableList<uint> Version(DumpLineReader r) =>
        new([r.Decimal("a version part"), r.Decimal("a version part"), r.Decimal("a version part"), r.Decimal("a version part")]);

    private static uint Word32(DumpLineReader r) => r.Hexadecimal("a word in hexadecimal", 4).Value;

    private static EquatableList<uint> Words32(DumpLineReader r)
    {
        var words = new List<uint>();
        while (!r.AtEnd)
            words.Add(Word32(r));
        return new(words);
    }

    private static EquatableList<uint> Decimals(DumpLineReader r)
    {
        var numbers = new List<uint> { r.Decimal("a number") };
        while (!r.AtEnd)
            numbers.Add(r.Decimal("a number"));
        return new(numbers);
    }

    private static FormatsEntry Formats(DumpLineReader r)
    {
        var use = r.Word("a use");
        var display = Word32(r);
        var (yes, no) = YesAndNo(r, Word32);
        return new FormatsEntry(r.Line, use, display, yes, no);
    }

    private static SamplesEntry Samples(DumpLineReader r)
    {
        var format = Word32(r);
        var (yes, no) = YesAndNo(r, static reader => reader.Decimal("a number of samples"));
        return new SamplesEntry(r.Line, format, yes, no);
    }

    /// <summary><c>yes</c>, what was accepted, <c>no</c>, what was refused; both words stand even with nothing behind them.</summary>
    private static (EquatableList<uint> Yes, EquatableList<uint> No) YesAndNo(DumpLineReader r, Func<DumpLineReader, uint> value)
    {
        var yes = new List<uint>();
        var no = new List<uint>();
        r.Literal("yes");
        while (!r.AtEnd && !r.NextIs("no"))
            yes.Add(value(r));
        r.Literal("no");
        while (!r.AtEnd)
            no.Add(value(r));
        return (new(yes), new(no));
    }

    private static bool YesOrNo(DumpLineReader r)
    {
        if (r.NextIs("yes"))
        {
            r.Literal("yes");
            return true;
        }

        r.Literal("no");
        return false;
    }

    private static ModeEntry Mode(DumpLineReader r) => new(
        r.Line, r.Decimal("a width"), r.Decimal("a height"), r.Decimal("bits"), r.Decimal("hertz"), r.AtEnd ? 0 : Word32(r));

    /// <summary>The call and whatever says of what it was asked.</summary>
    private static StepEntry Step(DumpLineReader r)
    {
        var words = new List<string> { r.Word("a call") };
        while (!r.AtEnd)
            words.Add(r.Word("a word"));
        return new StepEntry(r.Line, string.Join(' ', words));
    }
}
