using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Writing;

/// <summary>
/// Works out how a collection's files change so that they hold certain records. Pure: whoever calls it writes the files.
/// </summary>
public static class CollectionEditor
{
    /// <summary>
    /// The files with the records in them, and the whole collection loaded again from what would be written. Doing the same
    /// twice changes nothing the second time.
    /// </summary>
    /// <param name="files">All files of vocabulary and collection, which load without faults.</param>
    /// <param name="records">The records, those that others refer to first.</param>
    public static CollectionChange Change(IReadOnlyList<SourceText> files, IReadOnlyList<RecordChange> records)
    {
        var kept = new List<KeptValue>();
        var open = files.Where(IsOfCollection).ToDictionary(file => file.Path, file => new RecordFile(file.Path, file.Text, kept));
        var touched = new List<RecordFile>();
        foreach (var record in records)
        {
            var file = FileOf(record, open.Values);
            if (file is null && !open.TryGetValue(record.NewFile, out file))
                open.Add(record.NewFile, file = new RecordFile(record.NewFile, "", kept));
            if (!touched.Contains(file))
                touched.Add(file);
            file.Bring(record);
        }

        var before = files.ToDictionary(file => file.Path, file => file.Text);
        return Changed(
            files,
            [
                .. touched.Select(file => new FileChange(file.Path, before.GetValueOrDefault(file.Path), file.Text)).Where(change => change.After != (change.Before ?? "")),
            ],
            kept);
    }

    /// <summary>The collection with files that it does not have yet.</summary>
    public static CollectionChange Add(IReadOnlyList<SourceText> files, IReadOnlyList<SourceText> added) =>
        Changed(files, [.. added.Select(file => new FileChange(file.Path, null, file.Text))], []);

    /// <summary>The collection with files changed as they are given.</summary>
    public static CollectionChange Put(IReadOnlyList<SourceText> files, IReadOnlyList<FileChange> changes) => Changed(files, changes, []);

    private static CollectionChange Changed(IReadOnlyList<SourceText> files, IReadOnlyList<FileChange> changes, IReadOnlyList<KeptValue> kept)
    {
        var after = changes.ToDictionary(change => change.Path, change => new SourceText(change.Path, change.After));
        List<SourceText> whole =
        [
            .. files.Select(file => after.GetValueOrDefault(file.Path, file)),
            .. changes.Where(change => change.Before is null).Select(change => after[change.Path]),
        ];
        return new CollectionChange(changes, kept, CollectionLoader.Load(whole));
    }

    /// <summary>Files of collections that this one builds on are others' to change.</summary>
    internal static bool IsOfCollection(SourceText file) =>
        file.Layer == 0
        && (file.Path.EndsWith(".yaml", StringComparison.Ordinal) || file.Path.EndsWith(".yml", StringComparison.Ordinal))
        && !file.Path.StartsWith(CollectionFolder.VocabularyName + "/", StringComparison.Ordinal);

    /// <summary>The file that has the record or, failing that, most of the way to it; a section alone does not count.</summary>
    private static RecordFile? FileOf(RecordChange record, IEnumerable<RecordFile> files)
    {
        var inOrder = files.OrderBy(file => file.Path, StringComparer.Ordinal).ToList();
        for (var steps = record.Place.Count; steps > 1; steps--)
        {
            if (inOrder.Find(file => file.Holds(record.Place.Take(steps))) is { } file)
                return file;
        }

        return null;
    }
}
