namespace StabilityStudy.SignedPdf.Reading;

/// <summary>All cross-reference sections of a file, from the newest back (ISO 32000-1:2008, 7.5.6).</summary>
/// <param name="Entries">The newest entry for each object number.</param>
/// <param name="Trailer">The newest trailer.</param>
/// <param name="Revisions">Oldest first.</param>
internal sealed record CrossReferenceChain(
    Dictionary<int, CrossReferenceEntry> Entries,
    PdfDictionary Trailer,
    List<PdfRevision> Revisions
)
{
    // "startxref", an offset and "%%EOF" with ends of line.
    private const int LongestEnding = 64;

    /// <summary>Follows the chain from the end of the file; null when the cursor records a failure.</summary>
    public static CrossReferenceChain? Parse(PdfCursor cursor, DecodingBudget budget)
    {
        var bytes = cursor.Bytes.Span;
        var tail = Math.Max(0, bytes.Length - LongestEnding);
        var ending = bytes[tail..].LastIndexOf("startxref"u8);
        cursor.Position = tail + Math.Max(0, ending);
        if (ending < 0 || ParseEnding(cursor) is not { } newest)
        {
            cursor.Fail("The file does not end with startxref, an offset and %%EOF.");
            return null;
        }

        if (cursor.Position != bytes.Length)
        {
            cursor.Fail("There are bytes after the end of the file.");
            return null;
        }

        var entries = new Dictionary<int, CrossReferenceEntry>();
        var revisions = new List<PdfRevision>();
        PdfDictionary? trailer = null;
        long? offset = newest;
        var before = (long)bytes.Length;
        while (offset is { } current)
        {
            if (ParseRevision(cursor, current, before, budget) is not var (section, end))
            {
                return null;
            }

            if (
                section.Entries.DistinctBy(static entry => entry.Key).Count()
                < section.Entries.Count
            )
            {
                cursor.Fail(
                    "A cross-reference lists an object twice, of which readers take one or the other."
                );
                return null;
            }

            foreach (var (number, entry) in section.Entries)
            {
                entries.TryAdd(number, entry);
            }

            trailer ??= section.Trailer;
            if (revisions.Count == 0 && end != bytes.Length)
            {
                cursor.Fail("The newest revision does not end the file.");
                return null;
            }

            revisions.Insert(
                0,
                new PdfRevision(current, section.IsStream, end)
                {
                    Numbers =
                    [
                        .. section
                            .Entries.Where(entry =>
                                entry.Value.Kind != CrossReferenceKind.InFile
                                || entry.Value.Place != current
                            )
                            .Select(entry => entry.Key)
                            .Order(),
                    ],
                }
            );
            before = current;
            offset = section.Trailer.Find("Prev") switch
            {
                null => null,
                PdfInteger previous => previous.Value,
                _ => -1,
            };
            if (revisions.Count > ReadingLimits.Revisions || entries.Count > ReadingLimits.Objects)
            {
                cursor.Fail("The file has more revisions or objects than the bounds allow.");
                return null;
            }
        }

        return trailer is null ? null : new CrossReferenceChain(entries, trailer, revisions);
    }

    /// <summary>One section and where its revision ends, which must be at or before <paramref name="before"/>: so no chain is a circle.</summary>
    private static (CrossReferenceSection Section, long End)? ParseRevision(
        PdfCursor cursor,
        long offset,
        long before,
        DecodingBudget budget
    )
    {
        if (offset <= 0 || offset >= before)
        {
            cursor.Fail("A cross-reference offset does not lie before the revision that names it.");
            return null;
        }

        cursor.Position = (int)offset;
        var section = cursor.TryTake("xref"u8)
            ? CrossReferenceTable.Parse(cursor)
            : CrossReferenceStream.Parse(cursor, budget);
        if (section is null)
        {
            return null;
        }

        cursor.SkipWhitespace();
        if (ParseEnding(cursor) != offset || cursor.Position > before)
        {
            cursor.Fail("A revision does not end with its own startxref, offset and %%EOF.");
            return null;
        }

        return (section, cursor.Position);
    }

    private static long? ParseEnding(PdfCursor cursor)
    {
        if (!cursor.TryTake("startxref"u8) || !cursor.TryTakeEndOfLine(loneReturn: true))
        {
            return null;
        }

        var offset = cursor.TryTakeDigits(int.MaxValue);
        if (!cursor.TryTakeEndOfLine(loneReturn: true) || !cursor.TryTake("%%EOF"u8))
        {
            return null;
        }

        cursor.TryTakeEndOfLine(loneReturn: true);
        return offset;
    }
}
