using System.Text;
using FeatureMatrix.Loading;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_folder : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("feature-matrix-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private void Write(string path, params byte[] bytes)
    {
        var full = Path.Combine(_root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllBytes(full, bytes);
    }

    private void Write(string path, string text) => Write(path, Encoding.UTF8.GetBytes(text));

    [Fact]
    public void Gives_its_YAML_and_CSV_files_in_ordinal_order_below_the_vocabulary()
    {
        Write("collection/b.yaml", "b: 1");
        Write("collection/Cards/a.yml", "a");
        Write("collection/runs/log.csv", "x,y");
        Write("collection/notes.txt", "no");
        Write("collection/.hidden/x.yaml", "no");
        Write("words/f.yaml", "f");

        var read = CollectionFolder.Read(Path.Combine(_root, "collection"), Path.Combine(_root, "words"));

        Assert.Equal(["Cards/a.yml", "b.yaml", "runs/log.csv", "vocabulary/f.yaml"], read.Files.Select(file => file.Path));
        Assert.Equal(["a", "b: 1", "x,y", "f"], read.Files.Select(file => file.Text));
        Assert.Empty(read.Faults);
    }

    [Fact]
    public void Reports_files_that_are_no_text()
    {
        Write("bytes.yaml", 0x61, 0xC3, 0x28);
        Write("large.yaml", new byte[(4 << 20) + 1]);
        Write("nul.yaml", 0x61, 0x00);
        Write("utf16.yaml", Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("chips: {}")).ToArray());
        Write("utf16-big.yaml", Encoding.BigEndianUnicode.GetPreamble().Concat(Encoding.BigEndianUnicode.GetBytes("chips: {}")).ToArray());

        var read = CollectionFolder.Read(_root, null);
        var result = CollectionLoader.Load(read.Files, read.Faults);

        Assert.Empty(read.Files);
        Assert.Null(result.Catalog);
        Assert.Equal(
            [
                "bytes.yaml: error FM001: is not UTF-8; save it as UTF-8",
                "large.yaml: error FM002: is larger than 4 MiB; split it into several files",
                "nul.yaml: error FM001: holds a NUL character, so it is no text; save it as UTF-8",
                "utf16-big.yaml: error FM001: is UTF-16; save it as UTF-8",
                "utf16.yaml: error FM001: is UTF-16; save it as UTF-8",
            ],
            result.Faults.Select(fault => fault.ToString()));
    }

    [Fact]
    public void With_a_byte_order_mark_is_read()
    {
        Write("a.yaml", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("chips: {c: {name: C}}")]);

        var read = CollectionFolder.Read(_root, null);

        Assert.Equal("C", CollectionLoader.Load(read.Files, read.Faults).Catalog!.Chips[0].Name);
    }

    [Fact]
    public void That_does_not_exist_is_a_fault()
    {
        var missing = Path.Combine(_root, "missing");

        var fault = Assert.Single(CollectionFolder.Read(missing, null).Faults);

        Assert.StartsWith($"{missing}: error FM005: cannot be read: ", fault.ToString(), StringComparison.Ordinal);
    }
}
