using System.Globalization;
using System.Text;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.OpenGl;

/// <summary>Reads an OpenGL report line by line.</summary>
internal sealed class OpenGlReportParser
{
    /// <summary>A report is read to this length; a real one is about 200 kilobytes.</summary>
    public const int LongestFile = 4 * 1024 * 1024;

    private const int LongestName = 128;

    private enum Block
    {
        None,
        Extensions,
        WindowSystem,
        Limits,
    }

    private readonly ImportFaults _faults = new();
    private readonly ProfileBuilder _compatibility = new();
    private readonly ProfileBuilder _core = new();
    private readonly List<string> _windowSystem = [];
    private readonly HashSet<string> _windowSystemSeen = [];
    private string? _vendor;
    private string? _renderer;
    private SoftwareSign? _software;
    private ProfileBuilder _profile;
    private Block _block;
    private int _line;
    private bool _recognised;

    private OpenGlReportParser() => _profile = _compatibility;

    public static OpenGlReport Parse(ReadOnlySpan<byte> file)
    {
        var parser = new OpenGlReportParser();
        if (file.StartsWith("\uFEFF"u8))
            file = file[3..];
        var isCut = file.Length > LongestFile;
        foreach (var line in (isCut ? file[..LongestFile] : file).Split((byte)'\n'))
        {
            parser._line++;
            parser.ReadLine(Encoding.Latin1.GetString(file[line]).TrimEnd('\r', ' ', '\0'));
        }

        if (isCut)
            parser._faults.Add(ImportFaultKind.FileTooLong, parser._line, 1, "");
        if (!parser._recognised)
            parser._faults.Add(ImportFaultKind.NotThisFormat, 1, 1, "");
        return parser.Done();
    }

    /// <summary>Major and minor version that a driver's text begins with.</summary>
    public static (int Major, int Minor)? VersionOf(string? text)
    {
        if (text is null)
            return null;
        var dot = text.IndexOf('.', StringComparison.Ordinal);
        if (dot is < 1 or > 2)
            return null;
        var minor = text.AsSpan(dot + 1);
        var digits = minor.IndexOfAnyExceptInRange('0', '9');
        if (digits >= 0)
            minor = minor[..digits];
        return Digits.Decimal(text.AsSpan(0, dot)) is { } major && Digits.Decimal(minor) is { } small ? (major, small) : null;
    }

    private OpenGlReport Done() => new(
        _vendor,
        _renderer,
        _compatibility.Made(),
        _core.Made(),
        new(_windowSystem),
        SoftwareRenderers.SignOf(_renderer, _vendor) ?? _software,
        _faults.ToList());

    private void ReadLine(string line)
    {
        if (line.Length == 0)
        {
            _block = Block.None;
            return;
        }

        if (line[0] is ' ' or '\t')
        {
            ReadIndented(line);
            return;
        }

        if (IsName(line.Split(' ', ',')[0]) && !line.Contains(':', StringComparison.Ordinal) && !line.Contains('=', StringComparison.Ordinal))
        {
            // A bare extension string, in one line or one name a line.
            ReadNames(line, 0, bare: true);
            return;
        }

        _block = Block.None;
        var end = line.IndexOfAny([':', '=']);
        if (end < 0)
            return;
        ReadLabelled(line[..end].TrimEnd(), line[(end + 1)..].Trim(), end + 1);
    }

