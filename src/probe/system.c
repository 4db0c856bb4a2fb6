/* The operating system, the display devices it lists, and the versions of the files they run on. */
#include "probe.h"

#define DISPLAY_CLASS "{4D36E968-E325-11CE-BFC1-08002BE10318}"

typedef BOOL(WINAPI *enum_display_devices)(LPCSTR, DWORD, PDISPLAY_DEVICEA, DWORD);
typedef DWORD(WINAPI *version_size)(LPCSTR, LPDWORD);
typedef BOOL(WINAPI *version_info)(LPCSTR, DWORD, DWORD, LPVOID);
typedef BOOL(WINAPI *version_query)(LPCVOID, LPCSTR, LPVOID *, PUINT);

static BOOL is_nt;

static BOOL registry_text(HKEY key, const char *name, char *value, DWORD bytes)
{
    DWORD type;
    DWORD room = bytes - 1;
    if (RegQueryValueExA(key, name, NULL, &type, (BYTE *)value, &room) != ERROR_SUCCESS)
        return FALSE;
    if (type != REG_SZ && type != REG_MULTI_SZ && type != REG_EXPAND_SZ)
        return FALSE;
    value[room] = 0;
    return value[0] != 0;
}

static void say_registry_text(HKEY key, const char *name)
{
    static char value[512];
    if (registry_text(key, name, value, sizeof(value))) {
        line_begin("text");
        line_word(name);
        line_quoted(value);
        line_end();
    }
}

static char *append(char *target, char *limit, const char *text)
{
    while (*text && target < limit)
        *target++ = *text++;
    *target = 0;
    return target;
}

void say_file_version(const char *file)
{
    static HMODULE library;
    static version_size size;
    static version_info info;
    static version_query query;
    static BYTE block[8192];
    static char path[MAX_PATH];
    char *limit = path + sizeof(path) - 1;
    char *at = path;
    BOOL has_path = FALSE;
    DWORD handle;
    DWORD bytes;
    VS_FIXEDFILEINFO *fixed;
    UINT length;

    if (!library) {
        library = LoadLibraryA("version.dll");
        if (!library)
            return;
        size = (version_size)GetProcAddress(library, "GetFileVersionInfoSizeA");
        info = (version_info)GetProcAddress(library, "GetFileVersionInfoA");
        query = (version_query)GetProcAddress(library, "VerQueryValueA");
    }
    if (!size || !info || !query)
        return;

    for (const char *c = file; *c; c++)
        has_path |= *c == '\\';
    if (!has_path) {
        at += GetSystemDirectoryA(path, MAX_PATH);
        at = append(at, limit, "\\");
    }
    append(at, limit, file);

    bytes = size(path, &handle);
    if (!bytes || bytes > sizeof(block) || !info(path, 0, bytes, block) || !query(block, "\\", (void **)&fixed, &length) ||
        length < sizeof(*fixed))
        return;
    line_begin("file");
    line_quoted(file);
    line_decimal(HIWORD(fixed->dwFileVersionMS));
    line_decimal(LOWORD(fixed->dwFileVersionMS));
    line_decimal(HIWORD(fixed->dwFileVersionLS));
    line_decimal(LOWORD(fixed->dwFileVersionLS));
    line_end();
}

static void say_operating_system(void)
{
    static const char *files[] = {"ddraw.dll", "d3dim.dll", "d3dim700.dll", "d3d8.dll", "d3d9.dll", "opengl32.dll"};
    OSVERSIONINFOA os = {0};
    MEMORYSTATUS memory = {0};
    say_section("system");
    os.dwOSVersionInfoSize = sizeof(os);
    if (GetVersionExA(&os)) {
        is_nt = os.dwPlatformId == VER_PLATFORM_WIN32_NT;
        say_number("os-platform", os.dwPlatformId);
        say_number("os-major", os.dwMajorVersion);
        say_number("os-minor", os.dwMinorVersion);
        say_number("os-build", is_nt ? os.dwBuildNumber : LOWORD(os.dwBuildNumber));
        say_text("os-extra", os.szCSDVersion);
    }
    say_number("code-page", GetACP());
    memory.dwLength = sizeof(memory);
    GlobalMemoryStatus(&memory);
    say_number("memory-kib", (DWORD)(memory.dwTotalPhys / 1024));
    for (unsigned i = 0; i < sizeof(files) / sizeof(files[0]); i++)
        say_file_version(files[i]);
}

