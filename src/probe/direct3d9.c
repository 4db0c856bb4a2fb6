/* Direct3D 9: identifiers, capabilities, formats and modes of each adapter; a device for the two questions that only
   a device answers. */
#include "probe.h"
#include <d3d9.h>
#include "caps_members.h"

_Static_assert(sizeof(D3DCAPS9) == 304, "D3DCAPS9");
_Static_assert(sizeof(D3DVSHADERCAPS2_0) == 16, "D3DVSHADERCAPS2_0");
_Static_assert(sizeof(D3DPSHADERCAPS2_0) == 20, "D3DPSHADERCAPS2_0");

typedef IDirect3D9 *(WINAPI *create9)(UINT);

static const struct member members[] = {
    COMMON_CAPS(D3DCAPS9, PixelShader1xMaxValue),
#define M(name) MEMBER(D3DCAPS9, #name, name)
    M(DevCaps2), M(MaxNpatchTessellationLevel), M(Reserved5), M(MasterAdapterOrdinal), M(AdapterOrdinalInGroup),
    M(NumberOfAdaptersInGroup), M(DeclTypes), M(NumSimultaneousRTs), M(StretchRectFilterCaps), M(VS20Caps.Caps),
    M(VS20Caps.DynamicFlowControlDepth), M(VS20Caps.NumTemps), M(VS20Caps.StaticFlowControlDepth), M(PS20Caps.Caps),
    M(PS20Caps.DynamicFlowControlDepth), M(PS20Caps.NumTemps), M(PS20Caps.StaticFlowControlDepth),
    M(PS20Caps.NumInstructionSlots), M(VertexTextureFilterCaps), M(MaxVShaderInstructionsExecuted),
    M(MaxPShaderInstructionsExecuted), M(MaxVertexShader30InstructionSlots), M(MaxPixelShader30InstructionSlots),
#undef M
};

static const D3DFORMAT formats[] = {
    20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 40, 41, 50, 51, 52, 60, 61, 62, 63, 64, 67,
    D3DFMT_UYVY, D3DFMT_YUY2, D3DFMT_DXT1, D3DFMT_DXT2, D3DFMT_DXT3, D3DFMT_DXT4, D3DFMT_DXT5, D3DFMT_MULTI2_ARGB8,
    D3DFMT_G8R8_G8B8, D3DFMT_R8G8_B8G8, 70, 71, 73, 75, 77, 79, 80, 81, 82, 83, 110, 111, 112, 113, 114, 115, 116, 117,
};

#define DIRECT3D IDirect3D9
#define METHOD(name) IDirect3D9_##name
#include "direct3d_formats.h"

static void say_identifier(IDirect3D9 *d3d, UINT adapter)
{
    static D3DADAPTER_IDENTIFIER9 id;
    HRESULT result;
    say_step("IDirect3D9::GetAdapterIdentifier");
    result = IDirect3D9_GetAdapterIdentifier(d3d, adapter, 0, &id);
    if (FAILED(result)) {
        say_failed("IDirect3D9::GetAdapterIdentifier", (DWORD)result);
        return;
    }
    say_text("driver", id.Driver);
    say_text("description", id.Description);
    say_text("device-name", id.DeviceName);
    say_version("driver-version", (DWORD)id.DriverVersion.HighPart, id.DriverVersion.LowPart);
    line_begin("pci");
    line_hex(id.VendorId, 4);
    line_hex(id.DeviceId, 4);
    line_hex(id.SubSysId, 4);
    line_hex(id.Revision, 4);
    line_end();
    say_guid("D3DADAPTER_IDENTIFIER9.DeviceIdentifier", &id.DeviceIdentifier);
    if (id.Driver[0])
        say_file_version(id.Driver);
}

static void say_samples(IDirect3D9 *d3d, UINT adapter)
{
    say_step("CheckDeviceMultiSampleType");
    for (unsigned d = 0; d < sizeof(displays) / sizeof(displays[0]); d++) {
        BOOL answers[17];
        for (DWORD n = 2; n <= 16; n++) {
            DWORD quality;
            answers[n] = SUCCEEDED(IDirect3D9_CheckDeviceMultiSampleType(d3d, adapter, D3DDEVTYPE_HAL, displays[d], FALSE,
                                                                         (D3DMULTISAMPLE_TYPE)n, &quality));
        }
        line_begin("samples");
        line_hex(displays[d], 4);
        for (int yes = 1; yes >= 0; yes--) {
            line_word(yes ? "yes" : "no");
            for (DWORD n = 2; n <= 16; n++)
                if (answers[n] == yes)
                    line_decimal(n);
        }
        line_end();
    }
}

