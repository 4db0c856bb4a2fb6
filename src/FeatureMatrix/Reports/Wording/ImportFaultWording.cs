using FeatureMatrix.Importing;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Faults of imported files in words.</summary>
public static class ImportFaultWording
{
    /// <summary>What is wrong, without the place.</summary>
    public static string Text(ImportFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.Kind switch
        {
            ImportFaultKind.NotThisFormat => "this is not a file of this kind; nothing was read",
            ImportFaultKind.FileTooLong => "the file is longer than an import reads; the rest was not read",
            ImportFaultKind.LineTooLong => "the line is too long and was not understood",
            ImportFaultKind.UnknownKeyword => $"no line begins with '{fault.Found}'",
            ImportFaultKind.Missing => $"missing: {fault.Found}",
            ImportFaultKind.NotDecimal => $"'{fault.Found}' is no whole number from 0 to 4294967295",
            ImportFaultKind.NotHexadecimal => $"'{fault.Found}' is no 0x with 2, 4 or 8 hexadecimal digits, or not of the length this place needs",
            ImportFaultKind.BadText => $"'{fault.Found}' is no quoted text that ends",
            ImportFaultKind.BadByte => "a byte outside printable ASCII",
            ImportFaultKind.Surplus => $"'{fault.Found}' stands after the end of the line's words",
            ImportFaultKind.OutsideSection => "the line stands before the first section",
            ImportFaultKind.RepeatedSection => $"the section {fault.Found} was opened before; both are kept",
            ImportFaultKind.RepeatedField => $"{fault.Found} was given before in this section; the first one counts",
            ImportFaultKind.WrongStructureSize => $"{fault.Found} has another size than its public definition; its words may not mean what they seem",
            ImportFaultKind.WrongFieldWidth => $"{fault.Found} is wider or narrower than the field of that name",
            ImportFaultKind.NoEnd => "the file stops without its last line: the machine stopped during the last step, or the file was cut",
            ImportFaultKind.AfterEnd => "something stands after the line that ends the file",
            ImportFaultKind.NotAnExtension => $"'{fault.Found}' is no name of an extension; it is left out",
            ImportFaultKind.More => "there are more faults than are listed",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
