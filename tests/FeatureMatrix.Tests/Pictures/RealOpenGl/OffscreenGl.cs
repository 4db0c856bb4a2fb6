using System.Runtime.InteropServices;
using FeatureMatrix.Tests.Support;

// Every call goes to the context that the constructor made current on this thread, so none touches a field.
#pragma warning disable CA1822

namespace FeatureMatrix.Tests.Pictures.RealOpenGl;

/// <summary>
/// A software OpenGL context that draws into memory (the off-screen library of Debian package libosmesa6), with function pointers to the
/// fixed-function calls the comparisons need. Constants are those of gl.xml (package khronos-api).
/// </summary>
internal sealed unsafe partial class OffscreenGl : IDisposable
{
    private const int Rgba = 0x1908;
    private const uint UnsignedByte = 0x1401;

    private static readonly Lazy<IntPtr> Library = new(() =>
    {
        var path = External.File("/usr/lib/x86_64-linux-gnu/libOSMesa.so.8", "libosmesa6");
        // Exact filtering instead of the fast approximations this rasterizer takes by default.
        _ = SetEnvironment("GALLIVM_PERF", "no_filter_hacks", 1);
        return NativeLibrary.Load(path);
    });

    private readonly IntPtr context;
    private readonly byte[] pixels;
    private GCHandle pinned;

    public OffscreenGl(int width, int height, int depthBits)
    {
        (Width, Height) = (width, height);
        pixels = new byte[width * height * 4];
        pinned = GCHandle.Alloc(pixels, GCHandleType.Pinned);
        context = ((delegate* unmanaged<uint, int, int, int, IntPtr, IntPtr>)Export("OSMesaCreateContextExt"))(Rgba, depthBits, 0, 0, 0);
        Assert.NotEqual(IntPtr.Zero, context);
        var current = ((delegate* unmanaged<IntPtr, IntPtr, uint, int, int, byte>)Export("OSMesaMakeCurrent"))(
            context, pinned.AddrOfPinnedObject(), UnsignedByte, width, height);
        Assert.Equal(1, current);
        ((delegate* unmanaged<int, int, int, int, void>)Call("glViewport"))(0, 0, width, height);
        int given;
        ((delegate* unmanaged<uint, int*, void>)Call("glGetIntegerv"))(0x0D56, &given);
        Assert.Equal(depthBits, given);
    }

    public int Width { get; }

    public int Height { get; }

    public string Text(uint name) =>
        Marshal.PtrToStringAnsi(((delegate* unmanaged<uint, IntPtr>)Call("glGetString"))(name)) ?? "";

    public void Enable(uint what) => ((delegate* unmanaged<uint, void>)Call("glEnable"))(what);

    public void Disable(uint what) => ((delegate* unmanaged<uint, void>)Call("glDisable"))(what);

    public void Clear(double red, double green, double blue)
    {
        ((delegate* unmanaged<float, float, float, float, void>)Call("glClearColor"))((float)red, (float)green, (float)blue, 1);
        ((delegate* unmanaged<uint, void>)Call("glClear"))(0x4000 | 0x100 | 0x400);
    }

    public void Matrix(uint mode, double[] columns)
    {
        ((delegate* unmanaged<uint, void>)Call("glMatrixMode"))(mode);
        fixed (double* first = columns)
            ((delegate* unmanaged<double*, void>)Call("glLoadMatrixd"))(first);
    }

    public void Fog(uint name, double value) => ((delegate* unmanaged<uint, float, void>)Call("glFogf"))(name, (float)value);

    public void FogColour(float red, float green, float blue)
    {
        var colour = stackalloc float[] { red, green, blue, 1 };
        ((delegate* unmanaged<uint, float*, void>)Call("glFogfv"))(0x0B66, colour);
    }

    public void BlendFunction(uint source, uint destination) =>
        ((delegate* unmanaged<uint, uint, void>)Call("glBlendFunc"))(source, destination);

    public void BlendEquation(uint mode) => ((delegate* unmanaged<uint, void>)Call("glBlendEquation"))(mode);

    public void AlphaAbove(double reference) =>
        ((delegate* unmanaged<uint, float, void>)Call("glAlphaFunc"))(0x0204, (float)reference);

    public void DepthFunction(uint test) => ((delegate* unmanaged<uint, void>)Call("glDepthFunc"))(test);

    public void DepthMask(bool write) => ((delegate* unmanaged<byte, void>)Call("glDepthMask"))(write ? (byte)1 : (byte)0);

