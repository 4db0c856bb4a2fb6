using System.Text;
using FeatureMatrix.Importing.DriverPackage;

namespace FeatureMatrix.Tests.Importing.DriverPackage;

/// <summary>The rules of the Windows driver documentation, "General Syntax Rules for INF Files".</summary>
public class Reading_inf_text
{
    private static InfPackage Read(string text) => InfReader.Read(Encoding.Latin1.GetBytes(text));

    private static string[] Values(string entry) =>
        [.. Read("[s]\n" + entry).Document.Section("s")!.Entries.Single().Values.Select(v => v.Text)];

    [Theory]
    // The documentation's three examples of a backslash before a line end.
    [InlineData("CopyFiles = \"SomeDirectory\\\"\\\n,SomeFile", "SomeDirectory\\|SomeFile")]
    [InlineData("CopyFiles = SomeDirectory\\\\\n,SomeFile", "SomeDirectory|SomeFile")]
    [InlineData("CopyFiles = \"SomeDirectory\\\"\\ ; comment \n,SomeFile", "SomeDirectory\\|SomeFile")]
    // Omitted values keep their commas.
    [InlineData("file = disk,,size", "disk||size")]
    [InlineData("file = disk", "disk")]
    [InlineData("x = ", "")]
    // Quotes and percent signs.
    [InlineData("HKR,,Example,,\"Display an \"\"example\"\" string\"", "HKR||Example||Display an \"example\" string")]
    [InlineData("x = \" kept; with, blanks \" ; dropped", " kept; with, blanks ")]
    [InlineData("x = %a;b%, c ; d", "%a;b%|c")]
    [InlineData("x = 50 % ; half", "50 %")]
    [InlineData("x = a\\b\\c", "a\\b\\c")]
    [InlineData("x = a = b", "a = b")]
    [InlineData("x = a,\\\n  b,\\ ; note\n  c", "a|b|c")]
    public void Entry_splits_into(string entry, string values) => Assert.Equal(values.Split('|'), Values(entry));

    [Fact]
    public void Sections_of_one_name_are_one()
    {
        var section = Read("[One]\na=1\n[two]\n[ONE]\nb=2\n").Document.Section("one")!;
        Assert.Equal(("One", 1), (section.Name, section.Line));
        Assert.Equal(["a", "b"], section.Entries.Select(e => e.Key!.Text));
    }

    [Fact]
    public void Quoted_reference_finds_a_section_of_blanks_and_semicolons() => Assert.Equal(
        "Dev",
        Read("[Manufacturer]\nM = \";; Std Mfg \"\n[;; Std Mfg ]\nDev = I, PCI\\VEN_F0A1").Manufacturers.Single()
            .Models.Single().Devices!.Single().Description);

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    [InlineData("utf-8")]
    public void Marked_encodings_read_alike(string encoding)
    {
        var text = "[Version]\r\nSignature=\"$Chicago$\"\r\nProvider=\"Würfel\"\r\n[Manufacturer]\r\n";
        var e = Encoding.GetEncoding(encoding);
        var package = InfReader.Read([.. e.GetPreamble(), .. e.GetBytes(text)]);
        Assert.Equal((new InfVersion("Chicago", null, "Würfel", null, null), 0), (package.Version, package.Faults.Count));
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    public void Utf16_without_a_mark_is_recognised(string encoding) => Assert.Equal(
        "Chicago", InfReader.Read(Encoding.GetEncoding(encoding).GetBytes("[Version]\nSignature=$CHICAGO$\n")).Version.Signature,
        ignoreCase: true);

    [Fact]
    public void Half_a_utf16_character_is_not_text() => Assert.Equal(
        new InfFault(InfFaultKind.NotText, 1, 1), InfReader.Read([0xFF, 0xFE, 0x5B]).Faults[0]);

    [Theory]
    [InlineData("junk\n[s]", InfFaultKind.ContentBeforeSection, 1, 1, "")]
    [InlineData("[s]\n  [open ; here\n", InfFaultKind.UnclosedSectionName, 2, 3, "open ; here")]
    [InlineData("\n []\n", InfFaultKind.EmptySectionName, 2, 2, "")]
    [InlineData("[s]\na = b, \"open\nc = d", InfFaultKind.UnclosedQuote, 2, 8, "")]
    [InlineData("[Strings]\na = 1\nA = 2", InfFaultKind.DuplicateString, 3, 1, "A")]
    [InlineData("[Version]\nProvider = %Nobody%", InfFaultKind.UnknownToken, 2, 12, "Nobody")]
    [InlineData("[Version]\nSignature = \"$Berlin$\"", InfFaultKind.UnknownSignature, 2, 1, "$Berlin$")]
    [InlineData("[Version]\nDriverVer = 31/12/2001,5.1", InfFaultKind.MalformedDriverVersion, 2, 1, "31/12/2001,5.1")]
    [InlineData("[Manufacturer]\nM = S\n", InfFaultKind.MissingSection, 2, 1, "S")]
    [InlineData("[Manufacturer]\nM = S, NTx86.6\n[S]", InfFaultKind.MissingSection, 2, 1, "S.NTx86.6")]
    [InlineData("[Manufacturer]\nM = S, XP\n[S]", InfFaultKind.MalformedDecoration, 2, 8, "XP")]
    [InlineData("[Manufacturer]\nM = S\n[S]\nDev = Install", InfFaultKind.IncompleteModel, 4, 1, "Dev")]
    [InlineData("[Manufacturer]\nM = S\n[S]\nDev = I, PCI\\VEN_1011&DEV_002", InfFaultKind.MalformedHardwareId, 4, 22, @"PCI\VEN_1011&DEV_002")]
    public void Fault_is_reported_where_it_is(string text, InfFaultKind kind, int line, int column, string subject) =>
        Assert.Contains(new InfFault(kind, line, column, subject), Read(text).Faults);

    [Fact]
    public void Version_section_is_read_in_full() => Assert.Equal(
        new InfVersion("Windows NT", "Display", "Greywater", new DateOnly(2001, 12, 31), "6.13.10.1234"),
        Read("""
            [Version]
            Signature = "$Windows NT$"
            Class     = Display
            Provider  = %Who%
            DriverVer = 12/31/2001, 6.13.10.1234
            [Strings]
            Who = "Greywater"
            """).Version);

    // "INF Strings Section": several tokens in one string; a percent sign is doubled.
    [Fact]
    public void Tokens_inside_a_string_are_joined() => Assert.Equal(
        "one two 100%",
        Read("[Version]\nProvider = \"%A% %b% 100%%\"\n[Strings]\nA = \"one\"\nB = \"two\"").Version.Provider);

    [Fact]
    public void Language_strings_stand_in_where_there_are_no_others() => Assert.Equal(
        "Laterne", Read("[Version]\nProvider=%A%\n[Strings.0407]\nA=\"Laterne\"\n[Strings.0409]\nA=\"Lantern\"").Version.Provider);
}

/// <summary>Files made to cost time or memory.</summary>
public class Reading_a_hostile_inf
{
    [Fact]
    public void Too_large_a_file_is_not_read() => Assert.Equal(
        [InfFaultKind.FileTooLarge, InfFaultKind.MissingSection, InfFaultKind.MissingSection],
        InfReader.Read(new byte[InfLimits.Bytes + 1]).Faults.Select(f => f.Kind));

