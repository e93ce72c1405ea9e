using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Formats;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Toml;

/// <summary>
/// A table being read by its specification. A value that cannot be read raises a stop query and yields a placeholder;
/// since a stop query leaves no value, no placeholder ever leaves the reading. Checks across keys ask
/// <see cref="IsSound"/> first.
/// </summary>
internal sealed partial class TomlTable
{
    private readonly TomlEntries? _entries;
    private readonly TableShape _shape;
    private readonly string _path;
    private readonly string _file;
    private readonly QueryList _queries;
    private readonly HashSet<string> _faulty = [];

    private TomlTable(
        TomlEntries? entries,
        TableShape shape,
        string path,
        string file,
        QueryList queries
    )
    {
        _entries = entries;
        _shape = shape;
        _path = path;
        _file = file;
        _queries = queries;
        RefuseUnknownKeys();
    }

    /// <summary>The table at the top of a file.</summary>
    public static TomlTable Root(
        TomlEntries entries,
        TableShape shape,
        string file,
        QueryList queries
    ) => new(entries, shape, "", file, queries);

    /// <summary>Line on which the table begins; null when it is not there.</summary>
    public int? Line => _entries?.Line;

    /// <summary>Every key with its line, for tables whose keys are codes.</summary>
    public ImmutableArray<string> Keys =>
        _entries is null ? [] : [.. _entries.Entries.Select(e => e.Key)];

    /// <summary>Whether the table may have a key.</summary>
    public bool Knows(string key) =>
        _shape.HasFreeKeys || _shape.Keys.Contains(key, StringComparer.Ordinal);

    /// <summary>Whether a key is given.</summary>
    public bool Has(string key) => Find(key) is not null;

    /// <summary>Whether a key is given and could be read.</summary>
    public bool IsSound(string key) => Has(key) && !_faulty.Contains(key);

    /// <summary>A table that must be there.</summary>
    public TomlTable RequireTable(string key, TableShape shape) => Open(Require(key), key, shape);

    /// <summary>A table that may be there.</summary>
    public TomlTable? OptionalTable(string key, TableShape shape) =>
        Find(key) is { } entry ? Open(entry, key, shape) : null;

    /// <summary>A list of tables, as [[key]] headers or in brackets; at least one when required.</summary>
    public ImmutableArray<TomlTable> Tables(string key, TableShape shape, bool required = true)
    {
        var entry = required ? Require(key) : Find(key);
        if (entry is null)
        {
            return [];
        }

        if (entry.Value is not TomlList list || list.Items.Any(item => item is not TomlEntries))
        {
            WrongType(entry, $"a list of tables: write [[{key}]] above each");
            return [];
        }

        if (list.Items.IsEmpty && required)
        {
            Fault(
                key,
                FileQueries.EmptyList,
                "",
                $"\"{key}\" has no entry.",
                $"Add a [[{key}]] table."
            );
        }

        return
        [
            .. list
                .Items.OfType<TomlEntries>()
                .Select(item => new TomlTable(item, shape, Path(key), _file, _queries)),
        ];
    }

    /// <summary>Raises a query about a key, which is not sound from then on.</summary>
    public void Fault(string key, QueryKind kind, string observed, string message, string action)
    {
        _faulty.Add(key);
        _queries.Add(kind, Source(key), observed, message, action);
    }

    /// <summary>Raises a query about a key that was read well.</summary>
    public void Remark(
        string key,
        QueryKind kind,
        string observed,
        string message,
        string action
    ) => _queries.Add(kind, Source(key), observed, message, action);

    /// <summary>The place of a key, or of the table when the key is not given.</summary>
    public QuerySource Source(string key) =>
        new(_file, Find(key)?.Line ?? (_path.Length == 0 ? null : Line), Path(key));

    private string Path(string key) => _path.Length == 0 ? key : _path + "." + key;

    private TomlEntry? Find(string key)
    {
        if (!Knows(key))
        {
            throw new ArgumentException(
                $"The shape \"{_shape.Name}\" does not list \"{key}\".",
                nameof(key)
            );
        }

        return _entries?.Entries.FirstOrDefault(entry =>
            string.Equals(entry.Key, key, StringComparison.Ordinal)
        );
    }

    private TomlEntry? Require(string key)
    {
        var entry = Find(key);
        if (entry is null && _entries is not null)
        {
            Fault(
                key,
                FileQueries.MissingKey,
                "",
                _path.Length == 0
                    ? $"The key \"{key}\" is missing."
                    : $"The key \"{key}\" is missing in this \"{_path}\".",
                $"Add \"{key}\"{KeyNotes.Example(Path(key))}."
            );
        }

        return entry;
    }

    private TomlTable Open(TomlEntry? entry, string key, TableShape shape)
    {
        if (entry is not null && entry.Value is not TomlEntries)
        {
            WrongType(entry, "a table: write its keys in braces");
        }

        return new TomlTable(entry?.Value as TomlEntries, shape, Path(key), _file, _queries);
    }

    private void RefuseUnknownKeys()
    {
        if (_shape.HasFreeKeys || _entries is null)
        {
            return;
        }

        foreach (var entry in _entries.Entries)
        {
            if (!_shape.Keys.Contains(entry.Key, StringComparer.Ordinal))
            {
                var question = NearestWord.Question(entry.Key, _shape.Keys);
                _queries.Add(
                    FileQueries.UnknownKey,
                    new QuerySource(_file, entry.Line, Path(entry.Key)),
                    entry.Key,
                    $"The key \"{entry.Key}\" is not known here.{question}",
                    question.Length > 0
                        ? "Correct its spelling, or remove it."
                        : $"Remove it; known here are {string.Join(", ", _shape.Keys)}."
                );
            }
        }
    }
}