    public void ActiveTexture(int unit) => ((delegate* unmanaged<uint, void>)Call("glActiveTexture"))(0x84C0u + (uint)unit);

    public void NewTexture()
    {
        uint name;
        ((delegate* unmanaged<int, uint*, void>)Call("glGenTextures"))(1, &name);
        ((delegate* unmanaged<uint, uint, void>)Call("glBindTexture"))(0x0DE1, name);
    }

    public void TextureParameter(uint name, double value) =>
        ((delegate* unmanaged<uint, uint, float, void>)Call("glTexParameterf"))(0x0DE1, name, (float)value);

    public void TextureImage(int level, int width, int height, byte[] rgba)
    {
        fixed (byte* first = rgba)
        {
            ((delegate* unmanaged<uint, int, int, int, int, int, uint, uint, byte*, void>)Call("glTexImage2D"))(
                0x0DE1, level, 0x8058, width, height, 0, Rgba, UnsignedByte, first);
        }
    }

    public void CompressedImage(uint format, int width, int height, byte[] blocks)
    {
        fixed (byte* first = blocks)
        {
            ((delegate* unmanaged<uint, int, uint, int, int, int, int, byte*, void>)Call("glCompressedTexImage2D"))(
                0x0DE1, 0, format, width, height, 0, blocks.Length, first);
        }
    }

    public void BeginTriangles() => ((delegate* unmanaged<uint, void>)Call("glBegin"))(4);

    public void End() => ((delegate* unmanaged<void>)Call("glEnd"))();

    public void Vertex(double x, double y, double z) => ((delegate* unmanaged<double, double, double, void>)Call("glVertex3d"))(x, y, z);

    public void Coordinates(int unit, double u, double v) =>
        ((delegate* unmanaged<uint, double, double, void>)Call("glMultiTexCoord2d"))(0x84C0u + (uint)unit, u, v);

    public void Colour(float red, float green, float blue, float alpha) =>
        ((delegate* unmanaged<float, float, float, float, void>)Call("glColor4f"))(red, green, blue, alpha);

    public void FogCoordinate(double value) => ((delegate* unmanaged<double, void>)Call("glFogCoordd"))(value);

    public void FogSource(int source) => ((delegate* unmanaged<uint, int, void>)Call("glFogi"))(0x8450, source);

    public void FogModeIs(int mode) => ((delegate* unmanaged<uint, int, void>)Call("glFogi"))(0x0B65, mode);

    /// <summary>Rows from the top, three bytes a pixel. Fails the test if any call before it was in error.</summary>
    public byte[] ReadRgb()
    {
        Finish();
        var rgb = new byte[Width * Height * 3];
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
                pixels.AsSpan((((Height - 1 - y) * Width) + x) * 4, 3).CopyTo(rgb.AsSpan(((y * Width) + x) * 3));
        }

        return rgb;
    }

    /// <summary>The depth buffer, rows from the top, as whole numbers of 32 bits (the buffer's range stretched).</summary>
    public uint[] ReadDepth()
    {
        Finish();
        var bottomUp = new uint[Width * Height];
        fixed (uint* first = bottomUp)
        {
            ((delegate* unmanaged<int, int, int, int, uint, uint, uint*, void>)Call("glReadPixels"))(
                0, 0, Width, Height, 0x1902, 0x1405, first);
        }

        var depth = new uint[bottomUp.Length];
        for (var y = 0; y < Height; y++)
            Array.Copy(bottomUp, (Height - 1 - y) * Width, depth, y * Width, Width);
        return depth;
    }

    public void Dispose()
    {
        ((delegate* unmanaged<IntPtr, void>)Export("OSMesaDestroyContext"))(context);
        pinned.Free();
    }

    private void Finish()
    {
        ((delegate* unmanaged<void>)Call("glFinish"))();
        Assert.Equal(0u, ((delegate* unmanaged<uint>)Call("glGetError"))());
    }

    [LibraryImport("libc", EntryPoint = "setenv", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int SetEnvironment(string name, string value, int overwrite);

    private static IntPtr Export(string name) => NativeLibrary.GetExport(Library.Value, name);

    private static IntPtr Call(string name)
    {
        fixed (byte* text = System.Text.Encoding.ASCII.GetBytes(name + '\0'))
        {
            var address = ((delegate* unmanaged<byte*, IntPtr>)Export("OSMesaGetProcAddress"))(text);
            Assert.True(address != IntPtr.Zero, $"{name} is not offered");
            return address;
        }
    }
}
