using System.Buffers.Binary;
using System.Numerics;

namespace FeatureMatrix.Pictures;

internal enum S3tcKind
{
    /// <summary>64 bits a block, opaque or with texels that are wholly clear.</summary>
    Dxt1,

    /// <summary>128 bits a block, four bits of alpha a texel.</summary>
    Dxt3,

    /// <summary>128 bits a block, alpha blended between two stated values.</summary>
    Dxt5,
}

/// <summary>
/// S3 texture compression: 4 × 4 texels in 8 or 16 bytes. Decoding follows EXT_texture_compression_s3tc; the encoder is our
/// own and simple (end colours along the axis of greatest spread), so real packs may look somewhat better.
/// </summary>
internal static class S3tc
{
    private static readonly Vector4 ClearBlack = Vector4.Zero;

    public static int BlockBytes(S3tcKind kind) => kind == S3tcKind.Dxt1 ? 8 : 16;

    /// <summary>ceil(w/4) · ceil(h/4) · bytes a block (EXT_texture_compression_s3tc, image size rule).</summary>
    public static int ImageBytes(S3tcKind kind, int width, int height) =>
        (width + 3) / 4 * ((height + 3) / 4) * BlockBytes(kind);

    /// <summary>The sixteen texels of a block, row by row.</summary>
    public static Vector4[] DecodeBlock(S3tcKind kind, ReadOnlySpan<byte> block)
    {
        var colours = kind == S3tcKind.Dxt1 ? block : block[8..];
        Span<Vector4> palette = stackalloc Vector4[4];
        Palette(colours, kind != S3tcKind.Dxt1, palette);
        var indices = BinaryPrimitives.ReadUInt32LittleEndian(colours[4..]);
        var texels = new Vector4[16];
        for (var i = 0; i < 16; i++)
        {
            texels[i] = palette[(int)(indices >> (2 * i)) & 3];
            if (kind == S3tcKind.Dxt3)
                texels[i].W = ((block[i / 2] >> (i % 2 * 4)) & 15) / 15f;
            else if (kind == S3tcKind.Dxt5)
                texels[i].W = BlendedAlpha(block, i);
        }

        return texels;
    }

    /// <summary>What a texture looks like after being compressed and read back. Edges must be multiples of four.</summary>
    public static Texture RoundTrip(S3tcKind kind, Texture texture)
    {
        var level = texture.Base;
        var texels = new Vector4[level.Texels.Length];
        Span<Vector4> source = stackalloc Vector4[16];
        for (var y = 0; y < level.Height; y += 4)
        {
            for (var x = 0; x < level.Width; x += 4)
            {
                for (var i = 0; i < 16; i++)
                    source[i] = level[x + (i % 4), y + (i / 4)];
                var decoded = DecodeBlock(kind, S3tcEncoder.EncodeBlock(kind, source));
                for (var i = 0; i < 16; i++)
                    texels[((y + (i / 4)) * level.Width) + x + (i % 4)] = decoded[i];
            }
        }

        return Texture.Of(level.Width, level.Height, texels);
    }

    /// <summary>
    /// The four colours of a block. Where the first end is greater as a number than the second, or always in the 128-bit kinds, two
    /// colours lie at thirds between the ends; else one lies half-way and the last is black and clear.
    /// </summary>
    internal static void Palette(ReadOnlySpan<byte> block, bool alwaysFour, Span<Vector4> palette)
    {
        var first = BinaryPrimitives.ReadUInt16LittleEndian(block);
        var second = BinaryPrimitives.ReadUInt16LittleEndian(block[2..]);
        palette[0] = Expand(first);
        palette[1] = Expand(second);
        var four = alwaysFour || first > second;
        palette[2] = four ? ((palette[0] * 2) + palette[1]) / 3 : (palette[0] + palette[1]) / 2;
        palette[3] = four ? (palette[0] + (palette[1] * 2)) / 3 : ClearBlack;
    }

    private static Vector4 Expand(ushort packed) =>
        new((packed >> 11) / 31f, ((packed >> 5) & 63) / 63f, (packed & 31) / 31f, 1);

    private static float BlendedAlpha(ReadOnlySpan<byte> block, int texel)
    {
        int first = block[0], second = block[1];
        ulong bits = 0;
        for (var i = 0; i < 6; i++)
            bits |= (ulong)block[2 + i] << (8 * i);
        var code = (int)(bits >> (3 * texel)) & 7;
        return code switch
        {
            0 => first / 255f,
            1 => second / 255f,
            _ when first > second => (((8 - code) * first) + ((code - 1) * second)) / (7 * 255f),
            6 => 0,
            7 => 1,
            _ => (((6 - code) * first) + ((code - 1) * second)) / (5 * 255f),
        };
    }
}
