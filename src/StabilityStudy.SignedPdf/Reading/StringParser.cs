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

    // Over a span and not digit by digit through the cursor: the room for a signature alone takes 32 thousand digits.
    public static PdfString? ParseHexadecimal(PdfCursor cursor)
    {
        var rest = cursor.Bytes.Span[(cursor.Position + 1)..];
        var end = rest.IndexOf((byte)'>');
        var digits = end < 0 ? rest : rest[..end];
        var bytes = ImmutableArray.CreateBuilder<byte>(digits.Length / 2);
        var high = -1;
        for (var i = 0; i < digits.Length; i++)
        {
            if (PdfCharacter.HexadecimalValue(digits[i]) is { } digit)
            {
                if (high >= 0)
                {
                    bytes.Add((byte)((high * 16) + digit));
                }

                high = high < 0 ? digit : -1;
            }
            else if (!PdfCharacter.IsWhitespace(digits[i]))
            {
                return Unended(cursor, i);
            }
        }

        if (end < 0)
        {
            return Unended(cursor, digits.Length);
        }

        // A missing last digit counts as zero.
        if (high >= 0)
        {
            bytes.Add((byte)(high * 16));
        }

        cursor.Position += end + 2;
        return new PdfString(bytes.DrainToImmutable());
    }

    private static PdfString? Unended(PdfCursor cursor, int digits)
    {
        cursor.Position += digits + 1;
        cursor.Fail("A hexadecimal string holds something else than digits, or does not end.");
        return null;
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
