using System.IO.Compression;
using System.Xml;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>A workbook that is larger than any worksheet of ours, or nested deeper.</summary>
internal sealed class WorkbookTooLargeException() : Exception("The workbook is beyond the limits of what is read.");

/// <summary>
/// How much of a workbook is read. A compressed file may unpack to a thousand times its size, and the library that reads the parts
/// holds each whole and goes down into it as deep as it is nested, so every part is looked through first.
/// </summary>
internal static class WorkbookLimits
{
    /// <summary>All parts together, unpacked, in bytes; a worksheet with 5,000 rows has about a fifth of it.</summary>
    public const int Unpacked = 32 * 1024 * 1024;

    /// <summary>Parts of a package; ours have about twenty.</summary>
    public const int Parts = 1_000;

    /// <summary>Levels of XML; a worksheet has about eight.</summary>
    public const int Depth = 64;

    /// <summary>Filled cells of all sheets.</summary>
    public const int Cells = 200_000;

    /// <summary>Characters in all cells together. A text that many cells share counts once for each.</summary>
    public const int Characters = 16 * 1024 * 1024;

    /// <summary>Looks every part through; throws where a limit is passed, a part has a document type, or the package is broken.</summary>
    public static void Check(byte[] workbook)
    {
        using var package = new ZipArchive(new MemoryStream(workbook), ZipArchiveMode.Read);
        if (package.Entries.Count > Parts)
            throw new WorkbookTooLargeException();
        var left = Unpacked;
        foreach (var entry in package.Entries)
        {
            var part = Unpack(entry, left);
            left -= part.Length;
            if (Path.GetExtension(entry.FullName).ToLowerInvariant() is ".xml" or ".rels" or ".vml" or ".psmdcp")
                CheckXml(part);
        }
    }

    // The length that the package states may be a lie, so what is counted is what comes out.
    private static byte[] Unpack(ZipArchiveEntry entry, int limit)
    {
        using var packed = entry.Open();
        using var unpacked = new MemoryStream();
        var buffer = new byte[64 * 1024];
        for (var count = packed.Read(buffer); count > 0; count = packed.Read(buffer))
        {
            if (unpacked.Length + count > limit)
                throw new WorkbookTooLargeException();
            unpacked.Write(buffer, 0, count);
        }

        return unpacked.ToArray();
    }

    private static void CheckXml(byte[] part)
    {
        using var reader = XmlReader.Create(new MemoryStream(part), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
        while (reader.Read())
        {
            if (reader.Depth > Depth)
                throw new WorkbookTooLargeException();
        }
    }
}
