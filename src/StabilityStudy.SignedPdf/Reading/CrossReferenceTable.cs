namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses a cross-reference table and the trailer after it (ISO 32000-1:2008, 7.5.4 and 7.5.5).</summary>
internal static class CrossReferenceTable
{
    private const int EntryLength = 20;

    /// <summary>The section whose word <c>xref</c> has just been read; null when the cursor records a failure.</summary>
    public static CrossReferenceSection? Parse(PdfCursor cursor)
    {
        var entries = new List<KeyValuePair<int, CrossReferenceEntry>>();
        cursor.SkipWhitespace();
        while (!cursor.TryTake("trailer"u8))
        {
            if (!ParseSubsection(cursor, entries))
            {
                return null;
            }

            cursor.SkipWhitespace();
        }

        if (ObjectParser.Parse(cursor, 0) is not { } value)
        {
            return null;
        }

        if (value is not PdfDictionary trailer)
        {
            cursor.Fail("The trailer is not a dictionary.");
            return null;
        }

        if (trailer.Find("XRefStm") is not null)
        {
            cursor.Fail(
                "The file has both kinds of cross-reference at once, which readers take differently."
            );
            return null;
        }

        return new CrossReferenceSection(entries, trailer, IsStream: false);
    }

    private static bool ParseSubsection(
        PdfCursor cursor,
        List<KeyValuePair<int, CrossReferenceEntry>> entries
    )
    {
        if (
            cursor.TryTakeDigits(ReadingLimits.ObjectNumber) is not { } first
            || cursor.Peek() != ' '
        )
        {
            return cursor.Fail(
                "A subsection of the cross-reference table, or the trailer, is expected here."
            );
        }

        cursor.Position++;
        if (cursor.TryTakeDigits(ReadingLimits.Objects) is not { } count)
        {
            return cursor.Fail(
                "A subsection of the cross-reference table does not say how long it is."
            );
        }

        while (cursor.Peek() == ' ')
        {
            cursor.Position++;
        }

        if (
            !cursor.TryTakeEndOfLine(loneReturn: true)
            || count * EntryLength > cursor.Bytes.Length - cursor.Position
            || first + count > ReadingLimits.ObjectNumber
            || entries.Count + count > ReadingLimits.Objects
        )
        {
            return cursor.Fail(
                "A subsection of the cross-reference table is longer than the file or the bounds allow."
            );
        }

        for (var number = (int)first; number < first + count; number++)
        {
            if (ParseEntry(cursor.Bytes.Span.Slice(cursor.Position, EntryLength)) is not { } entry)
            {
                return cursor.Fail(
                    "An entry of the cross-reference table is not twenty bytes of the prescribed form."
                );
            }

            entries.Add(new(number, entry));
            cursor.Position += EntryLength;
        }

        return true;
    }

    private static CrossReferenceEntry? ParseEntry(ReadOnlySpan<byte> entry)
    {
        var form =
            entry[10] == ' '
            && entry[16] == ' '
            && (entry[18], entry[19])
                is
                    ((byte)' ', (byte)'\n')
                    or
                    ((byte)' ', (byte)'\r')
                    or
                    ((byte)'\r', (byte)'\n');
        var offset = Digits(entry[..10]);
        var generation = Digits(entry[11..16]);
        if (!form || offset is not <= int.MaxValue || generation is not <= 65535)
        {
            return null;
        }

        return (char)entry[17] switch
        {
            'n' => new(CrossReferenceKind.InFile, (int)offset, (int)generation),
            'f' => new(CrossReferenceKind.Free, 0, 0),
            _ => null,
        };
    }

    private static long? Digits(ReadOnlySpan<byte> text)
    {
        long value = 0;
        foreach (var digit in text)
        {
            if (!PdfCharacter.IsDigit(digit))
            {
                return null;
            }

            value = (value * 10) + digit - '0';
        }

        return value;
    }
}
