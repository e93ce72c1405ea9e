namespace StabilityStudy.Files.Csv;

/// <summary>
/// What texts of a column mean, as far as there was nothing to ask about them. What a text means depends on nothing but the
/// text, and a file has far fewer texts than rows, so that most fields need not be read again.
/// </summary>
/// <param name="column">The column.</param>
internal sealed class KnownTexts<T>(Column<T> column)
{
    private const int FewestPlaces = 64;
    private const int MostPlaces = 4096;
    private Known?[] _known = new Known?[FewestPlaces];
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

    /// <summary>Remembers what a text means. A text has one place only, and displaces another one there.</summary>
    public void Add(ReadOnlySpan<byte> text, T value)
    {
        if (_known[PlaceOf(text)] is not null && _known.Length < MostPlaces)
        {
            Grow();
        }

        _known[PlaceOf(text)] = _last = new(text.ToArray(), value);
    }

    private void Grow()
    {
        var before = _known;
        _known = new Known?[4 * before.Length];
        foreach (var known in before)
        {
            if (known is not null)
            {
                _known[PlaceOf(known.Text)] = known;
            }
        }
    }

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
