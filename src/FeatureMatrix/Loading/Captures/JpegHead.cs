using System.Buffers.Binary;

namespace FeatureMatrix.Loading.Captures;

/// <summary>
/// What the application segments of a JPEG file say about how it is shown. A camera's orientation stays, because without it the picture
/// would lie on its side, and turning its pixels would mean coding them anew: Exif (CIPA DC-008, 4.6.4) is written with that one field.
/// </summary>
internal sealed class JpegHead
{
    private const byte JfifMarker = 0xE0;
    private const byte ExifMarker = 0xE1;
    private const byte ProfileMarker = 0xE2;
    private const byte AdobeMarker = 0xEE;

    /// <summary>Most bytes of a profile in one segment (ICC.1:2010, B.4).</summary>
    private const int ProfilePart = 65519;

    private readonly SortedDictionary<byte, byte[]> _profile = [];
    private byte[] _jfif = [];
    private byte[] _adobe = [];
    private int _profileParts;
    private ushort _orientation = 1;
    private bool _hasExif;

    /// <summary>True where width and height change places when it is shown.</summary>
    public bool IsTurned => _orientation >= 5;

    private static ReadOnlySpan<byte> JfifName => "JFIF\0"u8;

    private static ReadOnlySpan<byte> ExifName => "Exif\0\0"u8;

    private static ReadOnlySpan<byte> ProfileName => "ICC_PROFILE\0"u8;

    private static ReadOnlySpan<byte> AdobeName => "Adobe"u8;

    /// <summary>Takes from a segment what is needed, from the first of its kind.</summary>
    public void Note(byte marker, ReadOnlySpan<byte> data)
    {
        if (marker == JfifMarker && data.StartsWith(JfifName) && data.Length >= 14 && _jfif.Length == 0)
        {
            // Version, unit and density stay; the size of the thumbnail becomes none.
            _jfif = [.. data[..12], 0, 0];
        }
        else if (marker == ExifMarker && data.StartsWith(ExifName) && !_hasExif)
        {
            _hasExif = true;
            _orientation = ExifOrientation.Of(data[ExifName.Length..]);
        }
        else if (marker == ProfileMarker && data.StartsWith(ProfileName))
        {
            NoteProfile(data[ProfileName.Length..]);
        }
        else if (marker == AdobeMarker && data.StartsWith(AdobeName) && data.Length >= 12 && _adobe.Length == 0)
        {
            _adobe = data[..12].ToArray();
        }
    }

    /// <summary>Writes the segments, JFIF first as its specification wants it.</summary>
    public void WriteTo(Stream target)
    {
        if (_jfif.Length > 0)
            Write(target, JfifMarker, _jfif);
        if (_orientation != 1)
            Write(target, ExifMarker, [.. ExifName, .. ExifOrientation.Only(_orientation)]);
        if (_profileParts > 0)
            WriteProfile(target);
        if (_adobe.Length > 0)
            Write(target, AdobeMarker, _adobe);
    }

    private static void Write(Stream target, byte marker, ReadOnlySpan<byte> data)
    {
        Span<byte> length = stackalloc byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(data.Length + 2));
        JpegCleaner.Keep(target, marker, length);
        target.Write(data);
    }

    private void NoteProfile(ReadOnlySpan<byte> part)
    {
        if (part.Length < 2 || part[0] == 0 || part[0] > part[1] || (_profileParts > 0 && part[1] != _profileParts) || !_profile.TryAdd(part[0], part[2..].ToArray()))
            throw PictureReasons.WrongProfile;
        _profileParts = part[1];
    }

    private void WriteProfile(Stream target)
    {
        if (_profile.Count != _profileParts)
            throw PictureReasons.WrongProfile;
        var parts = ColourProfile.OnlyColours([.. _profile.Values.SelectMany(part => part)]).Chunk(ProfilePart).ToList();
        for (var i = 0; i < parts.Count; i++)
            Write(target, ProfileMarker, [.. ProfileName, (byte)(i + 1), (byte)parts.Count, .. parts[i]]);
    }
}
