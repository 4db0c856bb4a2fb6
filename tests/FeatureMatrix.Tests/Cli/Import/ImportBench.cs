using FeatureMatrix.Cli;
using FeatureMatrix.Loading;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>A collection in a folder of its own, and the command line run on it in process with the project's vocabulary.</summary>
internal sealed class ImportBench : IDisposable
{
    public ImportBench(string collection = "collection: {name: Bench}\n")
    {
        Folder = Directory.CreateTempSubdirectory("import-").FullName;
        Write("collection.yaml", collection);
    }

    public string Folder { get; }

    /// <summary>What the last command printed.</summary>
    public string Printed { get; private set; } = "";

    /// <summary>What the last command told beside it.</summary>
    public string Told { get; private set; } = "";

    public void Write(string name, string text) => File.WriteAllText(PathOf(name), text);

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(PathOf(name), bytes);
        return PathOf(name);
    }

    public string PathOf(string name) => Path.Combine(Folder, name);

    /// <summary>Runs a command line; its words are separated by single blanks, those of the second part stand as they are.</summary>
    public int Run(string words, params string[] more)
    {
        var (results, messages) = (new StringWriter(), new StringWriter());
        var code = Application.Run([.. words.Split(' '), .. more, "--collection", Folder], new Terminal(results, messages, useColour: false));
        (Printed, Told) = (results.ToString(), messages.ToString());
        return code;
    }

    /// <summary>Runs it and fails where it does not end well.</summary>
    public string Done(string words, params string[] more)
    {
        var code = Run(words, more);
        Assert.True(code == 0, $"{words} gave {code}: {Told}{Printed}");
        return Printed;
    }

    /// <summary>What a command that reads no collection prints.</summary>
    public static string WithoutCollection(string words)
    {
        var results = new StringWriter();
        Assert.Equal(0, Application.Run(words.Split(' '), new Terminal(results, new StringWriter(), useColour: false)));
        return results.ToString();
    }

    public Catalog Load()
    {
        var texts = CollectionFolder.Read(Folder, Session.VocabularyFolder);
        var result = CollectionLoader.Load(texts.Files, texts.Faults);
        return result.Catalog ?? throw new InvalidOperationException(string.Join('\n', result.Faults));
    }

    /// <summary>All of the collection's files with their texts.</summary>
    public IReadOnlyDictionary<string, string> Texts() => CollectionFolder.Read(Folder, null).Files.ToDictionary(file => file.Path, file => file.Text);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
