namespace StabilityStudy.Files.Protocols;

/// <summary>A value together with the table it was read from, so that a check can name the line.</summary>
internal sealed record Part<T>(TomlTable Table, T Value)
{
    /// <summary>Reads a table that may be there; null when it is not.</summary>
    public static Part<T>? Optional(TomlTable parent, TableKey key, Func<TomlTable, T> read) =>
        parent.OptionalTable(key) is { } table ? new(table, read(table)) : null;
}

/// <summary>The entries of one list of tables.</summary>
/// <param name="Name">Name of the list: "analyte".</param>
/// <param name="Items">The entries.</param>
internal sealed record Parts<T>(string Name, ImmutableArray<Part<T>> Items)
{
    /// <summary>Reads every table of a list.</summary>
    public static Parts<T> Read(
        TomlTable parent,
        TableKey key,
        Func<TomlTable, T> read,
        bool? isRequired = null
    ) =>
        new(
            key.Name,
            [.. parent.Tables(key, isRequired).Select(table => new Part<T>(table, read(table)))]
        );

    /// <summary>The values alone.</summary>
    public ImmutableArray<T> Values => [.. Items.Select(item => item.Value)];

    /// <summary>The codes under a key; null when one of them could not be read, so that nothing is called unknown by mistake.</summary>
    public ImmutableArray<string>? Codes(Key<string> key, Func<T, string> code) =>
        Items.IsEmpty || Items.Any(item => !item.Table.IsSound(key))
            ? null
            : [.. Items.Select(item => code(item.Value))];

    /// <summary>Raises a query for every code that stands twice.</summary>
    public void RequireUnique(Key<string> key, Func<T, string> code)
    {
        var lines = new Dictionary<string, int?>(StringComparer.Ordinal);
        foreach (var (table, value) in Items)
        {
            if (table.IsSound(key) && !lines.TryAdd(code(value), table.Line))
            {
                table.Remark(
                    key,
                    ProtocolQueries.DuplicateId,
                    code(value),
                    FormattableString.Invariant(
                        $"\"{code(value)}\" is already the {key.Name} of the \"{Name}\" on line {lines[code(value)]}."
                    ),
                    "Give each its own."
                );
            }
        }
    }
}
