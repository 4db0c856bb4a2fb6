using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Capabilities;

/// <summary>The programs, each built once for a class of tests, in a folder of their own.</summary>
public sealed class ProbeBuild : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fm-probe-").FullName;
    private readonly Lock _lock = new();

    /// <summary>An empty folder of the fixture's, gone with it.</summary>
    public string Folder => _folder;

    /// <summary>The program for Windows 95 to XP.</summary>
    public string I586 => Built("probe.exe", "i686-w64-mingw32-gcc", "gcc-mingw-w64-i686-win32");

    /// <summary>The program for 64-bit Windows.</summary>
    public string X64 => Built("probe64.exe", "x86_64-w64-mingw32-gcc", "gcc-mingw-w64-x86-64-win32");

    public void Dispose()
    {
        try
        {
            Directory.Delete(_folder, true);
        }
        catch (IOException)
        {
            // A server of Wine may still be leaving; the folder is the system's to clear then.
        }
    }

    /// <summary>One program; make leaves a finished one alone.</summary>
    private string Built(string name, string compiler, string debianPackage)
    {
        External.Command(compiler, debianPackage);
        var program = Path.Combine(_folder, name);
        lock (_lock)
            Tool.Run(External.Command("make", "make"), ["-s", "-C", Repository.PathTo("src", "probe"), $"OUT={_folder}", program]);
        return program;
    }
}
