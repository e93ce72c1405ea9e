using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Csv;

/// <summary>
/// The current row of a file. As in a TOML table, a value that cannot be read raises a stop query and yields a
/// placeholder; <see cref="IsSound"/> then is false and the row is not used.
/// </summary>
/// <param name="known">What the rows may refer to.</param>
/// <param name="faults">Takes what is wrong.</param>
/// <param name="linesBefore">What is added to the number of a line where it stands for the row in the study: files after the first of their kind count on.</param>
internal sealed class CsvRow(KnownCodes known, RowFaults faults, int linesBefore)
{
    // Long texts are remarks, and every row has another one.
    private const int LongestKnown = 128;

    private readonly char[] _buffer = new char[StudyLimits.RowBytes];
    private object?[] _knownTexts = [];
    private IRowFields _fields = null!;
    private int _line;
    private int _queryCount;
    private int _faultCount;
    private bool _isUndecided;

    /// <summary>The row in the study: the line on which it begins in the facility's file, counted through all files of its kind.</summary>
    public int Line { get; private set; }

    /// <summary>What the rows may refer to.</summary>
    public KnownCodes Known { get; } = known;

    /// <summary>The numbers read so far by their texts: a file has far fewer of them than rows.</summary>
    public Dictionary<string, ReportedResult> Numbers { get; } = new(StringComparer.Ordinal);

    /// <summary>How study.toml says that times are written; null when it does not.</summary>
    public string? DateFormat => _fields.DateFormat;

    /// <summary>Whether every value read so far could be read.</summary>
    public bool IsSound => _faultCount == 0 && !_isUndecided;

    /// <summary>Goes on to the next row.</summary>
    /// <param name="line">Line on which it begins in this file.</param>
    /// <param name="fields">Its fields.</param>
    public void MoveTo(int line, IRowFields fields)
    {
        _fields = fields;
        _line = line;
        _queryCount = 0;
        _faultCount = 0;
        _isUndecided = false;
        Line = line + linesBefore;
        if (fields.Has(CsvColumns.SourceRow))
        {
            Line = _line = Read(CsvColumns.SourceRow) ?? line;
        }
    }

    /// <summary>The row cannot be used, though no query says so.</summary>
    public void LeaveOut() => _isUndecided = true;

    /// <summary>The value of a column.</summary>
    /// <param name="column">The column.</param>
    /// <param name="isRequired">Whether it must not be empty, where that is not as the file needs the column.</param>
    public T Read<T>(Column<T> column, bool? isRequired = null)
    {
        var isNeeded = isRequired ?? column.Need == Need.Required;
        if (!_fields.TryGet(column, out var bytes))
        {
            return ReadAnew(column, isNeeded, _fields.Fault(column));
        }

        if (bytes.IsEmpty && (!isNeeded || column.Form.IsFreeText))
        {
            return column.Form.Absent;
        }

        if (bytes.IsEmpty || bytes.Length > LongestKnown || column.Form.IsOwnToRow)
        {
            return ReadAnew(column, isNeeded, null);
        }

        var texts = KnownTextsOf(column);
        if (texts.TryFind(bytes, out var value))
        {
            return value;
        }

        var before = _queryCount;
        value = ReadAnew(column, isNeeded, null);
        if (_queryCount == before && !_isUndecided && _fields.TryGet(column, out bytes))
        {
            texts.Add(bytes, value);
        }

        return value;
    }

    private T ReadAnew<T>(Column<T> column, bool isNeeded, FieldFault? fault)
    {
        if (column.Form.IsFreeText && fault is null)
        {
            return column.Form.Read(this, column, []);
        }

        var before = _faultCount;
        var text = Plain(column, fault);
        if (!text.IsEmpty)
        {
            return column.Form.Read(this, column, text);
        }

        if (isNeeded && _faultCount == before)
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
    ) => Add(kind, column.Name, _fields.Where(column), observed, message, action);

    /// <summary>The field as it stands; empty when the file has no such column.</summary>
    public string Field(Column column) => _fields.Text(column);

    /// <summary>The field as it stands, valid until the next call; no text is made of it.</summary>
    private ReadOnlySpan<char> Characters(Column column) => _fields.Characters(column, _buffer);

    /// <summary>The field after the checks that hold for every column but free text; empty after a query.</summary>
    private ReadOnlySpan<char> Plain(Column column, FieldFault? fault)
    {
        if (fault is not null)
        {
            Add(
                fault.Kind,
                fault.Column ?? column.Name,
                _fields.Where(column),
                fault.Observed,
                fault.Message,
                fault.Action
            );
            return [];
        }

        var text = Characters(column);
        if (text.IsEmpty)
        {
            return text;
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

    private KnownTexts<T> KnownTextsOf<T>(Column<T> column)
    {
        if (column.Number >= _knownTexts.Length)
        {
            Array.Resize(ref _knownTexts, column.Number + 1);
        }

        if (
            _knownTexts[column.Number] is KnownTexts<T> texts
            && ReferenceEquals(texts.Column, column)
        )
        {
            return texts;
        }

        var made = new KnownTexts<T>(column);
        _knownTexts[column.Number] = made;
        return made;
    }

    private void Add(
        QueryKind kind,
        string column,
        string header,
        string observed,
        string message,
        string? action
    )
    {
        _queryCount++;
        _faultCount += kind.Severity == Severity.Stop ? 1 : 0;
        faults.Add(
            kind,
            _line,
            column,
            observed,
            header.Length > 0
                ? $"{message} (Column \"{UnseenCharacters.Shown(header)}\" of the file.)"
                : message,
            action
        );
    }
}