    private void ReadLabelled(string label, string value, int column)
    {
        switch (label)
        {
            case "OpenGL vendor string" or "GL_VENDOR":
                _vendor = value;
                break;
            case "OpenGL renderer string" or "GL_RENDERER":
                _renderer = value;
                break;
            case "OpenGL version string" or "GL_VERSION":
                _compatibility.VersionText = value;
                break;
            case "OpenGL shading language version string" or "GL_SHADING_LANGUAGE_VERSION":
                _compatibility.ShadingLanguage = value;
                break;
            case "OpenGL extensions" or "GL_EXTENSIONS":
                Open(Block.Extensions, _compatibility, value, column);
                break;
            case "OpenGL limits":
                Open(Block.Limits, _compatibility, value, column);
                break;
            case "OpenGL core profile version string":
                _core.VersionText = value;
                break;
            case "OpenGL core profile shading language version string":
                _core.ShadingLanguage = value;
                break;
            case "OpenGL core profile extensions":
                Open(Block.Extensions, _core, value, column);
                break;
            case "OpenGL core profile limits":
                Open(Block.Limits, _core, value, column);
                break;
            case "GLX extensions":
                Open(Block.WindowSystem, _compatibility, value, column);
                break;
            default:
                return;
        }

        _recognised = true;
    }

    private void Open(Block block, ProfileBuilder profile, string value, int column)
    {
        _block = block;
        _profile = profile;
        profile.IsPresent |= block != Block.WindowSystem;
        if (value.Length > 0 && block != Block.Limits)
            ReadNames(value, column, bare: false);
    }

    private void ReadIndented(string line)
    {
        switch (_block)
        {
            case Block.Extensions or Block.WindowSystem:
                ReadNames(line, 0, bare: false);
                break;
            case Block.Limits:
                ReadLimit(line.Trim());
                break;
            case Block.None when line.Trim() is "Accelerated: no":
                _software ??= new SoftwareSign("accelerated", "no");
                break;
            case Block.None:
                break;
        }
    }

    private void ReadNames(string text, int shift, bool bare)
    {
        var at = 0;
        foreach (var name in text.Split([' ', ',', '\t']))
        {
            if (name.Length > 0)
                AddName(name, shift + at + 1, bare);
            at += name.Length + 1;
        }
    }

    private void AddName(string name, int column, bool bare)
    {
        if (!IsName(name))
        {
            _faults.Add(ImportFaultKind.NotAnExtension, _line, column, name);
            return;
        }

        _recognised = true;
        var isOfWindow = _block == Block.WindowSystem || (bare && !name.StartsWith("GL_", StringComparison.Ordinal));
        if (!isOfWindow)
            (bare ? _compatibility : _profile).Add(name);
        else if (_windowSystemSeen.Add(name))
            _windowSystem.Add(name);
    }

    private void ReadLimit(string line)
    {
        var equals = line.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
            return;
        var name = line[..equals].TrimEnd();
        var values = new List<double>();
        foreach (var part in line[(equals + 1)..].Split([',', ' '], StringSplitOptions.RemoveEmptyEntries))
        {
            // The framework passes over zero characters at the end of a number.
            if (part.Contains('\0', StringComparison.Ordinal) || !double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
                return;
            values.Add(value);
        }

        if (IsName(name) && values.Count > 0)
            _profile.Add(new OpenGlLimit(name, new(values)));
    }

    private static bool IsName(string word) =>
        word.Length is > 3 and <= LongestName
        && (word.StartsWith("GL_", StringComparison.Ordinal)
            || word.StartsWith("WGL_", StringComparison.Ordinal)
            || word.StartsWith("GLX_", StringComparison.Ordinal))
        && word.All(c => char.IsAsciiLetterOrDigit(c) || c == '_');

    private sealed class ProfileBuilder
    {
        private readonly List<string> _extensions = [];
        private readonly HashSet<string> _seen = [];
        private readonly OrderedDictionary<string, OpenGlLimit> _limits = [];

        public bool IsPresent { get; set; }

        public string? VersionText { get; set; }

        public string? ShadingLanguage { get; set; }

        public void Add(string extension)
        {
            IsPresent = true;
            if (_seen.Add(extension))
                _extensions.Add(extension);
        }

        public void Add(OpenGlLimit limit) => _limits.TryAdd(limit.Name, limit);

        public OpenGlProfile? Made() => IsPresent || VersionText is not null
            ? new OpenGlProfile(VersionText, ShadingLanguage, new(_extensions), new(_limits.Values), null)
            : null;
    }
}
