/* DirectDraw devices, and the Direct3D 7 devices that each of them offers. */
#define INITGUID
#include "probe.h"
#define DIRECTDRAW_VERSION 0x0700
#define DIRECT3D_VERSION 0x0700
#include <ddraw.h>
#include <d3d.h>

_Static_assert(sizeof(DDCAPS_DX7) == 380, "DDCAPS");
_Static_assert(sizeof(DDPIXELFORMAT) == 32, "DDPIXELFORMAT");
_Static_assert(sizeof(D3DDEVICEDESC7) == 236, "D3DDEVICEDESC7");

#define MAX_DRAW_DEVICES 8
#define MAX_3D_DEVICES 8

typedef HRESULT(WINAPI *create_ex)(GUID *, LPVOID *, REFIID, IUnknown *);
typedef HRESULT(WINAPI *create_old)(GUID *, LPDIRECTDRAW *, IUnknown *);
typedef HRESULT(WINAPI *enumerate_old)(LPDDENUMCALLBACKA, LPVOID);

struct draw_device {
    GUID guid;
    BOOL is_primary;
    char name[64];
    char description[128];
};

static struct draw_device draw_devices[MAX_DRAW_DEVICES];
static unsigned draw_count;
static DWORD draw_ordinal;

struct device_3d {
    D3DDEVICEDESC7 caps;
    char name[64];
    char description[128];
};

static struct device_3d devices_3d[MAX_3D_DEVICES];
static unsigned count_3d;

static const struct member caps_members[] = {
#define M(name) MEMBER(DDCAPS_DX7, #name, name)
#define A(name) ARRAY(DDCAPS_DX7, #name, name)
    M(dwSize), M(dwCaps), M(dwCaps2), M(dwCKeyCaps), M(dwFXCaps), M(dwFXAlphaCaps), M(dwPalCaps), M(dwSVCaps),
    M(dwAlphaBltConstBitDepths), M(dwAlphaBltPixelBitDepths), M(dwAlphaBltSurfaceBitDepths),
    M(dwAlphaOverlayConstBitDepths), M(dwAlphaOverlayPixelBitDepths), M(dwAlphaOverlaySurfaceBitDepths),
    M(dwZBufferBitDepths), M(dwVidMemTotal), M(dwVidMemFree), M(dwMaxVisibleOverlays), M(dwCurrVisibleOverlays),
    M(dwNumFourCCCodes), M(dwAlignBoundarySrc), M(dwAlignSizeSrc), M(dwAlignBoundaryDest), M(dwAlignSizeDest),
    M(dwAlignStrideAlign), A(dwRops), M(ddsOldCaps.dwCaps), M(dwMinOverlayStretch), M(dwMaxOverlayStretch),
    M(dwMinLiveVideoStretch), M(dwMaxLiveVideoStretch), M(dwMinHwCodecStretch), M(dwMaxHwCodecStretch), M(dwReserved1),
    M(dwReserved2), M(dwReserved3), M(dwSVBCaps), M(dwSVBCKeyCaps), M(dwSVBFXCaps), A(dwSVBRops), M(dwVSBCaps),
    M(dwVSBCKeyCaps), M(dwVSBFXCaps), A(dwVSBRops), M(dwSSBCaps), M(dwSSBCKeyCaps), M(dwSSBFXCaps), A(dwSSBRops),
    M(dwMaxVideoPorts), M(dwCurrVideoPorts), M(dwSVBCaps2), M(dwNLVBCaps), M(dwNLVBCaps2), M(dwNLVBCKeyCaps),
    M(dwNLVBFXCaps), A(dwNLVBRops), M(ddsCaps.dwCaps), M(ddsCaps.dwCaps2), M(ddsCaps.dwCaps3), M(ddsCaps.dwCaps4),
#undef M
#undef A
};

