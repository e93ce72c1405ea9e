namespace StabilityStudy.Files.Toml;

/// <summary>A table while its file is being read. TOML may come back to a table later, so it grows until the end.</summary>
/// <param name="line">Line on which it begins.</param>
/// <param name="isClosed">Whether nothing may be added any more (a table in braces).</param>
internal sealed class TomlDraft(int line, bool isClosed)
{
    private readonly List<Slot> _slots = [];
    private readonly Dictionary<string, Slot> _byKey = new(StringComparer.Ordinal);

    /// <summary>Whether a header named this very table.</summary>
    public bool HasHeader { get; set; }

    /// <summary>Whether nothing may be added any more.</summary>
    public bool IsClosed { get; } = isClosed;

    /// <summary>The line on which a key was first given; null when it was not.</summary>
    public int? LineOf(string key) => Find(key)?.Line;

    /// <summary>Gives a key a finished value. The key must be new.</summary>
    public void Put(string key, int keyLine, TomlValue value) =>
        Add(new Slot(key, keyLine, value, [], false));

    /// <summary>The table under a key, or the last one of a list of tables; a new one when the key is new, null when the key holds something else.</summary>
    public TomlDraft? Open(string key, int keyLine)
    {
        if (Find(key) is { } slot)
        {
            return slot.Tables.Count > 0 && !slot.Tables[^1].IsClosed ? slot.Tables[^1] : null;
        }

        var draft = new TomlDraft(keyLine, isClosed: false);
        Add(new Slot(key, keyLine, null, [draft], false));
        return draft;
    }

    /// <summary>Adds a table to the list of tables under a key; null when the key holds something else.</summary>
    public TomlDraft? Append(string key, int keyLine)
    {
        var slot = Find(key);
        if (slot is null)
        {
            slot = new Slot(key, keyLine, null, [], true);
            Add(slot);
        }

        if (!slot.IsList)
        {
            return null;
        }

        var draft = new TomlDraft(keyLine, isClosed: false) { HasHeader = true };
        slot.Tables.Add(draft);
        return draft;
    }

    /// <summary>The finished table.</summary>
    public TomlEntries Finish() =>
        new(line, [.. _slots.Select(slot => new TomlEntry(slot.Key, slot.Line, slot.Finish()))]);

    private Slot? Find(string key) => _byKey.GetValueOrDefault(key);

    private void Add(Slot slot)
    {
        _slots.Add(slot);
        _byKey.Add(slot.Key, slot);
    }

    private sealed record Slot(
        string Key,
        int Line,
        TomlValue? Value,
        List<TomlDraft> Tables,
        bool IsList
    )
    {
        public TomlValue Finish() =>
            Value
            ?? (
                IsList
                    ? new TomlList(Line, "", [.. Tables.Select(table => table.Finish())])
                    : Tables[0].Finish()
            );
    }
}
