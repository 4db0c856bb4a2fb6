namespace FeatureMatrix.Cli.Files;

/// <summary>Somebody else holds what was asked for. The message says who and what to do.</summary>
internal sealed class FileLockException(string message, Exception inner) : IOException(message, inner);

/// <summary>
/// A file that one process at a time can hold, so that two runs do not write to one folder. The system lets go of it when the
/// process ends, however it ends; the file goes with it, or with the next holder.
/// </summary>
internal static class FileLock
{
    /// <summary>Takes the lock or throws <see cref="FileLockException"/> with the message.</summary>
    public static IDisposable Take(string path, string heldMessage)
    {
        for (var attempt = 0; ; attempt++)
        {
            FileStream stream;
            try
            {
                stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
            }
            catch (IOException problem) when (problem is not (DirectoryNotFoundException or PathTooLongException) && File.Exists(path))
            {
                throw new FileLockException(heldMessage, problem);
            }

            // The holder before us may have removed the file between our opening and our locking it: then ours has no name any more.
            var stamp = DateTime.UnixEpoch.AddDays(1).AddSeconds(Environment.ProcessId);
            File.SetLastWriteTimeUtc(stream.SafeFileHandle, stamp);
            if (File.GetLastWriteTimeUtc(path) == stamp || attempt == 9)
                return stream;
            stream.Dispose();
        }
    }
}
