/* Questions that Direct3D 8 and 9 ask in the same words. Included by both after their own headers; DIRECT3D names
   the interface, METHOD pastes its calls together. */

static const D3DFORMAT displays[] = {D3DFMT_X8R8G8B8, D3DFMT_R5G6B5, D3DFMT_X1R5G5B5};

struct format_question {
    const char *use;
    DWORD usage;
    D3DRESOURCETYPE resource;
};

/* A depth format as a texture is what shadow mapping needs; it has no capability bit of its own. */
static const struct format_question questions[] = {
    {"texture", 0, D3DRTYPE_TEXTURE},
    {"cube-texture", 0, D3DRTYPE_CUBETEXTURE},
    {"volume-texture", 0, D3DRTYPE_VOLUMETEXTURE},
    {"target", D3DUSAGE_RENDERTARGET, D3DRTYPE_SURFACE},
    {"target-texture", D3DUSAGE_RENDERTARGET, D3DRTYPE_TEXTURE},
    {"depth", D3DUSAGE_DEPTHSTENCIL, D3DRTYPE_SURFACE},
    {"depth-texture", D3DUSAGE_DEPTHSTENCIL, D3DRTYPE_TEXTURE},
};

static void say_formats(DIRECT3D *d3d, UINT adapter)
{
    BOOL answers[sizeof(formats) / sizeof(formats[0])];
    for (unsigned q = 0; q < sizeof(questions) / sizeof(questions[0]); q++) {
        for (unsigned d = 0; d < sizeof(displays) / sizeof(displays[0]); d++) {
            line_begin("step");
            line_word("CheckDeviceFormat:");
            line_word(questions[q].use);
            line_hex(displays[d], 4);
            line_end();
            for (unsigned f = 0; f < sizeof(formats) / sizeof(formats[0]); f++)
                answers[f] = SUCCEEDED(METHOD(CheckDeviceFormat)(d3d, adapter, D3DDEVTYPE_HAL, displays[d],
                                                                questions[q].usage, questions[q].resource, formats[f]));
            line_begin("formats");
            line_word(questions[q].use);
            line_hex(displays[d], 4);
            for (int yes = 1; yes >= 0; yes--) {
                line_word(yes ? "yes" : "no");
                for (unsigned f = 0; f < sizeof(formats) / sizeof(formats[0]); f++)
                    if (answers[f] == yes)
                        line_hex(formats[f], 4);
            }
            line_end();
        }
    }
}

/* Which back buffers the hardware draws to under each display format, in a window and full screen. */
static void say_displays(DIRECT3D *d3d, UINT adapter)
{
    static const D3DFORMAT backs[] = {D3DFMT_X8R8G8B8, D3DFMT_A8R8G8B8, D3DFMT_R5G6B5, D3DFMT_X1R5G5B5, D3DFMT_A1R5G5B5};
    say_step("CheckDeviceType");
    for (unsigned d = 0; d < sizeof(displays) / sizeof(displays[0]); d++) {
        for (int windowed = 0; windowed < 2; windowed++) {
            BOOL answers[sizeof(backs) / sizeof(backs[0])];
            for (unsigned b = 0; b < sizeof(backs) / sizeof(backs[0]); b++)
                answers[b] = SUCCEEDED(
                    METHOD(CheckDeviceType)(d3d, adapter, D3DDEVTYPE_HAL, displays[d], backs[b], windowed));
            line_begin("formats");
            line_word(windowed ? "window" : "full-screen");
            line_hex(displays[d], 4);
            for (int yes = 1; yes >= 0; yes--) {
                line_word(yes ? "yes" : "no");
                for (unsigned b = 0; b < sizeof(backs) / sizeof(backs[0]); b++)
                    if (answers[b] == yes)
                        line_hex(backs[b], 4);
            }
            line_end();
        }
    }
}

static DWORD bits_of(D3DFORMAT format)
{
    switch (format) {
    case D3DFMT_R5G6B5:
    case D3DFMT_X1R5G5B5:
    case D3DFMT_A1R5G5B5:
        return 16;
    case D3DFMT_R8G8B8:
        return 24;
    case D3DFMT_P8:
        return 8;
    default:
        return 32;
    }
}

static void say_adapter_mode(const D3DDISPLAYMODE *mode)
{
    line_begin("mode");
    line_decimal(mode->Width);
    line_decimal(mode->Height);
    line_decimal(bits_of(mode->Format));
    line_decimal(mode->RefreshRate);
    line_hex(mode->Format, 4);
    line_end();
}