static const struct member desc7_members[] = {
#define M(name) MEMBER(D3DDEVICEDESC7, #name, name)
#define PRIMITIVE(p)                                                                                                   \
    M(p.dwSize), M(p.dwMiscCaps), M(p.dwRasterCaps), M(p.dwZCmpCaps), M(p.dwSrcBlendCaps), M(p.dwDestBlendCaps),       \
        M(p.dwAlphaCmpCaps), M(p.dwShadeCaps), M(p.dwTextureCaps), M(p.dwTextureFilterCaps), M(p.dwTextureBlendCaps),  \
        M(p.dwTextureAddressCaps), M(p.dwStippleWidth), M(p.dwStippleHeight)
    M(dwDevCaps), PRIMITIVE(dpcLineCaps), PRIMITIVE(dpcTriCaps), M(dwDeviceRenderBitDepth), M(dwDeviceZBufferBitDepth),
    M(dwMinTextureWidth), M(dwMinTextureHeight), M(dwMaxTextureWidth), M(dwMaxTextureHeight), M(dwMaxTextureRepeat),
    M(dwMaxTextureAspectRatio), M(dwMaxAnisotropy), M(dvGuardBandLeft), M(dvGuardBandTop), M(dvGuardBandRight),
    M(dvGuardBandBottom), M(dvExtentsAdjust), M(dwStencilCaps), M(dwFVFCaps), M(dwTextureOpCaps),
    M(wMaxTextureBlendStages), M(wMaxSimultaneousTextures), M(dwMaxActiveLights), M(dvMaxVertexW), M(deviceGUID.Data1),
    M(deviceGUID.Data2), M(deviceGUID.Data3), ARRAY(D3DDEVICEDESC7, "deviceGUID.Data4", deviceGUID.Data4),
    M(wMaxUserClipPlanes), M(wMaxVertexBlendMatrices), M(dwVertexProcessingCaps), M(dwReserved1), M(dwReserved2),
    M(dwReserved3), M(dwReserved4),
#undef PRIMITIVE
#undef M
};

static BOOL same_guid(const GUID *a, const GUID *b)
{
    const unsigned char *x = (const unsigned char *)a;
    const unsigned char *y = (const unsigned char *)b;
    for (unsigned i = 0; i < sizeof(GUID); i++)
        if (x[i] != y[i])
            return FALSE;
    return TRUE;
}

static BOOL WINAPI on_draw_device(GUID *guid, LPSTR description, LPSTR name, LPVOID context)
{
    struct draw_device *device;
    (void)context;
    if (draw_count == MAX_DRAW_DEVICES)
        return FALSE;
    device = &draw_devices[draw_count++];
    device->is_primary = guid == NULL;
    if (guid)
        device->guid = *guid;
    lstrcpynA(device->name, name ? name : "", sizeof(device->name));
    lstrcpynA(device->description, description ? description : "", sizeof(device->description));
    return TRUE;
}

static BOOL WINAPI on_draw_device_ex(GUID *guid, LPSTR description, LPSTR name, LPVOID context, HMONITOR monitor)
{
    (void)monitor;
    return on_draw_device(guid, description, name, context);
}

static HRESULT WINAPI on_mode(LPDDSURFACEDESC2 mode, LPVOID context)
{
    unsigned *left = context;
    say_mode(mode->dwWidth, mode->dwHeight, mode->ddpfPixelFormat.dwRGBBitCount, mode->dwRefreshRate);
    return --*left ? DDENUMRET_OK : DDENUMRET_CANCEL;
}

static HRESULT WINAPI on_pixel_format(DDPIXELFORMAT *format, void *use)
{
    line_begin("pixel-format");
    line_word(use);
    line_hex(format->dwFlags, 4);
    line_hex(format->dwFourCC, 4);
    line_hex(format->dwRGBBitCount, 4);
    line_hex(format->dwRBitMask, 4);
    line_hex(format->dwGBitMask, 4);
    line_hex(format->dwBBitMask, 4);
    line_hex(format->dwRGBAlphaBitMask, 4);
    line_end();
    return D3DENUMRET_OK;
}

