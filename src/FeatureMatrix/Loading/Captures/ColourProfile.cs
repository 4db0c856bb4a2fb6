using System.Buffers.Binary;
using System.Text;

namespace FeatureMatrix.Loading.Captures;

/// <summary>
/// Colour profiles (ICC.1:2010). They say what the numbers of a photograph mean as colours, and beside it who made them, when, for which
/// device and with which serial number. Here the first stays and the second goes.
/// </summary>
internal static class ColourProfile
{
    private const int HeaderBytes = 128;
    private const int EntryBytes = 12;

    /// <summary>The tags that turn numbers into colours; none of them holds words.</summary>
    private static readonly HashSet<string> Colours = new(StringComparer.Ordinal)
    {
        "wtpt", "bkpt", "chad", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC", "kTRC", "A2B0", "A2B1", "A2B2", "B2A0", "B2A1", "B2A2", "cicp",
    };

    /// <summary>The places of the header that tell of maker, device, program and time (table 15): colour engine, date, platform, device, creator, checksum.</summary>
    private static readonly Range[] Origins = [4..8, 24..36, 40..44, 48..56, 80..100];

    /// <summary>The same profile with a header that tells of colours only, and the tags that colours are computed from.</summary>
    /// <exception cref="DamagedPictureException">It is no whole profile.</exception>
    public static byte[] OnlyColours(ReadOnlySpan<byte> profile)
    {
        if (profile.Length < HeaderBytes + 4 || !profile[36..].StartsWith("acsp"u8))
            throw PictureReasons.WrongProfile;
        var tags = Tags(profile);
        var data = new List<byte>();
        var places = new Dictionary<(int, int), int>();
        var begin = HeaderBytes + 4 + (tags.Count * EntryBytes);
        var table = new byte[4 + (tags.Count * EntryBytes)];
        BinaryPrimitives.WriteInt32BigEndian(table, tags.Count);
        for (var i = 0; i < tags.Count; i++)
        {
            var (name, at, length) = tags[i];
            // Three curves are often one piece of data.
            if (places.TryAdd((at, length), begin + data.Count))
            {
                data.AddRange(profile.Slice(at, length));
                while (data.Count % 4 != 0)
                    data.Add(0);
            }

            if (data.Count > profile.Length)
                throw PictureReasons.WrongProfile;
            var entry = table.AsSpan(4 + (i * EntryBytes));
            Encoding.ASCII.GetBytes(name, entry);
            BinaryPrimitives.WriteInt32BigEndian(entry[4..], places[(at, length)]);
            BinaryPrimitives.WriteInt32BigEndian(entry[8..], length);
        }

        byte[] result = [.. profile[..HeaderBytes], .. table, .. data];
        BinaryPrimitives.WriteInt32BigEndian(result, result.Length);
        foreach (var range in Origins)
            result.AsSpan(range).Clear();
        return result;
    }

    private static List<(string Name, int At, int Length)> Tags(ReadOnlySpan<byte> profile)
    {
        var count = BinaryPrimitives.ReadUInt32BigEndian(profile[HeaderBytes..]);
        if (count > (profile.Length - HeaderBytes - 4) / EntryBytes)
            throw PictureReasons.WrongProfile;
        var tags = new List<(string, int, int)>();
        for (var i = 0; i < count; i++)
        {
            var entry = profile.Slice(HeaderBytes + 4 + (i * EntryBytes), EntryBytes);
            var (at, length) = (BinaryPrimitives.ReadUInt32BigEndian(entry[4..]), BinaryPrimitives.ReadUInt32BigEndian(entry[8..]));
            if (at > profile.Length || length > profile.Length - at)
                throw PictureReasons.WrongProfile;
            var name = Encoding.Latin1.GetString(entry[..4]);
            if (Colours.Contains(name) && !tags.Exists(tag => tag.Item1 == name))
                tags.Add((name, (int)at, (int)length));
        }

        return tags;
    }
}
