using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Tests.Importing.Executables;
using FeatureMatrix.Tests.Support;

[assembly: AssemblyFixture(typeof(MingwPrograms))]

namespace FeatureMatrix.Tests.Importing.Executables;

/// <summary>Small Windows programs, built at most once with Debian's mingw-w64, when a test asks. Nothing of them is run.</summary>
public sealed partial class MingwPrograms : IDisposable
{
    private const string I686 = "i686-w64-mingw32";
    private const string Amd64 = "x86_64-w64-mingw32";
    private readonly string _folder = Directory.CreateTempSubdirectory("fm-programs-").FullName;

    private readonly Lazy<string> _directDraw;
    private readonly Lazy<string> _direct3D8;
    private readonly Lazy<string> _openGl;
    private readonly Lazy<string> _loader;
    private readonly Lazy<string> _wrapper;
    private readonly Lazy<string> _direct3D9For64Bits;
    private readonly Lazy<byte[]> _delayed;

    public MingwPrograms()
    {
        // The header defines every identifier; only the two that the program uses are to stay.
        _directDraw = new(() => Build("draw7.exe", """
            #define INITGUID
            #include <windows.h>
            #include <ddraw.h>
            #include <d3d.h>
            int main(void) {
              void *p = 0;
              DirectDrawCreateEx(0, &p, &IID_IDirectDraw7, 0);
              return ((IDirectDraw7 *)p)->lpVtbl->QueryInterface((IDirectDraw7 *)p, &IID_IDirect3D7, &p);
            }
            """, "-fdata-sections", "-Wl,--gc-sections", "-lddraw"));
        _direct3D8 = new(() => Build("eight.exe", """
            #include <windows.h>
            void *__stdcall Direct3DCreate8(unsigned version);
            int main(void) { return Direct3DCreate8(120) != 0; }
            """, "-ld3d8"));
        _openGl = new(() => Build("gl.exe", """
            #include <windows.h>
            #include <GL/gl.h>
            #include <string.h>
            static const char *const wanted[] = { "GL_EXT_paletted_texture", "GL_ARB_multitexture", "GL_TEXTURE_2D" };
            int main(void) {
              const char *have = (const char *)glGetString(GL_EXTENSIONS);
              int n = 0;
              for (unsigned i = 0; i < 3; i++) n += strstr(have, wanted[i]) != 0;
              return n;
            }
            """, "-lopengl32"));
        _loader = new(() => Build("loader.exe", """
            #include <windows.h>
            int main(void) { return LoadLibraryA("glide2x.dll") != 0 || LoadLibraryW(L"d3d9.dll") != 0; }
            """));
        _wrapper = new(() => Build("ddraw.dll", """
            #include <windows.h>
            #include <GL/gl.h>
            __declspec(dllexport) long DirectDrawCreate(void) { return (long)glGetError(); }
            """, "-shared", "-lopengl32"));
        _direct3D9For64Bits = new(() => BuildFor(Amd64, "nine.exe", """
            #include <windows.h>
            void *__stdcall Direct3DCreate9(unsigned version);
            int main(void) { return Direct3DCreate9(31) != 0; }
            """, "-s", "-ld3d9"));
        _delayed = new(BuildDelayed);
    }

    public string DirectDraw => _directDraw.Value;

    public string Direct3D8 => _direct3D8.Value;

    public string OpenGl => _openGl.Value;

    public string Loader => _loader.Value;

    public string Wrapper => _wrapper.Value;

    public string Direct3D9For64Bits => _direct3D9For64Bits.Value;

    /// <summary>Loads d3d9.dll at the first call. The linker leaves the directory entry empty, so it is written in afterwards.</summary>
    public byte[] Delayed => _delayed.Value;

    /// <summary>What binutils reads from an import table: library, then names, or numbers with a number sign.</summary>
    public static IReadOnlyList<string> ImportsByObjdump(string program)
    {
        var imports = new List<string>();
        foreach (var line in Run(External.Command("x86_64-w64-mingw32-objdump", "binutils-mingw-w64-x86-64"), "-p", program).Split('\n'))
        {
            if (line.StartsWith("\tDLL Name: ", StringComparison.Ordinal))
                imports.Add(line[11..]);
            else if (imports.Count > 0 && MemberLine().Match(line) is { Success: true } member)
                imports.Add(member.Groups["name"].Value == "<none>"
                    ? $"  #{int.Parse(member.Groups["number"].Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture)}"
                    : "  " + member.Groups["name"].Value);
            else if (line.StartsWith("There is an export table", StringComparison.Ordinal))
                break;
        }

        return imports;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Build(string name, string source, params string[] options) => BuildFor(I686, name, source, ["-s", .. options]);

    private string BuildFor(string target, string name, string source, params string[] options)
    {
        var code = Path.Combine(_folder, name + ".c");
        var program = Path.Combine(_folder, name);
        File.WriteAllText(code, source);
        Run(External.Command($"{target}-gcc", "gcc-mingw-w64"), ["-Os", "-o", program, code, .. options]);
        return program;
    }

    private byte[] BuildDelayed()
    {
        var definition = Path.Combine(_folder, "delay.def");
        var library = Path.Combine(_folder, "libdelay.a");
        File.WriteAllText(definition, "LIBRARY \"d3d9.dll\"\nEXPORTS\nDirect3DCreate9@4\n");
        Run($"{I686}-dlltool", "-k", "-d", definition, "-y", library);
        var program = BuildFor(I686, "delayed.exe", """
            void *__stdcall Direct3DCreate9(unsigned version);
            int main(void) { return Direct3DCreate9(31) != 0; }
            """, library, "-ldelayimp");
        var symbol = Run($"{I686}-nm", program).Split('\n').Single(l => l.Contains("__DELAY_IMPORT_DESCRIPTOR_", StringComparison.Ordinal));
        var bytes = File.ReadAllBytes(program);
        var header = BitConverter.ToInt32(bytes, 0x3C) + 24;
        var imageBase = BitConverter.ToUInt32(bytes, header + 28);
        var address = Convert.ToUInt32(symbol.Split(' ')[0], 16) - imageBase;
        BitConverter.GetBytes(address).CopyTo(bytes, header + 96 + (8 * 13));
        return bytes;
    }

    private static string Run(string command, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(command, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{command} {string.Join(' ', arguments)}: {errors.Result}");
        return output;
    }

    [GeneratedRegex(@"^\t[0-9a-f]+\t *(?<number>[0-9a-f]+) +(?<name>\S+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex MemberLine();
}
