using System.Buffers.Binary;
using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>Makes S3TC blocks: end colours at the extremes along the widest diagonal of the block's colours.</summary>
internal static class S3tcEncoder
{
    public static byte[] EncodeBlock(S3tcKind kind, ReadOnlySpan<Vector4> texels)
    {
        var block = new byte[S3tc.BlockBytes(kind)];
        var colours = block.AsSpan(kind == S3tcKind.Dxt1 ? 0 : 8);
        var holes = false;
        if (kind == S3tcKind.Dxt1)
        {
            foreach (var texel in texels)
                holes |= texel.W < 0.5f;
        }

        EncodeColours(texels, holes, kind != S3tcKind.Dxt1, colours);
        if (kind == S3tcKind.Dxt3)
        {
            for (var i = 0; i < 16; i++)
                block[i / 2] |= (byte)(Dither.Nearest(texels[i].W, 15) << (i % 2 * 4));
        }
        else if (kind == S3tcKind.Dxt5)
        {
            EncodeAlpha(texels, block);
        }

        return block;
    }

    private static void EncodeColours(ReadOnlySpan<Vector4> texels, bool holes, bool alwaysFour, Span<byte> block)
    {
        var mean = Vector4.Zero;
        foreach (var texel in texels)
            mean += texel / 16;
        var axis = Vector4.Zero;
        foreach (var texel in texels)
        {
            var away = texel - mean;
            // All outliers are brought to one side, so that their sum keeps the direction of the spread.
            axis += (away.X + away.Y + away.Z) < 0 ? -away : away;
        }

        ushort first = 0, second = 0;
        float least = float.MaxValue, most = float.MinValue;
        foreach (var texel in texels)
        {
            if (holes && texel.W < 0.5f)
                continue;
            var along = (texel.X * axis.X) + (texel.Y * axis.Y) + (texel.Z * axis.Z);
            if (along > most)
                (most, first) = (along, Pack(texel));
            if (along < least)
                (least, second) = (along, Pack(texel));
        }

        // The order of the ends says whether the block has four colours or three and clear.
        if (holes == first > second)
            (first, second) = (second, first);
        BinaryPrimitives.WriteUInt16LittleEndian(block, first);
        BinaryPrimitives.WriteUInt16LittleEndian(block[2..], second);
        Span<Vector4> palette = stackalloc Vector4[4];
        S3tc.Palette(block, alwaysFour, palette);
        var usable = first > second || alwaysFour ? 4 : 3;
        var indices = 0u;
        for (var i = 0; i < 16; i++)
        {
            var best = holes && texels[i].W < 0.5f ? 3 : Nearest(texels[i], palette[..usable]);
            indices |= (uint)best << (2 * i);
        }

        BinaryPrimitives.WriteUInt32LittleEndian(block[4..], indices);
    }

    private static int Nearest(Vector4 colour, ReadOnlySpan<Vector4> palette)
    {
        var best = 0;
        var least = float.MaxValue;
        for (var i = 0; i < palette.Length; i++)
        {
            var away = colour - palette[i];
            var square = (away.X * away.X) + (away.Y * away.Y) + (away.Z * away.Z);
            if (square < least)
                (least, best) = (square, i);
        }

        return best;
    }

    private static void EncodeAlpha(ReadOnlySpan<Vector4> texels, byte[] block)
    {
        byte high = 0, low = 255;
        foreach (var texel in texels)
        {
            var alpha = (byte)Dither.Nearest(texel.W, 255);
            high = Math.Max(high, alpha);
            low = Math.Min(low, alpha);
        }

        (block[0], block[1]) = (high, low);
        if (high == low)
            return;
        ulong bits = 0;
        for (var i = 0; i < 16; i++)
        {
            var step = Dither.Nearest(((texels[i].W * 255) - low) / (high - low), 7);
            // Step 7 is the first end (code 0), step 0 the second (code 1); those between are coded 2..7 downwards.
            var code = step switch { 7 => 0, 0 => 1, _ => 8 - step };
            bits |= (ulong)code << (3 * i);
        }

        for (var i = 0; i < 6; i++)
            block[2 + i] = (byte)(bits >> (8 * i));
    }

    private static ushort Pack(Vector4 colour) =>
        (ushort)((Dither.Nearest(colour.X, 31) << 11) | (Dither.Nearest(colour.Y, 63) << 5) | Dither.Nearest(colour.Z, 31));
}
