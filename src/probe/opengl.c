/* OpenGL: the strings, limits and extensions of one context on our own window. */
#include "probe.h"
#include <GL/gl.h>
#include <GL/glext.h>

typedef int(WINAPI *choose_format)(HDC, const PIXELFORMATDESCRIPTOR *);
typedef int(WINAPI *describe_format)(HDC, int, UINT, PIXELFORMATDESCRIPTOR *);
typedef BOOL(WINAPI *set_format)(HDC, int, const PIXELFORMATDESCRIPTOR *);
typedef HGLRC(WINAPI *create_context)(HDC);
typedef BOOL(WINAPI *make_current)(HDC, HGLRC);
typedef BOOL(WINAPI *delete_context)(HGLRC);
typedef PROC(WINAPI *get_proc)(LPCSTR);
typedef const GLubyte *(APIENTRY *get_string)(GLenum);
typedef void(APIENTRY *get_integers)(GLenum, GLint *);
typedef GLenum(APIENTRY *get_error)(void);
typedef const char *(WINAPI *wgl_extensions_arb)(HDC);
typedef const char *(WINAPI *wgl_extensions_ext)(void);

static const struct {
    const char *name;
    GLenum code;
    int values;
} limits[] = {
#define L(name) {#name, name, 1}
    L(GL_MAX_TEXTURE_SIZE), L(GL_MAX_LIGHTS), L(GL_MAX_CLIP_PLANES), {"GL_MAX_VIEWPORT_DIMS", GL_MAX_VIEWPORT_DIMS, 2},
    L(GL_MAX_MODELVIEW_STACK_DEPTH), L(GL_MAX_PROJECTION_STACK_DEPTH), L(GL_MAX_TEXTURE_STACK_DEPTH),
    L(GL_MAX_ATTRIB_STACK_DEPTH), L(GL_MAX_NAME_STACK_DEPTH), L(GL_MAX_LIST_NESTING), L(GL_MAX_EVAL_ORDER),
    L(GL_MAX_PIXEL_MAP_TABLE), L(GL_SUBPIXEL_BITS), L(GL_AUX_BUFFERS), L(GL_RED_BITS), L(GL_GREEN_BITS), L(GL_BLUE_BITS),
    L(GL_ALPHA_BITS), L(GL_DEPTH_BITS), L(GL_STENCIL_BITS), L(GL_ACCUM_RED_BITS), L(GL_MAX_3D_TEXTURE_SIZE),
    L(GL_MAX_CUBE_MAP_TEXTURE_SIZE), L(GL_MAX_TEXTURE_UNITS), L(GL_MAX_TEXTURE_COORDS), L(GL_MAX_TEXTURE_IMAGE_UNITS),
    L(GL_MAX_COMBINED_TEXTURE_IMAGE_UNITS), L(GL_MAX_VERTEX_TEXTURE_IMAGE_UNITS), L(GL_MAX_VERTEX_ATTRIBS),
    L(GL_MAX_VARYING_FLOATS), L(GL_MAX_VERTEX_UNIFORM_COMPONENTS), L(GL_MAX_FRAGMENT_UNIFORM_COMPONENTS),
    L(GL_MAX_DRAW_BUFFERS), L(GL_MAX_ELEMENTS_VERTICES), L(GL_MAX_ELEMENTS_INDICES), L(GL_NUM_COMPRESSED_TEXTURE_FORMATS),
    L(GL_MAX_TEXTURE_LOD_BIAS), L(GL_MAX_RECTANGLE_TEXTURE_SIZE_ARB), L(GL_MAX_TEXTURE_MAX_ANISOTROPY_EXT),
    L(GL_MAX_GENERAL_COMBINERS_NV), L(GL_SAMPLE_BUFFERS), L(GL_SAMPLES),
#undef L
};

static HMODULE library;
static get_string gl_string;

static void say_gl_text(const char *key, GLenum name)
{
    const char *text = (const char *)gl_string(name);
    if (text)
        say_text(key, text);
}

/* One line an extension: the whole string may be longer than any line should be. Its length is a fact of its own,
   because some titles copy it into a buffer that is too small. */
static void say_extensions(const char *kind, const char *text)
{
    static char name[256];
    line_begin("extension-length");
    line_word(kind);
    line_decimal((DWORD)lstrlenA(text));
    line_end();
    while (*text) {
        unsigned n = 0;
        while (*text == ' ')
            text++;
        while (*text && *text != ' ') {
            if (n < sizeof(name) - 1)
                name[n++] = *text;
            text++;
        }
        name[n] = 0;
        if (n) {
            line_begin("extension");
            line_word(kind);
            line_quoted(name);
            line_end();
        }
    }
}

