namespace StabilityStudy.Files.Csv;

/// <summary>
/// What texts of a column mean, as far as there was nothing to ask about them. What a text means depends on nothing but the
/// text, and a file has far fewer texts than rows, so that most fields need not be read again.
/// </summary>
/// <param name="column">The column.</param>
internal sealed class KnownTexts<T>(Column<T> column)
{
    // A text has one place only; another one of the same place displaces it. Results are of more kinds than codes.
    private readonly Known?[] _known = new Known?[
        column.Content == ColumnContent.Results ? 4096 : 512
    ];
    private Known? _last;

    /// <summary>The column.</summary>
    public Column<T> Column => column;

    /// <summary>Finds what a text means.</summary>
    /// <param name="text">The bytes of the text.</param>
    /// <param name="value">What it means.</param>
    public bool TryFind(ReadOnlySpan<byte> text, out T value)
    {
        if (_last is null || !text.SequenceEqual(_last.Text))
        {
            if (_known[PlaceOf(text)] is not { } known || !text.SequenceEqual(known.Text))
            {
                value = column.Form.Absent;
                return false;
            }

            _last = known;
        }

        value = _last.Value;
        return true;
    }

    /// <summary>Remembers what a text means.</summary>
    public void Add(ReadOnlySpan<byte> text, T value) =>
        _known[PlaceOf(text)] = _last = new(text.ToArray(), value);

    private int PlaceOf(ReadOnlySpan<byte> text)
    {
        var hash = 0u;
        foreach (var unit in text)
        {
            hash = unchecked((31 * hash) + unit);
        }

        return (int)(hash % (uint)_known.Length);
    }

    private sealed record Known(byte[] Text, T Value);
}
