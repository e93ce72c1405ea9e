using System.Text;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>The objects of an embedded font: a composite font whose codes are glyph numbers (ISO 32000-1:2008, 9.7).</summary>
internal static class EmbeddedFont
{
    // Symbolic: the codes are glyph numbers and no character set.
    private const int Flags = 4;

    // The thickness of stems is not in the file; readers use it only for substitutes, of which there are none.
    private const int StemThickness = 80;
    private const int LargestBlock = 100;

    /// <summary>Adds the font, or finds the same one already in the document.</summary>
    public static PdfReference Add(NewObjects objects, StampFont font)
    {
        var program = objects.FindOrAdd(
            StreamRecompression.Compress(
                PdfDictionary.Of(new PdfEntry("Length1", new PdfInteger(font.Program.Length))),
                font.Program
            )
        );
        var descriptor = objects.FindOrAdd(Descriptor(font, program));
        var unicode = objects.FindOrAdd(
            StreamRecompression.Compress(
                PdfDictionary.Empty,
                Encoding.ASCII.GetBytes(UnicodeMap(font))
            )
        );
        var descendant = objects.FindOrAdd(
            PdfDictionary.Of(
                new("Type", new PdfName("Font")),
                new("Subtype", new PdfName("CIDFontType2")),
                new("BaseFont", new PdfName(font.Name)),
                new(
                    "CIDSystemInfo",
                    PdfDictionary.Of(
                        new("Registry", PdfString.OfText("Adobe")),
                        new("Ordering", PdfString.OfText("Identity")),
                        new("Supplement", new PdfInteger(0))
                    )
                ),
                new("CIDToGIDMap", new PdfName("Identity")),
                new("FontDescriptor", descriptor),
                new(
                    "W",
                    new PdfArray([
                        new PdfInteger(0),
                        new PdfArray([
                            .. font.Widths.Select(static width => new PdfInteger(width)),
                        ]),
                    ])
                )
            )
        );
        return objects.FindOrAdd(
            PdfDictionary.Of(
                new("Type", new PdfName("Font")),
                new("Subtype", new PdfName("Type0")),
                new("BaseFont", new PdfName(font.Name)),
                new("Encoding", new PdfName("Identity-H")),
                new("DescendantFonts", new PdfArray([descendant])),
                new("ToUnicode", unicode)
            )
        );
    }

    private static PdfDictionary Descriptor(StampFont font, PdfReference program) =>
        PdfDictionary.Of(
            new("Type", new PdfName("FontDescriptor")),
            new("FontName", new PdfName(font.Name)),
            new("Flags", new PdfInteger(Flags)),
            new(
                "FontBBox",
                new PdfArray([.. font.Measures.Box.Select(static side => new PdfInteger(side))])
            ),
            new("ItalicAngle", new PdfInteger(0)),
            new("Ascent", new PdfInteger(font.Measures.Ascent)),
            new("Descent", new PdfInteger(font.Measures.Descent)),
            new("CapHeight", new PdfInteger(font.Measures.CapitalHeight)),
            new("StemV", new PdfInteger(StemThickness)),
            new("FontFile2", program)
        );

    private static string UnicodeMap(StampFont font)
    {
        var text = new StringBuilder(
            "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                + "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n"
                + "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
                + "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n"
        );
        var first = font
            .Glyphs.GroupBy(static entry => entry.Value)
            .OrderBy(static group => group.Key)
            .Select(static group => (Glyph: group.Key, CodePoint: group.Min(static e => e.Key)));
        foreach (var block in first.Chunk(LargestBlock))
        {
            text.Append(CultureInfo.InvariantCulture, $"{block.Length} beginbfchar\n");
            foreach (var (glyph, codePoint) in block)
            {
                var unicode = Convert.ToHexString(
                    Encoding.BigEndianUnicode.GetBytes(new Rune(codePoint).ToString())
                );
                text.Append(CultureInfo.InvariantCulture, $"<{glyph:X4}> <{unicode}>\n");
            }

            text.Append("endbfchar\n");
        }

        return text.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
            .ToString();
    }
}
