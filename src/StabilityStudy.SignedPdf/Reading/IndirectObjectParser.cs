namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses <c>n g obj … endobj</c>, streams included (ISO 32000-1:2008, 7.3.8 and 7.3.10).</summary>
internal static class IndirectObjectParser
{
    // Room for any usual end of line; more would let many objects share the same long gap.
    private const int LongestGap = 8;

    /// <summary>The object that begins exactly at the cursor, which ends after <c>endobj</c>; null when the cursor records a failure.</summary>
    /// <param name="cursor">Where to read.</param>
    /// <param name="expected">The number and generation it must have; null for any.</param>
    /// <param name="lengthOf">Gives the stream length under a reference; null when there is none.</param>
    public static PdfIndirectObject? Parse(
        PdfCursor cursor,
        PdfReference? expected,
        Func<PdfReference, long?> lengthOf
    )
    {
        if (
            ParseHeader(cursor, expected) is not { } reference
            || ObjectParser.Parse(cursor, 0) is not { } value
        )
        {
            return null;
        }

        cursor.SkipWhitespace();
        if (value is PdfDictionary dictionary && cursor.TryTake("stream"u8))
        {
            if (ParseStream(cursor, dictionary, lengthOf) is not { } stream)
            {
                return null;
            }

            value = stream;
            cursor.SkipWhitespace();
        }

        return cursor.Take("endobj"u8, "An object does not end where it should.")
            ? new PdfIndirectObject(reference, value)
            : null;
    }

    /// <summary>The whole number that is the indirect object at the cursor; null when there is none in plain form.</summary>
    public static long? TryParseLength(PdfCursor cursor, PdfReference expected)
    {
        if (ParseHeader(cursor, expected) is null || !SkipGap(cursor))
        {
            return null;
        }

        var length = cursor.TryTakeDigits(int.MaxValue);
        return SkipGap(cursor) && cursor.TryTake("endobj"u8) ? length : null;
    }

    private static PdfReference? ParseHeader(PdfCursor cursor, PdfReference? expected)
    {
        var start = cursor.Position;
        if (
            cursor.TryTakeDigits(ReadingLimits.ObjectNumber) is { } number
            && SkipGap(cursor)
            && cursor.TryTakeDigits(65535) is { } generation
            && SkipGap(cursor)
            && cursor.TryTake("obj"u8)
        )
        {
            var reference = new PdfReference((int)number, (int)generation);
            if (expected is null || expected == reference)
            {
                return reference;
            }
        }

        cursor.Position = start;
        cursor.Fail("The object that the cross-reference announces does not begin here.");
        return null;
    }

    private static bool SkipGap(PdfCursor cursor)
    {
        var length = 0;
        while (length < LongestGap && PdfCharacter.IsWhitespace(cursor.Peek(length)))
        {
            length++;
        }

        cursor.Position += length;
        return length > 0;
    }

    private static PdfStream? ParseStream(
        PdfCursor cursor,
        PdfDictionary dictionary,
        Func<PdfReference, long?> lengthOf
    )
    {
        if (!cursor.TryTakeEndOfLine(loneReturn: false))
        {
            cursor.Fail("The word stream is not followed by an end of line.");
            return null;
        }

        var length = dictionary.Find("Length") switch
        {
            PdfInteger { Value: >= 0 } direct => direct.Value,
            PdfReference reference => lengthOf(reference),
            _ => null,
        };
        if (length is not { } known || known > cursor.Bytes.Length - cursor.Position)
        {
            cursor.Fail("A stream has no usable length.");
            return null;
        }

        var encoded = cursor.Bytes.Slice(cursor.Position, (int)known);
        cursor.Position += (int)known;
        cursor.SkipWhitespace();
        return cursor.Take("endstream"u8, "A stream does not end where its length says.")
            ? new PdfStream(dictionary, encoded)
            : null;
    }
}
