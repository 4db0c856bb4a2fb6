using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Readers;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading;

/// <summary>The first pass: sorts what files hold onto the shelves, by the top-level keys.</summary>
internal sealed class Sections(Draft draft)
{
    private int _layer;

    /// <summary>Notes everything in one file. Files of lower layers come first.</summary>
    public void Collect(Node root, int layer)
    {
        _layer = layer;
        if (Fields.Of(root, "a file", draft.Faults) is not { } file)
            return;
        Shelve(file, "people", draft.People, isNobodyElses: true);
        Shelve(file, "sources", draft.SourceShelf, isNobodyElses: true);
        Shelve(file, "features", draft.Features);
        Shelve(file, FeatureReader.ApiSection, draft.Features);
        Shelve(file, "operating-systems", draft.Oses);
        Shelve(file, "buses", draft.Buses);
        Shelve(file, "chips", draft.Chips);
        Shelve(file, "cards", draft.Cards);
        Shelve(file, "specimens", draft.Specimens);
        Shelve(file, "drivers", draft.Branches);
        Shelve(file, "wrappers", draft.Wrappers);
        Shelve(file, "engines", draft.Engines);
        Shelve(file, "titles", draft.Titles);
        Shelve(file, "rigs", draft.Rigs);
        Shelve(file, "libraries", draft.Libraries);
        Shelve(file, "captures", draft.Captures, isNobodyElses: true);
        draft.ObservationNodes.AddRange(file.Items("observations"));
        draft.FactNodes.AddRange(file.Items("facts"));
        Name(file);
        file.Done();
    }

    /// <summary>Notes the entities under one key.</summary>
    /// <param name="file">The keys of the file.</param>
    /// <param name="section">The key to shelve.</param>
    /// <param name="shelf">Where to.</param>
    /// <param name="isNobodyElses">
    /// True where an id means the same in all collections: what one says of it must not be laid over what another says, or words would
    /// change hands.
    /// </param>
    private void Shelve<T>(Fields file, string section, Shelf<T> shelf, bool isNobodyElses = false)
        where T : class
    {
        foreach (var entry in file.Entries(section))
            shelf.Declare(entry, section, isNobodyElses ? 0 : _layer, draft.Faults);
    }

    private void Name(Fields file)
    {
        if (file.Inner("collection") is not { } fields || _layer > 0)
            return;
        if (draft.Collection is { } first)
            draft.Faults.Add(FaultTexts.DuplicateKey(file.OriginOf("collection"), "collection", first.Origin));
        else
            draft.Collection = fields;
    }
}
