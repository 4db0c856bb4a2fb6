namespace FeatureMatrix.Cli.Files;

/// <summary>Writes a file so that its name holds the old bytes or the new ones and nothing between, whatever stops the program.</summary>
internal static class AtomicFile
{
    /// <summary>The file that the new bytes are written to first.</summary>
    public static string Unfinished(string path) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, $".{Path.GetFileName(path)}.being-written");

    /// <summary>Writes the bytes beside the file, then lets them take its place. A failed attempt is removed.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var unfinished = Unfinished(path);
        try
        {
            WriteThrough(unfinished, bytes);
            File.Move(unfinished, path, overwrite: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            Discard(unfinished);
            throw;
        }
    }

    /// <summary>Down to the disk before the name changes, so that a power cut cannot leave the name with half a text.</summary>
    public static void WriteThrough(string path, ReadOnlySpan<byte> bytes)
    {
        using var stream = new FileStream(path, FileMode.Create, FileAccess.Write);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Removes a file that a failed attempt left, where that is possible.</summary>
    public static void Discard(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // What made the attempt fail is the thing to tell; the next attempt writes over this file.
        }
    }
}
