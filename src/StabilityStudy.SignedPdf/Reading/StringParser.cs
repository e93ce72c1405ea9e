using System.Collections.Immutable;
using StabilityStudy.SignedPdf.Objects;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses literal and hexadecimal strings (ISO 32000-1:2008, 7.3.4).</summary>
internal static class StringParser
{
    public static PdfString? ParseLiteral(PdfCursor cursor)
    {
        var bytes = ImmutableArray.CreateBuilder<byte>();
        var open = 1;
        cursor.Position++;
        while (true)
        {
            var value = cursor.Peek();
            switch (value)
            {
                case -1:
                    cursor.Fail("A string does not end.");
                    return null;
                case '(':
                    open++;
                    break;
                case ')' when open == 1:
                    cursor.Position++;
                    return new PdfString(bytes.DrainToImmutable());
                case ')':
                    open--;
                    break;
                case '\r' or '\n':
                    // Any end of line within a string stands for a line feed.
                    cursor.TryTakeEndOfLine(loneReturn: true);
                    bytes.Add((byte)'\n');
                    continue;
                case '\\':
                    cursor.Position++;
                    TakeEscape(cursor, bytes);
                    continue;
                default:
                    break;
            }

            bytes.Add((byte)value);
            cursor.Position++;
        }
    }

    public static PdfString? ParseHexadecimal(PdfCursor cursor)
    {
        var bytes = ImmutableArray.CreateBuilder<byte>();
        int? high = null;
        for (cursor.Position++; ; cursor.Position++)
        {
            var value = cursor.Peek();
            if (value == '>')
            {
                // A missing last digit counts as zero.
                if (high is { } last)
                {
                    bytes.Add((byte)(last * 16));
                }

                cursor.Position++;
                return new PdfString(bytes.DrainToImmutable());
            }

            if (PdfCharacter.IsWhitespace(value))
            {
                continue;
            }

            if (PdfCharacter.HexadecimalValue(value) is not { } digit)
            {
                cursor.Fail(
                    "A hexadecimal string holds something else than digits, or does not end."
                );
                return null;
            }

            if (high is { } first)
            {
                bytes.Add((byte)((first * 16) + digit));
                high = null;
            }
            else
            {
                high = digit;
            }
        }
    }

    private static void TakeEscape(PdfCursor cursor, ImmutableArray<byte>.Builder bytes)
    {
        if (cursor.TryTakeEndOfLine(loneReturn: true))
        {
            return;
        }

        var value = cursor.Peek();
        if (value is >= '0' and <= '7')
        {
            var code = 0;
            for (var digits = 0; digits < 3 && cursor.Peek() is >= '0' and <= '7'; digits++)
            {
                code = (code * 8) + cursor.Peek() - '0';
                cursor.Position++;
            }

            // High-order overflow is ignored, as the standard says.
            bytes.Add((byte)(code & 0xFF));
            return;
        }

        if (value < 0)
        {
            return;
        }

        bytes.Add(
            value switch
            {
                'n' => (byte)'\n',
                'r' => (byte)'\r',
                't' => (byte)'\t',
                'b' => (byte)'\b',
                'f' => (byte)'\f',
                _ => (byte)value,
            }
        );
        cursor.Position++;
    }
}
