/* Direct3D 8: identifiers, capabilities, formats and modes of each adapter. No device is created. */
#include "probe.h"
#include <d3d8.h>
#include "caps_members.h"

_Static_assert(sizeof(D3DCAPS8) == 212, "D3DCAPS8");

typedef IDirect3D8 *(WINAPI *create8)(UINT);

static const struct member members[] = {COMMON_CAPS(D3DCAPS8, MaxPixelShaderValue)};

static const D3DFORMAT formats[] = {
    20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 34, 40, 41, 50, 51, 52, 60, 61, 62, 63, 64, 65, 67,
    D3DFMT_UYVY, D3DFMT_YUY2, D3DFMT_DXT1, D3DFMT_DXT2, D3DFMT_DXT3, D3DFMT_DXT4, D3DFMT_DXT5,
    70, 71, 73, 75, 77, 79, 80,
};

#define DIRECT3D IDirect3D8
#define METHOD(name) IDirect3D8_##name
#include "direct3d_formats.h"

static void say_identifier(IDirect3D8 *d3d, UINT adapter)
{
    static D3DADAPTER_IDENTIFIER8 id;
    HRESULT result;
    say_step("IDirect3D8::GetAdapterIdentifier");
    result = IDirect3D8_GetAdapterIdentifier(d3d, adapter, D3DENUM_NO_WHQL_LEVEL, &id);
    if (FAILED(result)) {
        say_failed("IDirect3D8::GetAdapterIdentifier", (DWORD)result);
        return;
    }
    say_text("driver", id.Driver);
    say_text("description", id.Description);
    say_version("driver-version", (DWORD)id.DriverVersion.HighPart, id.DriverVersion.LowPart);
    line_begin("pci");
    line_hex(id.VendorId, 4);
    line_hex(id.DeviceId, 4);
    line_hex(id.SubSysId, 4);
    line_hex(id.Revision, 4);
    line_end();
    say_guid("D3DADAPTER_IDENTIFIER8.DeviceIdentifier", &id.DeviceIdentifier);
    if (id.Driver[0])
        say_file_version(id.Driver);
}

static void say_samples(IDirect3D8 *d3d, UINT adapter)
{
    say_step("CheckDeviceMultiSampleType");
    for (unsigned d = 0; d < sizeof(displays) / sizeof(displays[0]); d++) {
        BOOL answers[17];
        for (DWORD n = 2; n <= 16; n++)
            answers[n] = SUCCEEDED(IDirect3D8_CheckDeviceMultiSampleType(d3d, adapter, D3DDEVTYPE_HAL, displays[d], FALSE,
                                                                         (D3DMULTISAMPLE_TYPE)n));
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

static void probe_adapter(IDirect3D8 *d3d, UINT adapter)
{
    static D3DCAPS8 caps;
    HRESULT result;
    UINT modes;
    say_section_1("direct3d8", adapter);
    say_identifier(d3d, adapter);
    say_step("IDirect3D8::GetDeviceCaps");
    result = IDirect3D8_GetDeviceCaps(d3d, adapter, D3DDEVTYPE_HAL, &caps);
    if (FAILED(result)) {
        say_failed("IDirect3D8::GetDeviceCaps", (DWORD)result);
    } else {
        say_size("D3DCAPS8", sizeof(caps));
        SAY_MEMBERS("D3DCAPS8", &caps, members);
    }
    say_step("IDirect3D8::EnumAdapterModes");
    modes = IDirect3D8_GetAdapterModeCount(d3d, adapter);
    for (UINT i = 0; i < modes && i < 2000; i++) {
        D3DDISPLAYMODE mode;
        if (SUCCEEDED(IDirect3D8_EnumAdapterModes(d3d, adapter, i, &mode)))
            say_adapter_mode(&mode);
    }
    say_displays(d3d, adapter);
    say_formats(d3d, adapter);
    say_samples(d3d, adapter);
}

void probe_direct3d8(void)
{
    HMODULE library;
    create8 create;
    IDirect3D8 *d3d;
    UINT adapters;
    say_section("directx8");
    library = load_library("d3d8.dll");
    if (!library)
        return;
    create = (create8)find_entry(library, "Direct3DCreate8");
    if (!create)
        return;
    say_step("Direct3DCreate8");
    d3d = create(D3D_SDK_VERSION);
    if (!d3d) {
        say_failed("Direct3DCreate8", 0);
        return;
    }
    adapters = IDirect3D8_GetAdapterCount(d3d);
    for (UINT i = 0; i < adapters && i < 16; i++)
        probe_adapter(d3d, i);
    say_step("IDirect3D8::Release");
    IDirect3D8_Release(d3d);
}
