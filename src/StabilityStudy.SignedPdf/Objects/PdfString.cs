using System.Text;

namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A string of bytes (ISO 32000-1:2008, 7.3.4). Whether it was written as text or as hexadecimal digits is not kept.</summary>
internal sealed record PdfString(ImmutableArray<byte> Bytes) : PdfObject
{
    /// <summary>A text string (7.9.2.2): ASCII as it is, anything else as UTF-16 with a byte order mark.</summary>
    public static PdfString OfText(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Ascii.IsValid(text)
            ? new PdfString([.. Encoding.ASCII.GetBytes(text)])
            : new PdfString([0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(text)]);
    }

    /// <summary>
    /// The text of a text string: UTF-16 or UTF-8 when a byte order mark says so, otherwise each byte as the Latin-1
    /// character of the same number (which PDFDocEncoding shares for ASCII and nearly all letters).
    /// </summary>
    public string ToText() =>
        Bytes.AsSpan() switch
        {
            [0xFE, 0xFF, .. var rest] => Encoding.BigEndianUnicode.GetString(rest),
            [0xEF, 0xBB, 0xBF, .. var rest] => Encoding.UTF8.GetString(rest),
            var all => Encoding.Latin1.GetString(all),
        };
}
