namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses one object that is not a stream (ISO 32000-1:2008, 7.3).</summary>
internal static class ObjectParser
{
    /// <summary>The object at the cursor, white space before it skipped; null when the cursor records a failure.</summary>
    /// <param name="cursor">Where to read.</param>
    /// <param name="depth">How many arrays and dictionaries lie around this object.</param>
    public static PdfObject? Parse(PdfCursor cursor, int depth)
    {
        if (!cursor.Values.TryTake())
        {
            cursor.Fail("The file holds more objects than the bounds allow.");
            return null;
        }

        cursor.SkipWhitespace();
        switch (cursor.Peek())
        {
            case '/':
                return NameParser.Parse(cursor);
            case '(':
                return StringParser.ParseLiteral(cursor);
            case '<' when cursor.Peek(1) != '<':
                return StringParser.ParseHexadecimal(cursor);
            case '<' or '[' when depth >= ReadingLimits.Depth:
                cursor.Fail("Arrays and dictionaries are nested too deep.");
                return null;
            case '<':
                return ParseDictionary(cursor, depth);
            case '[':
                return ParseArray(cursor, depth);
            case '+' or '-' or '.' or (>= '0' and <= '9'):
                return NumberParser.Parse(cursor);
            default:
                return ParseKeyword(cursor);
        }
    }

    private static PdfArray? ParseArray(PdfCursor cursor, int depth)
    {
        var items = ImmutableArray.CreateBuilder<PdfObject>();
        cursor.Position++;
        while (true)
        {
            cursor.SkipWhitespace();
            if (cursor.Peek() == ']')
            {
                cursor.Position++;
                return new PdfArray(items.DrainToImmutable());
            }

            if (Parse(cursor, depth + 1) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }
    }

    private static PdfDictionary? ParseDictionary(PdfCursor cursor, int depth)
    {
        var start = cursor.Position;
        var entries = new List<PdfEntry>();
        cursor.Position += 2;
        while (true)
        {
            cursor.SkipWhitespace();
            if (cursor.Peek() == '>' && cursor.Peek(1) == '>')
            {
                cursor.Position += 2;
                break;
            }

            if (cursor.Peek() != '/')
            {
                cursor.Fail(
                    "A dictionary entry does not begin with a name, or the dictionary does not end."
                );
                return null;
            }

            if (
                NameParser.Parse(cursor) is not { } name
                || Parse(cursor, depth + 1) is not { } value
            )
            {
                return null;
            }

            entries.Add(new PdfEntry(name.Value, value));
        }

        if (PdfDictionary.TryOf(entries) is { } dictionary)
        {
            return dictionary;
        }

        // Readers disagree on which of the two counts, so such a file says two things at once.
        cursor.Position = start;
        cursor.Fail("A dictionary holds a name twice.");
        return null;
    }

    private static PdfObject? ParseKeyword(PdfCursor cursor)
    {
        if (cursor.TryTake("true"u8))
        {
            return new PdfBoolean(true);
        }

        if (cursor.TryTake("false"u8))
        {
            return new PdfBoolean(false);
        }

        if (cursor.TryTake("null"u8))
        {
            return new PdfNull();
        }

        cursor.Fail("An object is expected here.");
        return null;
    }
}