    [Fact]
    public void Too_many_values_end_the_reading()
    {
        var package = InfReader.Read(Encoding.Latin1.GetBytes("[s]\n" + string.Concat(Enumerable.Repeat("a\n", InfLimits.Fields))));
        Assert.False(package.Complete);
        Assert.Contains(package.Faults, f => f.Kind == InfFaultKind.TooMuchContent);
    }

    [Fact]
    public void Long_fields_and_entries_are_cut()
    {
        var text = $"[s]\na = {new string('x', 9000)}\nb = {new string(',', 900)}";
        var package = InfReader.Read(Encoding.Latin1.GetBytes(text));
        Assert.Equal(
            [InfLimits.FieldCharacters, InfLimits.FieldsInEntry],
            [package.Document.Section("s")!.Entries[0].Values[0].Text.Length, package.Document.Section("s")!.Entries[1].Values.Count]);
        Assert.Equal(
            [(InfFaultKind.FieldTooLong, 2, 5), (InfFaultKind.TooManyFields, 3, 261)],
            package.Faults.Where(f => f.Kind != InfFaultKind.MissingSection).Select(f => (f.Kind, f.Line, f.Column)));
    }

    [Fact]
    public void Substitutions_end_at_their_limit()
    {
        var models = string.Concat(Enumerable.Repeat("%A% x=I,PCI\\VEN_F0A1\n", 4000));
        var package = InfReader.Read(Encoding.Latin1.GetBytes(
            $"[Manufacturer]\nM=S\n[S]\n{models}[Strings]\nA=\"{new string('x', 4000)}\""));
        Assert.False(package.Complete);
    }

    [Fact]
    public void Runs_of_backslashes_are_read_once() => Assert.True(
        InfReader.Read(Encoding.Latin1.GetBytes("[s]\na=" + new string('\\', InfLimits.Bytes - 10) + "b")).Complete);

    /// <summary>The largest file that is read, made of what costs most: it may take some hundred megabytes in all, and no more.</summary>
    [Theory]
    [InlineData("a\n")]
    [InlineData(",")]
    [InlineData("[x]\n")]
    [InlineData("\"\"\n")]
    [InlineData("%a%=b,%a%\n")]
    [InlineData("x=\\\n")]
    public void Memory_stays_bounded(string repeated)
    {
        var head = "[Strings]\na=b\n[Manufacturer]\nM=S\n[S]\n";
        var bytes = Encoding.Latin1.GetBytes(head + string.Concat(Enumerable.Repeat(repeated, (InfLimits.Bytes - 100) / repeated.Length)));
        var before = GC.GetAllocatedBytesForCurrentThread();
        InfReader.Read(bytes);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 300_000_000);
    }

    [Fact]
    public void Faults_stop_at_their_limit() => Assert.Equal(
        InfLimits.Faults + 1, InfReader.Read(Encoding.Latin1.GetBytes(string.Concat(Enumerable.Repeat("[]\n[x\n", 5000)))).Faults.Count);
}
