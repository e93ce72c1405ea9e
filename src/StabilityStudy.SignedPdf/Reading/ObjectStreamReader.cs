namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses the objects in an object stream (ISO 32000-1:2008, 7.5.7).</summary>
internal static class ObjectStreamReader
{
    /// <summary>All objects in their order, or null when the cursor that comes with them records a failure.</summary>
    public static List<PdfIndirectObject>? Parse(PdfDictionary dictionary, PdfCursor cursor)
    {
        if (
            dictionary.Find("Type") is not PdfName { Value: "ObjStm" }
            || dictionary.Find("N")
                is not PdfInteger { Value: >= 0 and <= ReadingLimits.Objects } count
            || dictionary.Find("First") is not PdfInteger { Value: >= 0 } first
            || first.Value > cursor.Bytes.Length
        )
        {
            cursor.Fail("This is no object stream.");
            return null;
        }

        if (ParseHeader(cursor, count.Value, (int)first.Value) is not { } places)
        {
            return null;
        }

        var objects = new List<PdfIndirectObject>(places.Count);
        for (var i = 0; i < places.Count; i++)
        {
            // No object may reach into the next: nothing is parsed twice.
            var end = i + 1 < places.Count ? places[i + 1].Start : cursor.Bytes.Length;
            cursor.Position = places[i].Start;
            if (ObjectParser.Parse(cursor, 0) is not { } value)
            {
                return null;
            }

            if (cursor.Position > end)
            {
                cursor.Fail("Objects in an object stream overlap.");
                return null;
            }

            objects.Add(new PdfIndirectObject(new PdfReference(places[i].Number, 0), value));
        }

        return objects;
    }

    private static List<(int Number, int Start)>? ParseHeader(
        PdfCursor cursor,
        long count,
        int first
    )
    {
        var places = new List<(int Number, int Start)>();
        for (var i = 0; i < count; i++)
        {
            cursor.SkipWhitespace();
            var number = cursor.TryTakeDigits(ReadingLimits.ObjectNumber);
            cursor.SkipWhitespace();
            var offset = cursor.TryTakeDigits(cursor.Bytes.Length - first);
            if (
                number is null
                || offset is null
                || cursor.Position > first
                || (i > 0 && first + offset <= places[^1].Start)
            )
            {
                cursor.Fail("The table at the start of an object stream is not in order.");
                return null;
            }

            places.Add(((int)number, (int)(first + offset)));
        }

        return places;
    }
}
