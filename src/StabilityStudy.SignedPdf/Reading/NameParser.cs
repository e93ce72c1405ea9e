namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Parses names (ISO 32000-1:2008, 7.3.5).</summary>
internal static class NameParser
{
    // Annex C gives 127 bytes as the limit a reader must reach; longer names are not written by anybody.
    private const int LongestName = 512;

    public static PdfName? Parse(PdfCursor cursor)
    {
        Span<char> name = stackalloc char[LongestName];
        var length = 0;
        for (cursor.Position++; PdfCharacter.IsRegular(cursor.Peek()); cursor.Position++)
        {
            var value = cursor.Peek();
            if (value == '#')
            {
                var high = PdfCharacter.HexadecimalValue(cursor.Peek(1));
                var low = PdfCharacter.HexadecimalValue(cursor.Peek(2));
                if (high is null || low is null || high + low == 0)
                {
                    cursor.Fail(
                        "In a name, # is not followed by the two digits of a byte other than zero."
                    );
                    return null;
                }

                value = (high.Value * 16) + low.Value;
                cursor.Position += 2;
            }

            if (length == LongestName)
            {
                cursor.Fail("A name is too long.");
                return null;
            }

            name[length++] = (char)value;
        }

        return cursor.Values.NameOf(name[..length]);
    }
}