static HRESULT WINAPI on_3d_device(char *description, char *name, D3DDEVICEDESC7 *caps, void *context)
{
    struct device_3d *device;
    (void)context;
    if (count_3d == MAX_3D_DEVICES)
        return D3DENUMRET_CANCEL;
    device = &devices_3d[count_3d++];
    device->caps = *caps;
    lstrcpynA(device->name, name ? name : "", sizeof(device->name));
    lstrcpynA(device->description, description ? description : "", sizeof(device->description));
    return D3DENUMRET_OK;
}

static void say_video_memory(IDirectDraw7 *draw, const char *pool, DWORD caps)
{
    DDSCAPS2 kind = {0};
    DWORD total = 0;
    DWORD free = 0;
    HRESULT result;
    kind.dwCaps = caps;
    result = IDirectDraw7_GetAvailableVidMem(draw, &kind, &total, &free);
    if (FAILED(result)) {
        say_failed(pool, (DWORD)result);
        return;
    }
    line_begin("memory");
    line_word(pool);
    line_decimal(total);
    line_decimal(free);
    line_end();
}

static void say_identifier(IDirectDraw7 *draw)
{
    static DDDEVICEIDENTIFIER2 id;
    HRESULT result;
    say_step("IDirectDraw7::GetDeviceIdentifier");
    result = IDirectDraw7_GetDeviceIdentifier(draw, &id, 0);
    if (FAILED(result)) {
        say_failed("IDirectDraw7::GetDeviceIdentifier", (DWORD)result);
        return;
    }
    say_text("driver", id.szDriver);
    say_text("description", id.szDescription);
    say_version("driver-version", (DWORD)id.liDriverVersion.HighPart, id.liDriverVersion.LowPart);
    line_begin("pci");
    line_hex(id.dwVendorId, 4);
    line_hex(id.dwDeviceId, 4);
    line_hex(id.dwSubSysId, 4);
    line_hex(id.dwRevision, 4);
    line_end();
    say_guid("DDDEVICEIDENTIFIER2.guidDeviceIdentifier", &id.guidDeviceIdentifier);
    if (id.szDriver[0])
        say_file_version(id.szDriver);
}

static void say_fourcc(IDirectDraw7 *draw)
{
    static DWORD codes[64];
    DWORD count = sizeof(codes) / sizeof(codes[0]);
    HRESULT result = IDirectDraw7_GetFourCCCodes(draw, &count, codes);
    if (FAILED(result)) {
        say_failed("IDirectDraw7::GetFourCCCodes", (DWORD)result);
        return;
    }
    line_begin("fourcc");
    for (DWORD i = 0; i < count && i < sizeof(codes) / sizeof(codes[0]); i++)
        line_hex(codes[i], 4);
    line_end();
}

static void say_draw_caps(IDirectDraw7 *draw)
{
    static DDCAPS_DX7 hardware;
    static DDCAPS_DX7 emulation;
    HRESULT result;
    hardware.dwSize = sizeof(hardware);
    emulation.dwSize = sizeof(emulation);
    say_step("IDirectDraw7::GetCaps");
    result = IDirectDraw7_GetCaps(draw, (LPDDCAPS)&hardware, (LPDDCAPS)&emulation);
    if (FAILED(result)) {
        say_failed("IDirectDraw7::GetCaps", (DWORD)result);
        return;
    }
    say_size("DDCAPS", sizeof(hardware));
    SAY_MEMBERS("DDCAPS", &hardware, caps_members);
}

