/* FeatureMatrix probe: writes what this machine's graphics interfaces report into one text file. README.md says how
   to use it and defines the format. It reads; it changes no setting, installs nothing and writes only its own file. */
#include "probe.h"

HMODULE load_library(const char *name)
{
    HMODULE library;
    line_begin("step");
    line_word("LoadLibrary:");
    line_word(name);
    line_end();
    library = LoadLibraryA(name);
    if (!library)
        say_absent(name);
    return library;
}

FARPROC find_entry(HMODULE library, const char *name)
{
    FARPROC entry = GetProcAddress(library, name);
    if (!entry)
        say_absent(name);
    return entry;
}

HWND probe_window(void)
{
    static HWND window;
    if (!window) {
        WNDCLASSA type = {0};
        type.style = CS_OWNDC;
        type.lpfnWndProc = DefWindowProcA;
        type.hInstance = GetModuleHandleA(NULL);
        type.lpszClassName = "FeatureMatrixProbe";
        RegisterClassA(&type);
        window = CreateWindowExA(0, type.lpszClassName, "FeatureMatrix probe", WS_POPUP, 0, 0, 64, 64, NULL, NULL,
                                 type.hInstance, NULL);
    }
    return window;
}

/* The first argument, or PROBE.TXT. */
static const char *output_path(void)
{
    static char path[MAX_PATH];
    const char *at = GetCommandLineA();
    unsigned n = 0;
    char stop = ' ';
    if (*at == '"')
        stop = *at++;
    while (*at && *at != stop)
        at++;
    if (*at)
        at++;
    while (*at == ' ')
        at++;
    stop = ' ';
    if (*at == '"')
        stop = *at++;
    while (*at && *at != stop && n < sizeof(path) - 1)
        path[n++] = *at++;
    return n ? path : "PROBE.TXT";
}

void probe_start(void)
{
    static const char cannot[] = "The probe cannot write its file. Give another name: PROBE C:\\PROBE.TXT\r\n";
    DWORD written;
    SetErrorMode(SEM_FAILCRITICALERRORS | SEM_NOOPENFILEERRORBOX);
    if (!output_open(output_path())) {
        WriteFile(GetStdHandle(STD_ERROR_HANDLE), cannot, sizeof(cannot) - 1, &written, NULL);
        ExitProcess(1);
    }

    line_begin("capability-dump 1");
    line_end();
#ifdef _WIN64
    say_text("made-by", "FeatureMatrix probe 1, x86-64");
#else
    say_text("made-by", "FeatureMatrix probe 1, i586");
#endif

    probe_system();
    probe_directdraw();
    probe_direct3d8();
    probe_direct3d9();
    probe_opengl();

    line_begin("end");
    line_end();
    output_close();
    ExitProcess(0);
}