static void say_current_modes(void)
{
    HDC screen = GetDC(NULL);
    DEVMODEA mode;
    memset(&mode, 0, sizeof(mode));
    mode.dmSize = sizeof(mode);
    say_section("modes");
    say_number("current-width", (DWORD)GetSystemMetrics(SM_CXSCREEN));
    say_number("current-height", (DWORD)GetSystemMetrics(SM_CYSCREEN));
    say_number("current-bits", (DWORD)(GetDeviceCaps(screen, BITSPIXEL) * GetDeviceCaps(screen, PLANES)));
    ReleaseDC(NULL, screen);
    say_step("EnumDisplaySettings");
    for (DWORD i = 0; i < 2000 && EnumDisplaySettingsA(NULL, i, &mode); i++)
        say_mode(mode.dmPelsWidth, mode.dmPelsHeight, mode.dmBitsPerPel, mode.dmDisplayFrequency);
}

static void say_display_devices(void)
{
    DISPLAY_DEVICEA device;
    enum_display_devices next =
        (enum_display_devices)GetProcAddress(GetModuleHandleA("user32.dll"), "EnumDisplayDevicesA");
    if (!next)
        return;
    for (DWORD i = 0; i < 16; i++) {
        memset(&device, 0, sizeof(device));
        device.cb = sizeof(device);
        if (!next(NULL, i, &device, 0))
            break;
        say_section_1("display", i);
        say_text("name", device.DeviceName);
        say_text("description", device.DeviceString);
        line_begin("field DISPLAY_DEVICE.StateFlags");
        line_hex(device.StateFlags, 4);
        line_end();
        if (device.DeviceID[0])
            say_text("hardware-id", device.DeviceID);
    }
}

/* One key of the display class: which package the system installed, and the files it names. */
static void say_display_driver(HKEY key)
{
    static const char *values[] = {"DriverDesc", "ProviderName", "DriverVersion", "DriverDate", "MatchingDeviceId",
                                   "InfPath",    "InfSection",   "Ver"};
    static char value[MAX_PATH];
    HKEY files;
    for (unsigned i = 0; i < sizeof(values) / sizeof(values[0]); i++)
        say_registry_text(key, values[i]);
    if (RegOpenKeyExA(key, "DEFAULT", 0, KEY_READ, &files) == ERROR_SUCCESS) {
        static const char *names[] = {"drv", "vdd", "minivdd"};
        for (unsigned i = 0; i < sizeof(names) / sizeof(names[0]); i++) {
            say_registry_text(files, names[i]);
            if (registry_text(files, names[i], value, sizeof(value)) && value[0] != '*')
                say_file_version(value);
        }
        RegCloseKey(files);
    }
}

static void say_display_drivers(void)
{
    static char name[128];
    HKEY all;
    HKEY one;
    const char *path = is_nt ? "SYSTEM\\CurrentControlSet\\Control\\Class\\" DISPLAY_CLASS
                             : "System\\CurrentControlSet\\Services\\Class\\Display";
    if (RegOpenKeyExA(HKEY_LOCAL_MACHINE, path, 0, KEY_READ, &all) != ERROR_SUCCESS)
        return;
    for (DWORD i = 0; i < 32; i++) {
        DWORD length = sizeof(name);
        if (RegEnumKeyExA(all, i, name, &length, NULL, NULL, NULL, NULL) != ERROR_SUCCESS)
            break;
        if (RegOpenKeyExA(all, name, 0, KEY_READ, &one) != ERROR_SUCCESS)
            continue;
        say_section_1("display-driver", i);
        say_text("key", name);
        say_display_driver(one);
        RegCloseKey(one);
    }
    RegCloseKey(all);
}

