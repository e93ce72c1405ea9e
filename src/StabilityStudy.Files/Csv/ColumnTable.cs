namespace StabilityStudy.Files.Csv;

/// <summary>The columns of a file, each declared by one call, in the order in which the canonical file has them.</summary>
/// <param name="section">Name of the table under [read] in study.toml that describes such a file.</param>
internal sealed class ColumnTable<TRow>(string section)
{
    private readonly List<Column> _columns = [];
    private readonly List<Action<TRow, CanonicalLine>> _writers = [];
    private readonly Dictionary<Column, Func<TRow, bool>> _later = [];

    /// <summary>What the file must and may have.</summary>
    public CsvColumns Columns => new(section, [.. _columns]);

    /// <summary>Declares a column.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="need">Whether the file must have it.</param>
    /// <param name="form">How its fields are written.</param>
    /// <param name="value">The value in a row.</param>
    /// <param name="note">What it means.</param>
    /// <param name="example">A value as it is written.</param>
    public Column<T> Add<T>(
        string name,
        Need need,
        ColumnForm<T> form,
        Func<TRow, T> value,
        string note,
        string example
    )
    {
        return Add(new Column<T>(name, need, form, note, example), value);
    }

    /// <summary>Declares a column that canonical files have only where a row has a value in it: those of before keep their bytes.</summary>
    public Column<T> AddLater<T>(
        string name,
        ColumnForm<T> form,
        Func<TRow, T> value,
        string note,
        string example
    )
    {
        var column = new Column<T>(name, Need.Optional, form, note, example) { IsLater = true };
        _later.Add(column, row => !EqualityComparer<T>.Default.Equals(value(row), form.Absent));
        return Add(column, value);
    }

    /// <summary>The columns that the canonical file of some rows has, and what writes the fields of a row in their order.</summary>
    public (CsvColumns Columns, Action<TRow, CanonicalLine> Write) Of(ImmutableArray<TRow> rows)
    {
        var used = Enumerable
            .Range(0, _columns.Count)
            .Where(i => IsUsed(_columns[i], rows))
            .ToImmutableArray();
        Action<TRow, CanonicalLine>[] writers = [.. used.Select(i => _writers[i])];
        return (
            new CsvColumns(section, [.. used.Select(i => _columns[i])]),
            (row, line) =>
            {
                foreach (var write in writers)
                {
                    write(row, line);
                }
            }
        );
    }

    private bool IsUsed(Column column, ImmutableArray<TRow> rows) =>
        !_later.TryGetValue(column, out var hasValue) || rows.Any(hasValue);

    private Column<T> Add<T>(Column<T> column, Func<TRow, T> value)
    {
        _columns.Add(column);
        _writers.Add((row, line) => column.Form.Write(line, value(row)));
        return column;
    }
}