/* Formats are asked of a device; it draws nothing and lives for the length of the question. */
static void say_texture_formats(IDirectDraw7 *draw, IDirect3D7 *d3d, const GUID *device_id)
{
    DDSURFACEDESC2 wanted;
    IDirectDrawSurface7 *surface;
    IDirect3DDevice7 *device;
    HRESULT result;
    memset(&wanted, 0, sizeof(wanted));
    wanted.dwSize = sizeof(wanted);
    wanted.dwFlags = DDSD_CAPS | DDSD_WIDTH | DDSD_HEIGHT;
    wanted.dwWidth = 64;
    wanted.dwHeight = 64;
    wanted.ddsCaps.dwCaps = DDSCAPS_OFFSCREENPLAIN | DDSCAPS_3DDEVICE | DDSCAPS_VIDEOMEMORY;
    say_step("IDirectDraw7::CreateSurface");
    result = IDirectDraw7_CreateSurface(draw, &wanted, &surface, NULL);
    if (FAILED(result)) {
        say_failed("IDirectDraw7::CreateSurface", (DWORD)result);
        return;
    }
    say_step("IDirect3D7::CreateDevice");
    result = IDirect3D7_CreateDevice(d3d, device_id, surface, &device);
    if (FAILED(result)) {
        say_failed("IDirect3D7::CreateDevice", (DWORD)result);
    } else {
        say_step("IDirect3DDevice7::EnumTextureFormats");
        result = IDirect3DDevice7_EnumTextureFormats(device, on_pixel_format, (void *)"texture");
        if (FAILED(result))
            say_failed("IDirect3DDevice7::EnumTextureFormats", (DWORD)result);
        say_step("IDirect3DDevice7::Release");
        IDirect3DDevice7_Release(device);
    }
    IDirectDrawSurface7_Release(surface);
}

static void probe_direct3d7(IDirectDraw7 *draw)
{
    IDirect3D7 *d3d;
    HRESULT result;
    say_step("IDirectDraw7::QueryInterface:IDirect3D7");
    result = IDirectDraw7_QueryInterface(draw, &IID_IDirect3D7, (void **)&d3d);
    if (FAILED(result)) {
        say_failed("IDirectDraw7::QueryInterface:IDirect3D7", (DWORD)result);
        return;
    }
    count_3d = 0;
    say_step("IDirect3D7::EnumDevices");
    result = IDirect3D7_EnumDevices(d3d, on_3d_device, NULL);
    if (FAILED(result))
        say_failed("IDirect3D7::EnumDevices", (DWORD)result);
    for (unsigned i = 0; i < count_3d; i++) {
        const GUID *id = &devices_3d[i].caps.deviceGUID;
        say_section_2("direct3d7", draw_ordinal, i);
        say_text("name", devices_3d[i].name);
        say_text("description", devices_3d[i].description);
        say_size("D3DDEVICEDESC7", sizeof(D3DDEVICEDESC7));
        SAY_MEMBERS("D3DDEVICEDESC7", &devices_3d[i].caps, desc7_members);
        say_step("IDirect3D7::EnumZBufferFormats");
        result = IDirect3D7_EnumZBufferFormats(d3d, id, on_pixel_format, (void *)"depth");
        if (FAILED(result))
            say_failed("IDirect3D7::EnumZBufferFormats", (DWORD)result);
        if (same_guid(id, &IID_IDirect3DHALDevice) || same_guid(id, &IID_IDirect3DTnLHalDevice))
            say_texture_formats(draw, d3d, id);
    }
    IDirect3D7_Release(d3d);
}

