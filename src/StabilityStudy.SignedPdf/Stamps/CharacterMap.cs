namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>Reads which glyph of a TrueType font draws which character (ISO/IEC 14496-22, table cmap, formats 4 and 12).</summary>
internal static class CharacterMap
{
    private const int HighestCodePoint = 0x10FFFF;

    /// <summary>Glyph by code point; empty when the font has no table of a known form.</summary>
    public static ImmutableSortedDictionary<int, int> Read(ReadOnlyMemory<byte> table, int glyphs)
    {
        var map = ImmutableSortedDictionary.CreateBuilder<int, int>();
        for (var i = 0; i < FontTables.UInt16(table, 2); i++)
        {
            var entry = 4 + (8 * i);
            var platform = FontTables.UInt16(table, entry);
            var encoding = FontTables.UInt16(table, entry + 2);
            var start = FontTables.UInt32(table, entry + 4);
            if (start >= table.Length || (platform, encoding) is not ((0, _) or (3, 1) or (3, 10)))
            {
                continue;
            }

            var subtable = table[(int)start..];
            switch (FontTables.UInt16(subtable, 0))
            {
                case 4:
                    ReadSegments(subtable, glyphs, map);
                    break;
                case 12:
                    ReadGroups(subtable, glyphs, map);
                    break;
                default:
                    break;
            }
        }

        return map.ToImmutable();
    }

    private static void ReadSegments(
        ReadOnlyMemory<byte> table,
        int glyphs,
        ImmutableSortedDictionary<int, int>.Builder map
    )
    {
        var twice = FontTables.UInt16(table, 6) & ~1;
        for (var segment = 0; segment < twice; segment += 2)
        {
            var last = FontTables.UInt16(table, 14 + segment);
            var first = FontTables.UInt16(table, 16 + twice + segment);
            var delta = FontTables.UInt16(table, 16 + (2 * twice) + segment);
            var place = 16 + (3 * twice) + segment;
            var range = FontTables.UInt16(table, place);
            for (var code = (int)first; code <= last && code < 0xFFFF; code++)
            {
                var raw =
                    range == 0
                        ? code
                        : FontTables.UInt16(table, place + range + (2 * (code - first)));
                var glyph = raw == 0 ? 0 : (raw + delta) & 0xFFFF;
                if (glyph > 0 && glyph < glyphs)
                {
                    map[code] = glyph;
                }
            }
        }
    }

    private static void ReadGroups(
        ReadOnlyMemory<byte> table,
        int glyphs,
        ImmutableSortedDictionary<int, int>.Builder map
    )
    {
        var count = Math.Min(FontTables.UInt32(table, 12), (uint)table.Length / 12);
        for (var group = 0; group < count; group++)
        {
            var entry = 16 + (12 * group);
            var first = FontTables.UInt32(table, entry);
            var last = Math.Min(FontTables.UInt32(table, entry + 4), HighestCodePoint);
            var glyph = FontTables.UInt32(table, entry + 8);
            for (var code = first; code <= last && glyph + (code - first) < glyphs; code++)
            {
                if (glyph + (code - first) > 0)
                {
                    map[(int)code] = (int)(glyph + (code - first));
                }
            }
        }
    }
}
