using System.Globalization;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Capabilities;

/// <summary>The i586 program, which users run on Windows 95 to XP and this machine cannot, checked without running it.</summary>
public sealed class ProbeForOldWindowsTests(ProbeBuild build) : IClassFixture<ProbeBuild>
{
    /// <summary>
    /// Functions of Windows 95. Those of kernel32 stand in the list "Functions exported by the Win95 kernel32.dll" of an
    /// early kernel32.spec of the Wine project (wine-mirror/wine, relay32/kernel32.spec of 1998). Those of the other three
    /// libraries are from memory, no source: all belong to the Win32 interface of 1995.
    /// </summary>
    private static readonly Dictionary<string, string[]> OnWindows95 = new()
    {
        ["KERNEL32.dll"] =
        [
            "CloseHandle", "CreateFileA", "ExitProcess", "FlushFileBuffers", "GetACP", "GetCommandLineA", "GetLastError",
            "GetModuleHandleA", "GetProcAddress", "GetStdHandle", "GetSystemDirectoryA", "GetVersionExA",
            "GlobalMemoryStatus", "LoadLibraryA", "SetErrorMode", "WriteFile", "lstrcmpiA", "lstrcpynA", "lstrlenA",
        ],
        ["USER32.dll"] =
        [
            "CreateWindowExA", "DefWindowProcA", "EnumDisplaySettingsA", "GetDC", "GetSystemMetrics", "RegisterClassA",
            "ReleaseDC",
        ],
        ["GDI32.dll"] = ["GetDeviceCaps"],
        ["ADVAPI32.dll"] = ["RegCloseKey", "RegEnumKeyExA", "RegEnumValueA", "RegOpenKeyExA", "RegQueryValueExA"],
    };

    /// <summary>
    /// Instructions the compiler used, all of the 80386 and 80486 (from memory, no source). Left
    /// out on purpose: CMOVcc, FCMOVcc, FCOMI, and everything of MMX, SSE and later, which an i586 does not have.
    /// </summary>
    private static readonly HashSet<string> OnI586 =
    [
        "adc", "add", "and", "bsf", "bsr", "bswap", "bt", "call", "cdq", "cltd", "cmp", "cwtl", "dec", "div", "idiv", "imul",
        "inc", "jmp", "lea", "leave", "mov", "movsb", "movsl", "movsw", "mul", "neg", "nop", "not", "or", "pop", "push",
        "rep", "repz", "repnz", "ret", "rol", "ror", "sar", "sbb", "scas", "shl", "shld", "shr", "shrd", "stos", "sub", "test",
        "xchg", "xor",
        "ja", "jae", "jb", "jbe", "je", "jg", "jge", "jl", "jle", "jne", "jno", "jnp", "jns", "jo", "jp", "js",
        "seta", "setae", "setb", "setbe", "sete", "setg", "setge", "setl", "setle", "setne", "setns", "sets",
        "movsbl", "movsbw", "movswl", "movzbl", "movzbw", "movzwl",
    ];

    [Fact]
    public void Every_import_exists_on_windows_95()
    {
        var library = "";
        var imports = new List<(string Library, string Name)>();
        foreach (var line in Objdump("-p").Split('\n'))
        {
            var words = line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
            if (words is ["DLL", "Name:", var name])
                library = name;
            else if (library.Length > 0 && words is [_, var hint, var function] && int.TryParse(hint, CultureInfo.InvariantCulture, out _))
                imports.Add((library, function));
            else if (words is ["PE", "File", "Base", ..])
                break;
        }

        Assert.True(imports.Count > 25, "the imports were not found in objdump's output");
        Assert.All(imports, i => Assert.Contains(i.Name, OnWindows95[i.Library]));
    }

    [Fact]
    public void No_instruction_is_beyond_an_i586()
    {
        // The whole code section, so whatever the compiler's own library contributed is included.
        var used = new Dictionary<string, string>();
        foreach (var line in Objdump("-d", "--no-show-raw-insn").Split('\n'))
        {
            var parts = line.Split('\t');
            if (parts.Length < 2)
                continue;
            var mnemonic = parts[1].Split(' ')[0].Trim();
            // The lists of constructors at the section's end are data: all ones and all zeros.
            if (mnemonic is not ("(bad)" or "..." or ""))
                used.TryAdd(mnemonic, line.Trim());
        }

        Assert.True(used.Count > 20);
        Assert.All(used, u => Assert.True(
            OnI586.Contains(u.Key) || (u.Key.Length > 2 && u.Key[^1] is 'b' or 'w' or 'l' && OnI586.Contains(u.Key[..^1])),
            $"not of an i586: {u.Value}"));
    }

    [Fact]
    public void The_subsystem_is_version_4_and_no_newer_system_is_asked_for()
    {
        var header = Objdump("-p").Split('\n')
            .Select(line => line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries))
            .Where(words => words.Length >= 2)
            .GroupBy(words => words[0], words => words[1])
            .ToDictionary(g => g.Key, g => g.First());
        Assert.Equal("4", header["MajorSubsystemVersion"]);
        Assert.Equal("0", header["MinorSubsystemVersion"]);
        Assert.Equal("4", header["MajorOSystemVersion"]);
        Assert.Equal("00000003", header["Subsystem"]);
    }

    [Fact]
    public void Structures_have_their_published_sizes()
    {
        // FACTS section B1, "Compiled struct sizes"; here as the i586 compiler lays the headers out.
        Assert.Equal(
            [304, 16, 20],
            CompiledSizes("d3d9.h", "D3DCAPS9", "D3DVSHADERCAPS2_0", "D3DPSHADERCAPS2_0"));
        Assert.Equal([212], CompiledSizes("d3d8.h", "D3DCAPS8"));
        Assert.Equal(
            [236, 252, 56, 32, 380, 380, 364, 316],
            CompiledSizes(
                "d3d.h", "D3DDEVICEDESC7", "D3DDEVICEDESC", "D3DPRIMCAPS", "DDPIXELFORMAT", "DDCAPS_DX7", "DDCAPS_DX6",
                "DDCAPS_DX5", "DDCAPS_DX3"));
    }

    private IEnumerable<int> CompiledSizes(string header, params string[] structures)
    {
        var source = Path.Combine(build.Folder, header + ".c");
        File.WriteAllText(
            source,
            $"#define WIN32_LEAN_AND_MEAN\n#include <windows.h>\n#include <{header}>\n"
            + $"const unsigned int sizes[] = {{{string.Join(", ", structures.Select(s => $"sizeof({s})"))}}};\n");
        var gcc = External.Command("i686-w64-mingw32-gcc", "gcc-mingw-w64-i686-win32");
        return Tool.Run(gcc, ["-march=i586", "-S", "-o", "-", source]).Split('\n')
            .SkipWhile(l => !l.StartsWith("_sizes:", StringComparison.Ordinal)).Skip(1)
            .Select(l => l.Split('\t')).TakeWhile(w => w is ["", ".long", _])
            .Select(w => int.Parse(w[2], CultureInfo.InvariantCulture));
    }

    private string Objdump(params string[] arguments) =>
        Tool.Run(External.Command("i686-w64-mingw32-objdump", "binutils-mingw-w64-i686"), [.. arguments, build.I586]);
}
