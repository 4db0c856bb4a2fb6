using System.Runtime.InteropServices;
using System.Text;

namespace FeatureMatrix.Cli.Files;

/// <summary>
/// Two folders change places in one step, so that there is no moment without either. Linux has a call for it (renameat2 with
/// RENAME_EXCHANGE, see its manual page); elsewhere, and on file systems without it, two moves do, and the next run mends what
/// a stop between them leaves.
/// </summary>
internal static class FolderExchange
{
    private const int CurrentFolder = -100; // AT_FDCWD, fcntl.h
    private const uint Exchange = 2; // RENAME_EXCHANGE, stdio.h

    /// <summary>True where the system may have the call.</summary>
    public static bool IsSupported => OperatingSystem.IsLinux();

    /// <summary>Exchanges two folders; where that cannot be done, the second moves aside and the first into its place.</summary>
    public static void Swap(string first, string second, string aside)
    {
        if (TryExchange(first, second))
            return;
        Directory.Move(second, aside);
        Directory.Move(first, second);
    }

    private static bool TryExchange(string first, string second)
    {
        try
        {
            return RenameAt2(CurrentFolder, Bytes(first), CurrentFolder, Bytes(second), Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false;
        }
        catch (DllNotFoundException)
        {
            return false;
        }
    }

    private static byte[] Bytes(string path) => Encoding.UTF8.GetBytes(path + '\0');

    [DllImport("libc", EntryPoint = "renameat2"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameAt2(int oldFolder, byte[] oldPath, int newFolder, byte[] newPath, uint flags);
}
