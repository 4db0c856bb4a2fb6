/* Lines of the dump, and the four memory routines the compiler may call: there is no C runtime in this program. */
#include "probe.h"

static HANDLE file = INVALID_HANDLE_VALUE;
static char line[LINE_BYTES + 2];
static unsigned used;

void *memset(void *target, int value, size_t count)
{
    unsigned char *at = target;
    while (count--)
        *at++ = (unsigned char)value;
    return target;
}

void *memcpy(void *target, const void *source, size_t count)
{
    unsigned char *to = target;
    const unsigned char *from = source;
    while (count--)
        *to++ = *from++;
    return target;
}

BOOL output_open(const char *path)
{
    file = CreateFileA(path, GENERIC_WRITE, FILE_SHARE_READ, NULL, CREATE_ALWAYS, FILE_ATTRIBUTE_NORMAL, NULL);
    return file != INVALID_HANDLE_VALUE;
}

void output_close(void)
{
    CloseHandle(file);
}

static void put(char c)
{
    if (used < LINE_BYTES)
        line[used++] = c;
}

static void put_text(const char *text)
{
    while (*text)
        put(*text++);
}

void line_begin(const char *word)
{
    used = 0;
    put_text(word);
}

void line_word(const char *word)
{
    put(' ');
    put_text(word);
}

static void put_hex(DWORD value, int digits)
{
    while (digits--)
        put("0123456789ABCDEF"[(value >> (digits * 4)) & 15]);
}

void line_hex(DWORD value, int bytes)
{
    put_text(" 0x");
    put_hex(value, bytes * 2);
}

void line_quoted(const char *text)
{
    put_text(" \"");
    /* Room is kept for the longest escape and the closing quote. */
    for (; *text && used < LINE_BYTES - 6; text++) {
        unsigned char c = (unsigned char)*text;
        if (c == '"' || c == '\\') {
            put('\\');
            put(c);
        } else if (c < 0x20 || c > 0x7E) {
            put_text("\\x");
            put_hex(c, 2);
        } else {
            put(c);
        }
    }
    put('"');
}

static void put_decimal(DWORD value)
{
    char digits[10];
    int n = 0;
    do
        digits[n++] = (char)('0' + value % 10);
    while (value /= 10);
    while (n)
        put(digits[--n]);
}

void line_decimal(DWORD value)
{
    put(' ');
    put_decimal(value);
}

void line_end(void)
{
    DWORD written;
    line[used++] = '\r';
    line[used++] = '\n';
    WriteFile(file, line, used, &written, NULL);
    FlushFileBuffers(file);
    used = 0;
}

void say_section(const char *kind)
{
    line_begin("section");
    line_word(kind);
    line_end();
}

void say_section_1(const char *kind, DWORD ordinal)
{
    line_begin("section");
    line_word(kind);
    line_decimal(ordinal);
    line_end();
}

void say_section_2(const char *kind, DWORD ordinal, DWORD second)
{
    line_begin("section");
    line_word(kind);
    line_decimal(ordinal);
    line_decimal(second);
    line_end();
}

void say_text(const char *key, const char *value)
{
    line_begin("text");
    line_word(key);
    line_quoted(value);
    line_end();
}

void say_number(const char *key, DWORD value)
{
    line_begin("number");
    line_word(key);
    line_decimal(value);
    line_end();
}

void say_size(const char *structure, DWORD bytes)
{
    line_begin("size");
    line_word(structure);
    line_decimal(bytes);
    line_end();
}

void say_step(const char *call)
{
    DWORD written;
    HANDLE console = GetStdHandle(STD_OUTPUT_HANDLE);
    line_begin("step");
    line_word(call);
    WriteFile(console, line, used, &written, NULL);
    WriteFile(console, "\r\n", 2, &written, NULL);
    line_end();
}

void say_absent(const char *what)
{
    line_begin("absent");
    line_word(what);
    line_end();
}

void say_failed(const char *call, DWORD code)
{
    line_begin("failed");
    line_word(call);
    line_hex(code, 4);
    line_end();
}

void say_mode(DWORD width, DWORD height, DWORD bits, DWORD hertz)
{
    line_begin("mode");
    line_decimal(width);
    line_decimal(height);
    line_decimal(bits);
    line_decimal(hertz);
    line_end();
}

void say_version(const char *key, DWORD high, DWORD low)
{
    line_begin("version");
    line_word(key);
    line_decimal(HIWORD(high));
    line_decimal(LOWORD(high));
    line_decimal(HIWORD(low));
    line_decimal(LOWORD(low));
    line_end();
}

static void say_field(const char *structure, const char *name, int index, DWORD value, int bytes)
{
    line_begin("field");
    line_word(structure);
    put('.');
    put_text(name);
    if (index >= 0) {
        put('[');
        put_decimal((DWORD)index);
        put(']');
    }
    line_hex(value, bytes);
    line_end();
}

void say_members(const char *structure, const void *data, const struct member *members, unsigned count)
{
    for (unsigned m = 0; m < count; m++) {
        for (int i = 0; i < members[m].count; i++) {
            const unsigned char *at = (const unsigned char *)data + members[m].offset + i * members[m].bytes;
            DWORD value = 0;
            for (int b = members[m].bytes; b--;)
                value = value << 8 | at[b];
            say_field(structure, members[m].name, members[m].count > 1 ? i : -1, value, members[m].bytes);
        }
    }
}

void say_guid(const char *prefix, const GUID *guid)
{
    static const struct member members[] = {
        MEMBER(GUID, "Data1", Data1),
        MEMBER(GUID, "Data2", Data2),
        MEMBER(GUID, "Data3", Data3),
        ARRAY(GUID, "Data4", Data4),
    };
    SAY_MEMBERS(prefix, guid, members);
}
