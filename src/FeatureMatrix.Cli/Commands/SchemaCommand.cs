using System.CommandLine;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Schema;

namespace FeatureMatrix.Cli.Commands;

/// <summary>The schema that lets an editor help.</summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var command = new Command("schema", "Print the JSON Schema of collection files, with which a YAML editor completes keys, explains them and marks faults.");
        command.SetAction(_ => terminal.Print(Text()));
        return command;
    }

    /// <summary>The schema with the names of the program's own vocabulary.</summary>
    public static string Text()
    {
        var texts = CollectionFolder.Read(Session.VocabularyFolder, null);
        var vocabulary = CollectionLoader.Load(texts.Files, texts.Faults).Catalog
            ?? throw new IOException($"The vocabulary in {Session.VocabularyFolder} cannot be read");
        return CollectionSchema.Write(vocabulary);
    }
}
