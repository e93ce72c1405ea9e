using System.Text;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses numbers and, since they begin alike, references (ISO 32000-1:2008, 7.3.3 and 7.3.10).</summary>
internal static class NumberParser
{
    // Longer than any double written in full; a longer token is an attack, not a number.
    private const int LongestToken = 400;

    // A report holds the same few small numbers tens of thousands of times; one object each will do.
    private const int SmallIntegers = 256;
    private static readonly ImmutableArray<PdfInteger> Small =
    [
        .. Enumerable.Range(0, SmallIntegers).Select(static value => new PdfInteger(value)),
    ];

    public static PdfObject? Parse(PdfCursor cursor)
    {
        var length = 0;
        while (length <= LongestToken && PdfCharacter.IsRegular(cursor.Peek(length)))
        {
            length++;
        }

        var text = cursor.Bytes.Span.Slice(cursor.Position, length);
        PdfObject? number = null;
        if (
            long.TryParse(
                text,
                NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var integer
            )
        )
        {
            number = integer is >= 0 and < SmallIntegers
                ? Small[(int)integer]
                : new PdfInteger(integer);
        }
        else if (
            length <= LongestToken
            && Encoding.Latin1.GetString(text) is var real
            && PdfReal.IsReal(real)
        )
        {
            number = new PdfReal(real);
        }

        if (number is null)
        {
            cursor.Fail("Not a number.");
            return null;
        }

        cursor.Position += length;
        return
            PdfCharacter.IsDigit(text[0])
            && number is PdfInteger { Value: <= ReadingLimits.ObjectNumber } first
            ? (PdfObject?)TryReference(cursor, (int)first.Value) ?? number
            : number;
    }

    private static PdfReference? TryReference(PdfCursor cursor, int number)
    {
        var start = cursor.Position;
        cursor.SkipWhitespace();
        if (cursor.TryTakeDigits(65535) is { } generation)
        {
            cursor.SkipWhitespace();
            if (cursor.TryTake("R"u8))
            {
                return new PdfReference(number, (int)generation);
            }
        }

        cursor.Position = start;
        return null;
    }
}
