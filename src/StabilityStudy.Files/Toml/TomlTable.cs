namespace StabilityStudy.Files.Toml;

/// <summary>
/// A table being read by its declared keys. A value that cannot be read raises a stop query and yields the value of an
/// absent one; since a stop query leaves no value, no placeholder ever leaves the reading. Checks across keys ask
/// <see cref="IsSound"/> first.
/// </summary>
internal sealed class TomlTable
{
    private readonly TomlEntries? _entries;
    private readonly KeyTable _keys;
    private readonly string _path;
    private readonly string _file;
    private readonly QueryList _queries;
    private readonly HashSet<string> _faulty = [];

    private TomlTable(
        TomlEntries? entries,
        KeyTable keys,
        string path,
        string file,
        QueryList queries
    )
    {
        _entries = entries;
        _keys = keys;
        _path = path;
        _file = file;
        _queries = queries;
        RefuseUnknownKeys();
    }

    /// <summary>The table at the top of a file.</summary>
    public static TomlTable Root(
        TomlEntries entries,
        KeyTable keys,
        string file,
        QueryList queries
    ) => new(entries, keys, "", file, queries);

    /// <summary>Line on which the table begins; null when it is not there.</summary>
    public int? Line => _entries?.Line;

    /// <summary>The keys that are given and may be, for tables whose keys are codes.</summary>
    public IEnumerable<string> KnownKeys =>
        (_entries?.Entries ?? []).Select(entry => entry.Key).Where(_keys.Knows).Distinct();

    /// <summary>Whether a key is given.</summary>
    public bool Has(Key key) => Find(key) is not null;

    /// <summary>Whether a table is given and has a key; the table is not opened by it.</summary>
    public bool HasWithin(TableKey table, string key) =>
        Find(table)?.Value is TomlEntries entries
        && entries.Entries.Any(entry => string.Equals(entry.Key, key, StringComparison.Ordinal));

    /// <summary>Whether a key is given and could be read.</summary>
    public bool IsSound(Key key) => Has(key) && !_faulty.Contains(key.Name);

    /// <summary>The value of a key; a query when it must be there and is not.</summary>
    /// <param name="key">The key.</param>
    /// <param name="isRequired">Whether it must be there, where that depends on other keys.</param>
    public T Read<T>(Key<T> key, bool? isRequired = null)
    {
        var entry =
            isRequired ?? key.Need is Need.Required or Need.OfSomeKinds ? Require(key) : Find(key);
        return entry is not null && key.Form.TryRead(this, key, entry.Value, out var value)
            ? value
            : key.Form.Absent;
    }

    /// <summary>A table that must be there.</summary>
    public TomlTable RequireTable(TableKey key) => Open(Require(key), key, key.Keys);

    /// <summary>A table that may be there.</summary>
    /// <param name="key">The key.</param>
    /// <param name="keys">The keys of the table, where they are not those of the declaration.</param>
    public TomlTable? OptionalTable(TableKey key, KeyTable? keys = null) =>
        Find(key) is { } entry ? Open(entry, key, keys ?? key.Keys) : null;

    /// <summary>A list of tables, as [[key]] headers or in brackets; at least one when it is required.</summary>
    public ImmutableArray<TomlTable> Tables(TableKey key, bool? isRequired = null)
    {
        var needed = isRequired ?? key.Need is Need.Required;
        var entry = needed ? Require(key) : Find(key);
        if (entry is null)
        {
            return [];
        }

        if (entry.Value is not TomlList list || list.Items.Any(item => item is not TomlEntries))
        {
            ValueReading.WrongType(
                this,
                key,
                entry.Value,
                $"a list of tables: write [[{key.Name}]] above each"
            );
            return [];
        }

        if (list.Items.IsEmpty && needed)
        {
            Fault(
                key,
                FileQueries.EmptyList,
                "",
                $"\"{key.Name}\" has no entry.",
                $"Add a [[{key.Name}]] table."
            );
        }

        return
        [
            .. list
                .Items.OfType<TomlEntries>()
                .Select(item => new TomlTable(item, key.Keys, Path(key.Name), _file, _queries)),
        ];
    }

    /// <summary>Raises a query about a key, which is not sound from then on.</summary>
    public void Fault(
        Key key,
        QueryKind kind,
        string observed,
        string message,
        string? action = null
    )
    {
        _faulty.Add(key.Name);
        Remark(key, kind, observed, message, action);
    }

    /// <summary>The same as the end of a check.</summary>
    /// <returns>False.</returns>
    public bool Refuse(
        Key key,
        QueryKind kind,
        string observed,
        string message,
        string? action = null
    )
    {
        Fault(key, kind, observed, message, action);
        return false;
    }

    /// <summary>Raises a query about a key that was read well.</summary>
    public void Remark(
        Key key,
        QueryKind kind,
        string observed,
        string message,
        string? action = null
    ) => _queries.Add(kind, Source(key), observed, message, action);

    /// <summary>The place of a key, or of the table when the key is not given.</summary>
    public QuerySource Source(Key key) =>
        new(_file, Find(key)?.Line ?? (_path.Length == 0 ? null : Line), Path(key.Name));

    private string Path(string name) => _path.Length == 0 ? name : _path + "." + name;

    private TomlEntry? Find(Key key)
    {
        if (!_keys.Knows(key.Name))
        {
            throw new ArgumentException(
                $"The table \"{_path}\" does not list \"{key.Name}\".",
                nameof(key)
            );
        }

        return _entries?.Entries.FirstOrDefault(entry =>
            string.Equals(entry.Key, key.Name, StringComparison.Ordinal)
        );
    }

    private TomlEntry? Require(Key key)
    {
        var entry = Find(key);
        if (entry is null && _entries is not null)
        {
            Fault(
                key,
                FileQueries.MissingKey,
                "",
                _path.Length == 0
                    ? $"The key \"{key.Name}\" is missing."
                    : $"The key \"{key.Name}\" is missing in this \"{_path}\".",
                key.Example.Length == 0
                    ? $"Add \"{key.Name}\"."
                    : $"Add \"{key.Name}\"; write: {key.Line}."
            );
        }

        return entry;
    }

    private TomlTable Open(TomlEntry? entry, TableKey key, KeyTable keys)
    {
        if (entry is not null && entry.Value is not TomlEntries)
        {
            ValueReading.WrongType(this, key, entry.Value, "a table: write its keys in braces");
        }

        return new TomlTable(entry?.Value as TomlEntries, keys, Path(key.Name), _file, _queries);
    }

    private void RefuseUnknownKeys()
    {
        foreach (var entry in (_entries?.Entries ?? []).Where(e => !_keys.Knows(e.Key)))
        {
            var question = NearestWord.Question(entry.Key, _keys.Names);
            _queries.Add(
                FileQueries.UnknownKey,
                new QuerySource(_file, entry.Line, Path(entry.Key)),
                entry.Key,
                $"The key \"{entry.Key}\" is not known here.{question}",
                question.Length > 0
                    ? "Correct its spelling, or remove it."
                    : $"Remove it; known here are {string.Join(", ", _keys.Names)}."
            );
        }
    }
}
