/* FeatureMatrix probe: what the rooms of the program share. */
#ifndef FEATUREMATRIX_PROBE_H
#define FEATUREMATRIX_PROBE_H

#define WIN32_LEAN_AND_MEAN
#define COBJMACROS
#define CINTERFACE
#include <windows.h>
#include <stddef.h>

/* Output. A line is begun, filled and ended; ending it writes it and flushes it to the disk, because the next call
   into an old driver may hang the machine. Text beyond LINE_BYTES is cut. */
#define LINE_BYTES 4000

BOOL output_open(const char *path);
void output_close(void);

void line_begin(const char *word);
void line_word(const char *word);
void line_quoted(const char *text);
void line_hex(DWORD value, int bytes);
void line_decimal(DWORD value);
void line_end(void);

/* Whole lines, one function for each kind of line that README.md defines. */
void say_section(const char *kind);
void say_section_1(const char *kind, DWORD ordinal);
void say_section_2(const char *kind, DWORD ordinal, DWORD second);
void say_text(const char *key, const char *value);
void say_number(const char *key, DWORD value);
void say_size(const char *structure, DWORD bytes);
void say_step(const char *call);
void say_absent(const char *what);
void say_failed(const char *call, DWORD code);
void say_mode(DWORD width, DWORD height, DWORD bits, DWORD hertz);
void say_version(const char *key, DWORD high, DWORD low);
void say_guid(const char *prefix, const GUID *guid);

/* A member of a structure: its public name, and where it lies. */
struct member {
    const char *name;
    unsigned short offset;
    unsigned short bytes; /* 1, 2 or 4 for one value */
    unsigned short count; /* more than 1 for an array */
};

#define MEMBER(type, label, path) {label, offsetof(type, path), sizeof(((type *)0)->path), 1}
#define ARRAY(type, label, path)                                                                                       \
    {label, offsetof(type, path), sizeof(((type *)0)->path[0]), sizeof(((type *)0)->path) / sizeof(((type *)0)->path[0])}

void say_members(const char *structure, const void *data, const struct member *members, unsigned count);
#define SAY_MEMBERS(structure, data, members) say_members(structure, data, members, sizeof(members) / sizeof(members[0]))

/* Looks for a library and says so; NULL when the system has none, which is no fault. */
HMODULE load_library(const char *name);
/* Looks for an entry point and says so when there is none. */
FARPROC find_entry(HMODULE library, const char *name);
/* File version of a driver or runtime file, looked up in the system directory when the name holds no path. */
void say_file_version(const char *file);

/* A hidden window of our own; made once. */
HWND probe_window(void);

void probe_system(void);
void probe_directdraw(void);
void probe_direct3d8(void);
void probe_direct3d9(void);
void probe_opengl(void);

#endif
