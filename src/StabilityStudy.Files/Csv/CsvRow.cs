using System.Collections.Frozen;
using CsvHelper;

namespace StabilityStudy.Files.Csv;

/// <summary>
/// The current row of a file. As in a TOML table, a value that cannot be read raises a stop query and yields a
/// placeholder; <see cref="IsSound"/> then is false and the row is not used.
/// </summary>
internal sealed class CsvRow(
    CsvReader reader,
    string fileName,
    FrozenDictionary<string, int> places,
    FileLayout? layout,
    KnownCodes known,
    QueryList queries
)
{
    private readonly char[] _buffer = new char[StudyLimits.RowBytes];
    private readonly Dictionary<string, string> _before = new(StringComparer.Ordinal);
    private int _stopsBefore;
    private bool _isUndecided;

    /// <summary>Line on which the row begins in the facility's file.</summary>
    public int Line { get; private set; }

    /// <summary>What the rows may refer to.</summary>
    public KnownCodes Known { get; } = known;

    /// <summary>How study.toml says that times are written; null when it does not.</summary>
    public string? DateFormat => layout?.DateFormat;

    /// <summary>Whether every value read so far could be read.</summary>
    public bool IsSound => queries.StopCount == _stopsBefore && !_isUndecided;

    /// <summary>Goes on to the next row.</summary>
    /// <param name="line">Line on which it begins in this file.</param>
    public void MoveTo(int line)
    {
        _stopsBefore = queries.StopCount;
        _isUndecided = false;
        Line = line;
        if (places.ContainsKey(CsvColumns.SourceRow.Name))
        {
            Line = Read(CsvColumns.SourceRow) ?? line;
        }
    }

    /// <summary>The row cannot be used, though no query says so.</summary>
    public void LeaveOut() => _isUndecided = true;

    /// <summary>The value of a column.</summary>
    /// <param name="column">The column.</param>
    /// <param name="isRequired">Whether it must not be empty, where that is not as the file needs the column.</param>
    public T Read<T>(Column<T> column, bool? isRequired = null)
    {
        if (column.Form.IsFreeText)
        {
            return column.Form.Read(this, column, []);
        }

        var before = queries.StopCount;
        var text = Plain(column);
        if (!text.IsEmpty)
        {
            return column.Form.Read(this, column, text);
        }

        if ((isRequired ?? column.Need == Need.Required) && queries.StopCount == before)
        {
            Add(
                RowQueries.MissingValue,
                column,
                "",
                $"\"{column.Name}\" is empty.",
                $"Fill in \"{column.Name}\"."
            );
        }

        return column.Form.Absent;
    }

    /// <summary>Whether a field is empty.</summary>
    public bool IsEmpty(Column column) => Characters(column).IsEmpty;

    /// <summary>Raises a query about a column of this row.</summary>
    public void Add(
        QueryKind kind,
        Column column,
        string observed,
        string message,
        string? action = null
    ) => queries.Add(kind, new QuerySource(fileName, Line, column.Name), observed, message, action);

    /// <summary>
    /// The field as it stands; empty when the file has no such column. Rows of one specimen follow each other, so a text
    /// that stands in the row before too is made once.
    /// </summary>
    public string Field(Column column)
    {
        var text = Characters(column);
        if (_before.TryGetValue(column.Name, out var before) && text.SequenceEqual(before))
        {
            return before;
        }

        var made =
            text.IsEmpty ? ""
            : layout is null ? reader.GetString(places[column.Name])
            : text.ToString();
        _before[column.Name] = made;
        return made;
    }

    /// <summary>The field as it stands, valid until the next call; no text is made of it.</summary>
    private ReadOnlySpan<char> Characters(Column column) =>
        layout is null ? Stored(column)
        : layout.Constants.TryGetValue(column.Name, out var constant) ? constant
        : layout.Translate(column, Stored(column).ToString());

    private ReadOnlySpan<char> Stored(Column column) =>
        places.TryGetValue(column.Name, out var place)
            ? _buffer.AsSpan(0, reader.GetChars(place, _buffer))
            : [];

    /// <summary>The field after the checks that hold for every column but free text; empty after a query.</summary>
    private ReadOnlySpan<char> Plain(Column column)
    {
        var text = Characters(column);
        if (text.IsEmpty)
        {
            return text;
        }

        if (layout is not null && layout.HasOtherPoint(column, Stored(column)))
        {
            var read = Stored(column).ToString();
            Add(
                CsvQueries.DecimalPoint,
                column,
                read,
                $"\"{read}\" has a point, and study.toml says that decimals follow a comma: it may be a thousand times the number meant."
            );
            return [];
        }

        if (UnseenCharacters.First(text) is { } unseen)
        {
            Add(
                FileQueries.ControlCharacter,
                column,
                "",
                $"The value holds a line break or another character that cannot be seen: {UnseenCharacters.NameOf(unseen)}.",
                "Type the value again."
            );
            return [];
        }

        if (column.Content == ColumnContent.Words && FormulaShape.Is(text))
        {
            FormulaShape.Report(this, column, text.ToString());
            return [];
        }

        if (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1]))
        {
            Add(
                RowQueries.SurroundingSpace,
                column,
                text.ToString(),
                "The value begins or ends with a space."
            );
            return [];
        }

        return text;
    }
}
