using System.Buffers;
using System.Text;

namespace StabilityStudy.Files.Csv;

/// <summary>Writes the fields of one line after another (RFC 4180 with line feeds).</summary>
internal sealed class CanonicalLine
{
    private const int UsualLength = 512;
    private const int LongestNumber = 40;
    private const int MostBytesOfCharacter = 3;
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",\"\r\n");
    private byte[] _bytes = new byte[UsualLength];
    private int _length;
    private bool _isFirst = true;
    private (TestOccasion Occasion, string Text) _occasion = (
        default,
        default(TestOccasion).ToString()
    );

    /// <summary>The line as far as it is written.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes.AsSpan(0, _length);

    /// <summary>A text; in double quotes only when it must be.</summary>
    public CanonicalLine Text(string text)
    {
        var field = text.AsSpan().ContainsAny(NeedsQuotes)
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
        var room = Next(MostBytesOfCharacter * field.Length);
        _length += Encoding.UTF8.GetBytes(field, room);
        return this;
    }

    /// <summary>When a result belongs.</summary>
    public CanonicalLine Occasion(TestOccasion occasion)
    {
        // Results of one time point follow each other.
        if (occasion != _occasion.Occasion)
        {
            _occasion = (occasion, occasion.ToString());
        }

        return Text(_occasion.Text);
    }

    /// <summary>A number with its decimals; nothing when it is not recorded.</summary>
    public CanonicalLine Number(decimal? number) => Formatted(number);

    /// <summary>A whole number; nothing when it is not recorded.</summary>
    public CanonicalLine Whole(int? number) => Formatted(number);

    /// <summary>A time with seconds and offset; nothing when it is not recorded.</summary>
    public CanonicalLine Time(DateTimeOffset? time)
    {
        var field = Next(StrictTime.WrittenLength);
        if (time is { } known)
        {
            _length += StrictTime.Write(known, field);
        }

        return this;
    }

    /// <summary>Begins another line.</summary>
    public void Clear()
    {
        _length = 0;
        _isFirst = true;
    }

    private CanonicalLine Formatted<T>(T? value)
        where T : struct, IUtf8SpanFormattable
    {
        var field = Next(LongestNumber);
        if (value is { } known)
        {
            known.TryFormat(field, out var written, default, CultureInfo.InvariantCulture);
            _length += written;
        }

        return this;
    }

    /// <summary>Room for the next field, behind a comma where it is not the first.</summary>
    private Span<byte> Next(int room)
    {
        if (_length + room + 1 > _bytes.Length)
        {
            Array.Resize(ref _bytes, 2 * (_length + room + 1));
        }

        if (!_isFirst)
        {
            _bytes[_length++] = (byte)',';
        }

        _isFirst = false;
        return _bytes.AsSpan(_length);
    }
}