static void say_limits(void)
{
    static const GLint untouched = (GLint)0x81018101;
    get_integers integers = (get_integers)find_entry(library, "glGetIntegerv");
    get_error error = (get_error)find_entry(library, "glGetError");
    if (!integers || !error)
        return;
    say_step("glGetIntegerv");
    for (unsigned i = 0; i < sizeof(limits) / sizeof(limits[0]); i++) {
        GLint values[16];
        for (unsigned v = 0; v < 16; v++)
            values[v] = untouched;
        for (unsigned tries = 0; tries < 8 && error() != GL_NO_ERROR; tries++)
            ;
        integers(limits[i].code, values);
        /* A limit that the driver does not know is an error, or leaves the place untouched: it is not reported. */
        if (error() != GL_NO_ERROR || values[0] == untouched)
            continue;
        line_begin("limit");
        line_word(limits[i].name);
        for (int v = 0; v < limits[i].values; v++)
            line_decimal((DWORD)values[v]);
        line_end();
    }
}

static void say_window_system(HDC screen)
{
    get_proc get = (get_proc)find_entry(library, "wglGetProcAddress");
    wgl_extensions_arb arb;
    wgl_extensions_ext ext;
    const char *text = NULL;
    if (!get)
        return;
    say_step("wglGetExtensionsString");
    arb = (wgl_extensions_arb)get("wglGetExtensionsStringARB");
    ext = (wgl_extensions_ext)get("wglGetExtensionsStringEXT");
    if (arb)
        text = arb(screen);
    else if (ext)
        text = ext();
    if (text)
        say_extensions("wgl", text);
    else
        say_absent("wglGetExtensionsString");
}

static void say_context(HDC screen)
{
    const char *extensions;
    gl_string = (get_string)find_entry(library, "glGetString");
    if (!gl_string)
        return;
    say_step("glGetString");
    say_gl_text("vendor", GL_VENDOR);
    say_gl_text("renderer", GL_RENDERER);
    say_gl_text("version", GL_VERSION);
    say_gl_text("shading-language", GL_SHADING_LANGUAGE_VERSION);
    extensions = (const char *)gl_string(GL_EXTENSIONS);
    if (extensions)
        say_extensions("gl", extensions);
    say_limits();
    say_window_system(screen);
}

void probe_opengl(void)
{
    static const struct member members[] = {
#define M(name) MEMBER(PIXELFORMATDESCRIPTOR, #name, name)
        M(dwFlags), M(iPixelType), M(cColorBits), M(cAlphaBits), M(cAccumBits), M(cDepthBits), M(cStencilBits),
#undef M
    };
    HMODULE gdi = GetModuleHandleA("gdi32.dll");
    PIXELFORMATDESCRIPTOR wanted;
    choose_format choose;
    describe_format describe;
    set_format set;
    create_context create;
    make_current current;
    delete_context destroy;
    HDC screen;
    HGLRC context;
    int format;

    say_section_1("opengl", 0);
    library = load_library("opengl32.dll");
    if (!library)
        return;
    choose = (choose_format)find_entry(gdi, "ChoosePixelFormat");
    describe = (describe_format)find_entry(gdi, "DescribePixelFormat");
    set = (set_format)find_entry(gdi, "SetPixelFormat");
    create = (create_context)find_entry(library, "wglCreateContext");
    current = (make_current)find_entry(library, "wglMakeCurrent");
    destroy = (delete_context)find_entry(library, "wglDeleteContext");
    if (!choose || !describe || !set || !create || !current || !destroy)
        return;

    memset(&wanted, 0, sizeof(wanted));
    wanted.nSize = sizeof(wanted);
    wanted.nVersion = 1;
    wanted.dwFlags = PFD_DRAW_TO_WINDOW | PFD_SUPPORT_OPENGL | PFD_DOUBLEBUFFER;
    wanted.iPixelType = PFD_TYPE_RGBA;
    screen = GetDC(probe_window());
    wanted.cColorBits = (BYTE)GetDeviceCaps(screen, BITSPIXEL);
    wanted.cDepthBits = 16;
    say_step("ChoosePixelFormat");
    format = choose(screen, &wanted);
    if (!format || !set(screen, format, &wanted)) {
        say_failed("SetPixelFormat", GetLastError());
        return;
    }
    say_number("pixel-formats", (DWORD)describe(screen, format, sizeof(wanted), &wanted));
    SAY_MEMBERS("PIXELFORMATDESCRIPTOR", &wanted, members);
    say_step("wglCreateContext");
    context = create(screen);
    if (!context || !current(screen, context)) {
        say_failed("wglMakeCurrent", GetLastError());
        return;
    }
    say_context(screen);
    say_step("wglDeleteContext");
    current(NULL, NULL);
    destroy(context);
    ReleaseDC(probe_window(), screen);
}
