using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>The first pass: sorts what files hold onto the shelves, by the top-level keys.</summary>
internal sealed class Sections(Draft draft)
{
    /// <summary>Notes everything in one file.</summary>
    public void Collect(Node root)
    {
        if (Fields.Of(root, "a file", draft.Faults) is not { } file)
            return;
        Shelve(file, "sources", draft.SourceShelf);
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
        draft.ObservationNodes.AddRange(file.Items("observations"));
        draft.FactNodes.AddRange(file.Items("facts"));
        Name(file);
        file.Done();
    }

    private void Shelve<T>(Fields file, string section, Shelf<T> shelf)
        where T : class
    {
        foreach (var entry in file.Entries(section))
            shelf.Declare(entry, section, draft.Faults);
    }

    private void Name(Fields file)
    {
        if (file.Inner("collection") is not { } fields)
            return;
        if (draft.Collection is { } first)
            draft.Faults.Add(FaultTexts.DuplicateKey(file.OriginOf("collection"), "collection", first.Origin));
        else
            draft.Collection = fields;
    }
}
