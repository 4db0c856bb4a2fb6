using System.Globalization;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>Reads a driver package's INF file. Any bytes give a package; what is wrong with them is in its faults.</summary>
public sealed class InfReader
{
    private readonly InfFaults _faults = new();
    private readonly InfDocument _document;
    private readonly InfStrings _strings;
    private readonly Dictionary<string, IReadOnlyList<ListedDevice>> _read = new(StringComparer.OrdinalIgnoreCase);

    private InfReader(ReadOnlySpan<byte> bytes)
    {
        string? text = null;
        if (bytes.Length > InfLimits.Bytes)
            _faults.Add(InfFaultKind.FileTooLarge, 1, 1);
        else if ((text = InfText.Decode(bytes)) is null)
            _faults.Add(InfFaultKind.NotText, 1, 1);
        _document = text is null
            ? new InfDocument(new Dictionary<string, InfSection>(), Complete: false)
            : InfParser.Parse(text, _faults);
        _strings = new InfStrings(_document, _faults);
    }

    /// <summary>Reads the bytes of one INF file.</summary>
    public static InfPackage Read(ReadOnlySpan<byte> bytes) => new InfReader(bytes).Package();

    private InfPackage Package()
    {
        var version = Version();
        var manufacturers = Manufacturers();
        if (!_strings.WithinLimit)
            _faults.Add(InfFaultKind.TooMuchContent, 1, 1);
        return new InfPackage(version, manufacturers, _faults.InOrder(), _document.Complete && _strings.WithinLimit, _document);
    }

    private InfVersion Version()
    {
        var section = Required("Version");
        if (section is null)
            return new InfVersion(null, null, null, null, null);
        var written = section.Entry("Signature");
        var signature = Value(section, "Signature");
        if (!string.Equals(signature, "$Chicago$", StringComparison.OrdinalIgnoreCase)
            && !string.Equals(signature, "$Windows NT$", StringComparison.OrdinalIgnoreCase))
            _faults.Add(InfFaultKind.UnknownSignature, written?.First.Line ?? section.Line, written?.First.Column ?? 1, signature ?? "");
        var (date, number) = DriverVersion(section.Entry("DriverVer"));
        return new InfVersion(signature?.Trim('$'), Value(section, "Class"), Value(section, "Provider"), date, number);
    }

    private string? Value(InfSection section, string key) =>
        section.Entry(key) is { } entry && _strings.Expand(entry.Values[0], out _) is { Length: > 0 } text ? text : null;

    private (DateOnly? Date, string? Version) DriverVersion(InfEntry? entry)
    {
        if (entry is null)
            return (null, null);
        var written = _strings.Expand(entry.Values[0], out _);
        var version = entry.Values.Count > 1 ? _strings.Expand(entry.Values[1], out _) : "";
        // The documentation asks for slashes and admits hyphens.
        var dated = DateOnly.TryParseExact(
            written.Replace('-', '/'), ["MM/dd/yyyy", "M/d/yyyy"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var date);
        var numbers = version.Split('.');
        var versioned = version.Length == 0
            || (numbers.Length <= 4 && numbers.All(n => Digits.Decimal(n) is <= ushort.MaxValue));
        if (!dated || !versioned)
            _faults.Add(InfFaultKind.MalformedDriverVersion, entry.First.Line, entry.First.Column, $"{written},{version}");
        return (dated ? date : null, versioned && version.Length > 0 ? version : null);
    }

    private List<InfManufacturer> Manufacturers()
    {
        var result = new List<InfManufacturer>();
        foreach (var entry in Required("Manufacturer")?.Entries ?? [])
        {
            // A line without an equals sign names manufacturer and models section at once.
            var name = _strings.Expand(entry.First, out _);
            var section = entry.Key is null || entry.Values[0].Text.Length == 0 ? name : _strings.Expand(entry.Values[0], out _);
            var models = new List<ModelsSection> { Models(null, section) };
            foreach (var field in entry.Values.Skip(entry.Key is null ? int.MaxValue : 1).Where(f => f.Text.Length > 0))
            {
                if (InfDecoration.Parse(_strings.Expand(field, out _)) is { } decoration)
                    models.Add(Models(decoration, $"{section}.{decoration.Text}"));
                else
                    _faults.Add(InfFaultKind.MalformedDecoration, field.Line, field.Column, field.Text);
            }

            foreach (var missing in models.Where(m => m.Devices is null && (m.Decoration is not null || models.Count == 1)))
                _faults.Add(InfFaultKind.MissingSection, entry.First.Line, entry.First.Column, missing.SectionName);
            result.Add(new InfManufacturer(name, models));
        }

        return result;
    }

    private ModelsSection Models(InfDecoration? decoration, string name)
    {
        if (_document.Section(name) is not { } section)
            return new ModelsSection(decoration, name, null);
        // Many manufacturers may share one section; it is read, and its faults are reported, once.
        if (!_read.TryGetValue(section.Name, out var devices))
            _read.Add(section.Name, devices = [.. section.Entries.Select(Device).OfType<ListedDevice>()]);
        return new ModelsSection(decoration, name, devices);
    }

    private ListedDevice? Device(InfEntry entry)
    {
        if (entry.Key is null || entry.Values[0].Text.Length == 0 || entry.Values.Skip(1).All(v => v.Text.Length == 0))
        {
            _faults.Add(InfFaultKind.IncompleteModel, entry.First.Line, entry.First.Column, entry.First.Text);
            return null;
        }

        return new ListedDevice(
            _strings.Expand(entry.Key, out _),
            _strings.Expand(entry.Values[0], out _),
            entry.Values[1].Text.Length == 0 ? null : Id(entry.Values[1]),
            [.. entry.Values.Skip(2).Where(v => v.Text.Length > 0).Select(Id)],
            entry.Key.Line);
    }

    private ModelId Id(InfField field)
    {
        var text = _strings.Expand(field, out var resolved);
        if (!HardwareId.TryParse(text, out var pci, out var faultAt)
            && resolved && text.StartsWith(@"PCI\", StringComparison.OrdinalIgnoreCase))
            _faults.Add(InfFaultKind.MalformedHardwareId, field.Line, field.Column + faultAt, text);
        return new ModelId(text, pci, resolved);
    }

    private InfSection? Required(string name)
    {
        var section = _document.Section(name);
        if (section is null)
            _faults.Add(InfFaultKind.MissingSection, 1, 1, name);
        return section;
    }
}
