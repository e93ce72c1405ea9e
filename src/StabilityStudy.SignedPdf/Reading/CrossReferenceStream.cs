namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses a cross-reference stream (ISO 32000-1:2008, 7.5.8).</summary>
internal static class CrossReferenceStream
{
    private static readonly string[] s_ofStream =
    [
        "Type",
        "W",
        "Index",
        "Length",
        "Filter",
        "DecodeParms",
    ];

    /// <summary>The section in the stream object that begins at the cursor; null when the cursor records a failure.</summary>
    public static CrossReferenceSection? Parse(PdfCursor cursor, DecodingBudget budget)
    {
        var start = cursor.Position;
        if (IndirectObjectParser.Parse(cursor, expected: null, static _ => null) is not { } found)
        {
            return null;
        }

        if (
            found.Value is not PdfStream stream
            || stream.Dictionary.Find("Type") is not PdfName { Value: "XRef" }
        )
        {
            cursor.Position = start;
            cursor.Fail("A cross-reference table or stream is expected here.");
            return null;
        }

        if (!budget.Decode(stream).TryGet(out var data, out var failure))
        {
            cursor.Fail("A cross-reference stream cannot be decoded: " + failure.What);
            return null;
        }

        if (Entries(stream.Dictionary, data.Span) is not { } entries)
        {
            cursor.Fail("A cross-reference stream does not hold what its dictionary says.");
            return null;
        }

        return new CrossReferenceSection(entries, TrailerOf(stream.Dictionary), IsStream: true);
    }

    /// <summary>The entries that a trailer would have.</summary>
    private static PdfDictionary TrailerOf(PdfDictionary dictionary) =>
        s_ofStream.Aggregate(dictionary, (trailer, name) => trailer.Without(name));

    private static List<KeyValuePair<int, CrossReferenceEntry>>? Entries(
        PdfDictionary dictionary,
        ReadOnlySpan<byte> data
    )
    {
        if (
            Integers(dictionary.Find("W"), 7)
                is not [var kindWidth, var placeWidth, var detailWidth]
            || dictionary.Find("Size")
                is not PdfInteger { Value: >= 0 and <= ReadingLimits.ObjectNumber } size
        )
        {
            return null;
        }

        var width = kindWidth + placeWidth + detailWidth;
        var index = dictionary.Find("Index") is { } given
            ? Integers(given, ReadingLimits.ObjectNumber)
            : [0, (int)size.Value];
        if (index is null || index.Count % 2 != 0 || width == 0)
        {
            return null;
        }

        var entries = new List<KeyValuePair<int, CrossReferenceEntry>>();
        for (var i = 0; i < index.Count; i += 2)
        {
            var (first, count) = (index[i], index[i + 1]);
            if (
                (long)count * width > data.Length
                || first + (long)count > ReadingLimits.ObjectNumber
                || entries.Count + (long)count > ReadingLimits.Objects
            )
            {
                return null;
            }

            for (var number = first; number < first + count; number++)
            {
                var kind = kindWidth == 0 ? 1 : BigEndian(data[..kindWidth]);
                var place = BigEndian(data.Slice(kindWidth, placeWidth));
                var detail = BigEndian(data.Slice(kindWidth + placeWidth, detailWidth));
                if (Entry(kind, place, detail) is not { } entry)
                {
                    return null;
                }

                entries.Add(new(number, entry));
                data = data[width..];
            }
        }

        return entries;
    }

    private static CrossReferenceEntry? Entry(long kind, long place, long detail) =>
        (kind, place, detail) switch
        {
            (0, _, _) => new(CrossReferenceKind.Free, 0, 0),
            (1, <= int.MaxValue, <= 65535) => new(
                CrossReferenceKind.InFile,
                (int)place,
                (int)detail
            ),
            (2, <= ReadingLimits.ObjectNumber, <= ReadingLimits.Objects) => new(
                CrossReferenceKind.InObjectStream,
                (int)place,
                (int)detail
            ),
            _ => null,
        };

    private static long BigEndian(ReadOnlySpan<byte> bytes)
    {
        long value = 0;
        foreach (var next in bytes)
        {
            value = (value << 8) | next;
        }

        return value;
    }

    private static List<int>? Integers(PdfObject? value, int maximum)
    {
        if (value is not PdfArray array)
        {
            return null;
        }

        var integers = new List<int>();
        foreach (var item in array.Items)
        {
            if (item is not PdfInteger { Value: >= 0 } integer || integer.Value > maximum)
            {
                return null;
            }

            integers.Add((int)integer.Value);
        }

        return integers;
    }
}