/* Texture memory and query types are known to a device only. A small one, in a window, on the 64 x 64 window of ours. */
static void probe_device(IDirect3D9 *d3d, UINT adapter)
{
    static const struct {
        const char *name;
        D3DQUERYTYPE type;
    } queries[] = {{"D3DQUERYTYPE_OCCLUSION", D3DQUERYTYPE_OCCLUSION}, {"D3DQUERYTYPE_EVENT", D3DQUERYTYPE_EVENT}};
    D3DPRESENT_PARAMETERS how;
    IDirect3DDevice9 *device;
    HRESULT result;
    memset(&how, 0, sizeof(how));
    how.BackBufferWidth = 64;
    how.BackBufferHeight = 64;
    how.BackBufferFormat = D3DFMT_UNKNOWN;
    how.SwapEffect = D3DSWAPEFFECT_DISCARD;
    how.hDeviceWindow = probe_window();
    how.Windowed = TRUE;
    say_step("IDirect3D9::CreateDevice");
    result = IDirect3D9_CreateDevice(d3d, adapter, D3DDEVTYPE_HAL, probe_window(), D3DCREATE_SOFTWARE_VERTEXPROCESSING,
                                     &how, &device);
    if (FAILED(result)) {
        say_failed("IDirect3D9::CreateDevice", (DWORD)result);
        return;
    }
    line_begin("memory texture");
    line_decimal(IDirect3DDevice9_GetAvailableTextureMem(device));
    line_decimal(IDirect3DDevice9_GetAvailableTextureMem(device));
    line_end();
    for (unsigned i = 0; i < sizeof(queries) / sizeof(queries[0]); i++) {
        line_begin("query");
        line_word(queries[i].name);
        line_word(SUCCEEDED(IDirect3DDevice9_CreateQuery(device, queries[i].type, NULL)) ? "yes" : "no");
        line_end();
    }
    say_step("IDirect3DDevice9::Release");
    IDirect3DDevice9_Release(device);
}

static void probe_adapter(IDirect3D9 *d3d, UINT adapter)
{
    static D3DCAPS9 caps;
    HRESULT result;
    say_section_1("direct3d9", adapter);
    say_identifier(d3d, adapter);
    say_step("IDirect3D9::GetDeviceCaps");
    result = IDirect3D9_GetDeviceCaps(d3d, adapter, D3DDEVTYPE_HAL, &caps);
    if (FAILED(result)) {
        say_failed("IDirect3D9::GetDeviceCaps", (DWORD)result);
    } else {
        say_size("D3DCAPS9", sizeof(caps));
        SAY_MEMBERS("D3DCAPS9", &caps, members);
    }
    say_step("IDirect3D9::EnumAdapterModes");
    for (unsigned d = 0; d < sizeof(displays) / sizeof(displays[0]); d++) {
        UINT modes = IDirect3D9_GetAdapterModeCount(d3d, adapter, displays[d]);
        for (UINT i = 0; i < modes && i < 2000; i++) {
            D3DDISPLAYMODE mode;
            if (SUCCEEDED(IDirect3D9_EnumAdapterModes(d3d, adapter, displays[d], i, &mode)))
                say_adapter_mode(&mode);
        }
    }
    say_displays(d3d, adapter);
    say_formats(d3d, adapter);
    say_samples(d3d, adapter);
    probe_device(d3d, adapter);
}

void probe_direct3d9(void)
{
    HMODULE library;
    create9 create;
    IDirect3D9 *d3d;
    UINT adapters;
    say_section("directx9");
    library = load_library("d3d9.dll");
    if (!library)
        return;
    create = (create9)find_entry(library, "Direct3DCreate9");
    if (!create)
        return;
    say_step("Direct3DCreate9");
    d3d = create(D3D_SDK_VERSION);
    if (!d3d) {
        say_failed("Direct3DCreate9", 0);
        return;
    }
    adapters = IDirect3D9_GetAdapterCount(d3d);
    for (UINT i = 0; i < adapters && i < 16; i++)
        probe_adapter(d3d, i);
    say_step("IDirect3D9::Release");
    IDirect3D9_Release(d3d);
}
