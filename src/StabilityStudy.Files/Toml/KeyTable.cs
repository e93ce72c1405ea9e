namespace StabilityStudy.Files.Toml;

/// <summary>The keys that a table may have, each declared by one call, in the order in which they are described.</summary>
internal sealed class KeyTable
{
    private readonly List<Key> _keys = [];

    /// <summary>A table whose keys are codes or words given elsewhere.</summary>
    public static readonly KeyTable Free = new();

    /// <summary>Every declared key.</summary>
    public IReadOnlyList<Key> Keys => _keys;

    /// <summary>The names of the keys.</summary>
    public IEnumerable<string> Names => _keys.Select(key => key.Name);

    /// <summary>Whether the table may have a key.</summary>
    public bool Knows(string name) => _keys.Count == 0 || Names.Contains(name);

    /// <summary>A table in which every key may be given and is written alike.</summary>
    public static KeyTable Of<T>(IEnumerable<string> names, ValueForm<T> form)
    {
        var table = new KeyTable();
        foreach (var name in names)
        {
            table.Add(name, Need.Optional, form, "", "");
        }

        return table;
    }

    /// <summary>A table with the same keys, to which further ones can be added.</summary>
    /// <param name="others">Keys that are described otherwise there.</param>
    public KeyTable Copy(params ReadOnlySpan<Key> others)
    {
        var copy = new KeyTable();
        copy._keys.AddRange(_keys);
        foreach (var other in others)
        {
            copy._keys[copy._keys.FindIndex(key => key.Name == other.Name)] = other;
        }

        return copy;
    }

    /// <summary>Declares a key that holds a value.</summary>
    public Key<T> Add<T>(string name, Need need, ValueForm<T> form, string note, string example) =>
        Add(new Key<T>(name, need, form, note, example));

    /// <summary>Declares a key that holds a table.</summary>
    public TableKey AddTable(
        string name,
        Need need,
        KeyTable keys,
        string note,
        string example,
        bool isDescribedElsewhere = false
    ) =>
        Add(
            new TableKey(name, need, keys, false, note, example)
            {
                IsDescribedElsewhere = isDescribedElsewhere,
            }
        );

    /// <summary>Declares a key that holds a list of tables.</summary>
    public TableKey AddTables(string name, Need need, KeyTable keys, string note, string example) =>
        Add(new TableKey(name, need, keys, true, note, example));

    private TKey Add<TKey>(TKey key)
        where TKey : Key
    {
        _keys.Add(key);
        return key;
    }
}
