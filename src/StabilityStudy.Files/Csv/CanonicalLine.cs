using System.Buffers;
using System.Text;

namespace StabilityStudy.Files.Csv;

/// <summary>Writes the fields of one line after another, straight into the bytes of the file (RFC 4180 with line feeds).</summary>
internal sealed class CanonicalLine(IBufferWriter<byte> bytes)
{
    private const int LongestNumber = 40;
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",\"\r\n");
    private bool _isFirst = true;

    /// <summary>A text; in double quotes only when it must be.</summary>
    public CanonicalLine Text(string text)
    {
        Separate();
        var field = text.AsSpan().ContainsAny(NeedsQuotes)
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
        Encoding.UTF8.GetBytes(field, bytes);
        return this;
    }

    /// <summary>A number with its decimals; nothing when it is not recorded.</summary>
    public CanonicalLine Number(decimal? number) => Formatted(number, default);

    /// <summary>A time with seconds and offset; nothing when it is not recorded.</summary>
    public CanonicalLine Time(DateTimeOffset? time) => Formatted(time, StrictTime.Form);

    /// <summary>Ends the line.</summary>
    public void End()
    {
        bytes.Write("\n"u8);
        _isFirst = true;
    }

    private CanonicalLine Formatted<T>(T? value, ReadOnlySpan<char> format)
        where T : struct, IUtf8SpanFormattable
    {
        Separate();
        if (value is { } known)
        {
            known.TryFormat(
                bytes.GetSpan(LongestNumber),
                out var written,
                format,
                CultureInfo.InvariantCulture
            );
            bytes.Advance(written);
        }

        return this;
    }

    private void Separate()
    {
        if (!_isFirst)
        {
            bytes.Write(","u8);
        }

        _isFirst = false;
    }
}