/* Devices of class Display below Enum\PCI: one hardware ID each, written as the key spells it. */
static void say_hardware_ids(void)
{
    static char device[256];
    static char instance[256];
    static char value[128];
    HKEY bus;
    HKEY one;
    HKEY leaf;
    const char *path = is_nt ? "SYSTEM\\CurrentControlSet\\Enum\\PCI" : "Enum\\PCI";
    if (RegOpenKeyExA(HKEY_LOCAL_MACHINE, path, 0, KEY_READ, &bus) != ERROR_SUCCESS)
        return;
    for (DWORD i = 0; i < 256; i++) {
        DWORD length = sizeof(device);
        if (RegEnumKeyExA(bus, i, device, &length, NULL, NULL, NULL, NULL) != ERROR_SUCCESS)
            break;
        if (RegOpenKeyExA(bus, device, 0, KEY_READ, &one) != ERROR_SUCCESS)
            continue;
        for (DWORD j = 0; j < 16; j++) {
            BOOL display;
            length = sizeof(instance);
            if (RegEnumKeyExA(one, j, instance, &length, NULL, NULL, NULL, NULL) != ERROR_SUCCESS)
                break;
            if (RegOpenKeyExA(one, instance, 0, KEY_READ, &leaf) != ERROR_SUCCESS)
                continue;
            display = (registry_text(leaf, "Class", value, sizeof(value)) && lstrcmpiA(value, "Display") == 0) ||
                      (registry_text(leaf, "ClassGUID", value, sizeof(value)) && lstrcmpiA(value, DISPLAY_CLASS) == 0);
            if (display) {
                line_begin("hardware-id PCI");
                line_quoted(device);
                line_end();
                say_registry_text(leaf, "DeviceDesc");
            }
            RegCloseKey(leaf);
        }
        RegCloseKey(one);
    }
    RegCloseKey(bus);
}

static void say_opengl_driver(const char *file)
{
    say_text("opengl-driver", file);
    say_file_version(file);
}

/* Windows 9x names the libraries of OpenGL drivers in values, NT in a value "Dll" of a key for each. */
static void say_opengl_drivers(void)
{
    static char name[128];
    static char file[MAX_PATH];
    HKEY all;
    HKEY one;
    const char *path = is_nt ? "SOFTWARE\\Microsoft\\Windows NT\\CurrentVersion\\OpenGLDrivers"
                             : "Software\\Microsoft\\Windows\\CurrentVersion\\OpenGLDrivers";
    if (RegOpenKeyExA(HKEY_LOCAL_MACHINE, path, 0, KEY_READ, &all) != ERROR_SUCCESS)
        return;
    for (DWORD i = 0; i < 32; i++) {
        DWORD length = sizeof(name);
        if (is_nt) {
            if (RegEnumKeyExA(all, i, name, &length, NULL, NULL, NULL, NULL) != ERROR_SUCCESS)
                break;
            if (RegOpenKeyExA(all, name, 0, KEY_READ, &one) != ERROR_SUCCESS)
                continue;
            if (registry_text(one, "Dll", file, sizeof(file)))
                say_opengl_driver(file);
            RegCloseKey(one);
        } else {
            if (RegEnumValueA(all, i, name, &length, NULL, NULL, NULL, NULL) != ERROR_SUCCESS)
                break;
            if (registry_text(all, name, file, sizeof(file)))
                say_opengl_driver(file);
        }
    }
    RegCloseKey(all);
}

void probe_system(void)
{
    say_operating_system();
    say_opengl_drivers();
    say_hardware_ids();
    say_display_devices();
    say_display_drivers();
    say_current_modes();
}
