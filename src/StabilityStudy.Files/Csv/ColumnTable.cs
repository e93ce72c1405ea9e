namespace StabilityStudy.Files.Csv;

/// <summary>The columns of a file, each declared by one call, in the order in which the canonical file has them.</summary>
/// <param name="section">Name of the table under [read] in study.toml that describes such a file.</param>
internal sealed class ColumnTable<TRow>(string section)
{
    private readonly List<Column> _columns = [];
    private readonly List<Action<TRow, CanonicalLine>> _writers = [];

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
        var column = new Column<T>(name, need, form, note, example);
        _columns.Add(column);
        _writers.Add((row, line) => form.Write(line, value(row)));
        return column;
    }

    /// <summary>Writes the fields of a row in the order of the columns.</summary>
    public void Write(TRow row, CanonicalLine line)
    {
        foreach (var write in _writers)
        {
            write(row, line);
        }
    }
}
