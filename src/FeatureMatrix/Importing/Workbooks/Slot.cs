using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>The place of a record, in which another one may be put.</summary>
internal abstract class Slot
{
    /// <summary>Puts a record there.</summary>
    public abstract void Set(Tree record);

    /// <summary>Takes the record out.</summary>
    public abstract void Remove();

    /// <summary>Gives it another key. False where it has none.</summary>
    public virtual bool Rename(string key) => false;

    /// <summary>A record that is always there, such as the file itself.</summary>
    public sealed class Fixed : Slot
    {
        public override void Set(Tree record) => throw new InvalidOperationException("a file stays what it is");

        public override void Remove() => throw new InvalidOperationException("a file stays");
    }

    /// <summary>An entry of a map.</summary>
    public sealed class Entry(TreeMap map, TreeEntry entry) : Slot
    {
        public override void Set(Tree record) => entry.Value = record;

        public override void Remove() => map.Entries.Remove(entry);

        public override bool Rename(string key)
        {
            if (map.Entry(key) is not null)
                return false;
            entry.Key = key;
            return true;
        }
    }

    /// <summary>An item of a list.</summary>
    public sealed class Item(TreeList list, Tree item) : Slot
    {
        private Tree _item = item;

        public override void Set(Tree record)
        {
            list.Replace(_item, record);
            _item = record;
        }

        public override void Remove() => list.Items.Remove(_item);
    }

    /// <summary>A name in a list of names, which becomes a map of names once one of them has a value.</summary>
    public sealed class Listed(NameList names, string name) : Slot
    {
        public override void Set(Tree record) => names.ToMap().Set(name, record);

        public override void Remove() => names.Remove(name);
    }
}

/// <summary>A list of names that may become a map of names.</summary>
internal sealed class NameList(TreeList list, Slot slot)
{
    private TreeMap? _map;

    /// <summary>The names.</summary>
    public IReadOnlyList<string> Names => [.. list.Items.OfType<TreeText>().Select(item => item.Text)];

    /// <summary>The map, put in the list's place.</summary>
    public TreeMap ToMap()
    {
        if (_map is null)
        {
            _map = MapOf(list);
            slot.Set(_map);
        }

        return _map;
    }

    /// <summary>The names of a list as keys without values.</summary>
    public static TreeMap MapOf(TreeList list) =>
        new(null, list.Items.OfType<TreeText>().Select(item => new TreeEntry(item.Text, new TreeText("", isNothing: true))));

    /// <summary>Takes a name out.</summary>
    public void Remove(string name)
    {
        if (_map is not null)
            _map.Entries.RemoveAll(entry => entry.Key == name);
        else
            list.Items.RemoveAll(item => item is TreeText text && text.Text == name);
    }
}