static void probe_draw_device(HMODULE library, const struct draw_device *device)
{
    GUID *guid = device->is_primary ? NULL : (GUID *)&device->guid;
    create_ex create = (create_ex)find_entry(library, "DirectDrawCreateEx");
    IDirectDraw7 *draw;
    unsigned modes_left = 2000;
    HRESULT result;
    say_section_1("directdraw", draw_ordinal);
    say_text("name", device->name);
    say_text("enumerated-as", device->description);
    say_number("primary", device->is_primary != FALSE);
    if (!create)
        return;
    say_step("DirectDrawCreateEx");
    result = create(guid, (LPVOID *)&draw, &IID_IDirectDraw7, NULL);
    if (FAILED(result)) {
        say_failed("DirectDrawCreateEx", (DWORD)result);
        return;
    }
    IDirectDraw7_SetCooperativeLevel(draw, NULL, DDSCL_NORMAL);
    say_identifier(draw);
    say_draw_caps(draw);
    say_step("IDirectDraw7::GetAvailableVidMem");
    say_video_memory(draw, "local", DDSCAPS_VIDEOMEMORY | DDSCAPS_LOCALVIDMEM);
    say_video_memory(draw, "non-local", DDSCAPS_VIDEOMEMORY | DDSCAPS_NONLOCALVIDMEM);
    say_video_memory(draw, "texture", DDSCAPS_TEXTURE);
    say_fourcc(draw);
    say_step("IDirectDraw7::EnumDisplayModes");
    result = IDirectDraw7_EnumDisplayModes(draw, DDEDM_REFRESHRATES, NULL, &modes_left, on_mode);
    if (FAILED(result))
        say_failed("IDirectDraw7::EnumDisplayModes", (DWORD)result);
    probe_direct3d7(draw);
    IDirectDraw7_Release(draw);
}

/* Before DirectX 7 only the first interface exists; it takes the shorter structures of its time. */
static void probe_old_directdraw(HMODULE library)
{
    static const DWORD sizes[] = {380, 364, 316};
    static DDCAPS_DX7 caps;
    create_old create = (create_old)find_entry(library, "DirectDrawCreate");
    IDirectDraw *draw;
    HRESULT result;
    if (!create)
        return;
    say_section_1("directdraw", 0);
    say_step("DirectDrawCreate");
    result = create(NULL, &draw, NULL);
    if (FAILED(result)) {
        say_failed("DirectDrawCreate", (DWORD)result);
        return;
    }
    for (unsigned i = 0; i < 3; i++) {
        memset(&caps, 0, sizeof(caps));
        caps.dwSize = sizes[i];
        say_step("IDirectDraw::GetCaps");
        result = IDirectDraw_GetCaps(draw, (LPDDCAPS)&caps, NULL);
        if (FAILED(result)) {
            say_failed("IDirectDraw::GetCaps", (DWORD)result);
            continue;
        }
        /* Members before ddsCaps lie at the same place in all three; those beyond the size are not reported. */
        say_size("DDCAPS", sizes[i]);
        for (unsigned m = 0; m < sizeof(caps_members) / sizeof(caps_members[0]); m++)
            if (caps_members[m].offset + caps_members[m].bytes * caps_members[m].count <= (int)sizes[i] &&
                caps_members[m].offset < offsetof(DDCAPS_DX7, dwMaxVideoPorts))
                say_members("DDCAPS", &caps, &caps_members[m], 1);
        break;
    }
    IDirectDraw_Release(draw);
}

void probe_directdraw(void)
{
    HMODULE library;
    LPDIRECTDRAWENUMERATEEXA enumerate;
    enumerate_old enumerate_plain;
    say_section("directx7");
    library = load_library("ddraw.dll");
    if (!library)
        return;
    enumerate = (LPDIRECTDRAWENUMERATEEXA)find_entry(library, "DirectDrawEnumerateExA");
    enumerate_plain = (enumerate_old)find_entry(library, "DirectDrawEnumerateA");
    say_step("DirectDrawEnumerate");
    if (enumerate)
        enumerate(on_draw_device_ex, NULL,
                  DDENUM_ATTACHEDSECONDARYDEVICES | DDENUM_DETACHEDSECONDARYDEVICES | DDENUM_NONDISPLAYDEVICES);
    else if (enumerate_plain)
        enumerate_plain(on_draw_device, NULL);
    if (!GetProcAddress(library, "DirectDrawCreateEx")) {
        say_absent("DirectDrawCreateEx");
        probe_old_directdraw(library);
        return;
    }
    for (draw_ordinal = 0; draw_ordinal < draw_count; draw_ordinal++)
        probe_draw_device(library, &draw_devices[draw_ordinal]);
}
