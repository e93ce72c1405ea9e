using System.Text;

namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>A TrueType font for stamps. It is embedded whole, so that every stamp of a document can share it.</summary>
public sealed class StampFont
{
    private const uint HeadMagic = 0x5F0F3CF5;

    private StampFont(
        ReadOnlyMemory<byte> program,
        string name,
        FontMeasures measures,
        ImmutableArray<int> widths,
        ImmutableSortedDictionary<int, int> glyphs
    )
    {
        Program = program;
        Name = name;
        Measures = measures;
        Widths = widths;
        Glyphs = glyphs;
    }

    /// <summary>The PostScript name of the font.</summary>
    public string Name { get; }

    internal ReadOnlyMemory<byte> Program { get; }

    internal FontMeasures Measures { get; }

    /// <summary>Width of each glyph in thousandths of the font size.</summary>
    internal ImmutableArray<int> Widths { get; }

    /// <summary>Glyph by code point.</summary>
    internal ImmutableSortedDictionary<int, int> Glyphs { get; }

    /// <summary>Reads a font file with TrueType outlines; or why it cannot be used.</summary>
    /// <param name="file">The file; must not be changed afterwards.</param>
    public static PdfResult<StampFont> Read(ReadOnlyMemory<byte> file)
    {
        var tables = new FontTables(file);
        var head = tables.Table("head");
        var unitsPerEm = FontTables.UInt16(head, 18);
        var glyphCount = FontTables.UInt16(tables.Table("maxp"), 4);
        var horizontal = tables.Table("hhea");
        var metricCount = FontTables.UInt16(horizontal, 34);
        var metrics = tables.Table("hmtx");
        if (
            FontTables.UInt32(head, 12) != HeadMagic
            || unitsPerEm == 0
            || metricCount == 0
            || metricCount > glyphCount
            || metrics.Length < metricCount * 4
            || tables.Table("glyf").IsEmpty
        )
        {
            return new(new PdfFailure(null, "This is no font with TrueType outlines."));
        }

        var glyphs = CharacterMap.Read(tables.Table("cmap"), glyphCount);
        if (glyphs.IsEmpty)
        {
            return new(new PdfFailure(null, "The font does not say which glyph draws what."));
        }

        int Scaled(int units) => (int)Math.Round(units * 1000.0 / unitsPerEm);

        var widths = Enumerable
            .Range(0, glyphCount)
            .Select(glyph =>
                Scaled(FontTables.UInt16(metrics, 4 * Math.Min(glyph, metricCount - 1)))
            );
        var capitals = FontTables.Int16(tables.Table("OS/2"), 88);
        var ascent = Scaled(FontTables.Int16(horizontal, 4));
        var measures = new FontMeasures(
            ascent,
            Scaled(FontTables.Int16(horizontal, 6)),
            capitals > 0 ? Scaled(capitals) : ascent,
            [
                .. Enumerable
                    .Range(0, 4)
                    .Select(side => Scaled(FontTables.Int16(head, 36 + (2 * side)))),
            ]
        );
        return new(
            new StampFont(file, PostScriptName(tables.Table("name")), measures, [.. widths], glyphs)
        );
    }

    /// <summary>The first character (as text) that the font cannot draw; null when it can draw all.</summary>
    public string? FirstMissing(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var rune in text.EnumerateRunes())
        {
            if (!Glyphs.ContainsKey(rune.Value))
            {
                return rune.ToString();
            }
        }

        return null;
    }

    /// <summary>A text broken between words into lines; a word wider than a line stands alone.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">Font size, points.</param>
    /// <param name="width">Width of a line, points.</param>
    public ImmutableArray<string> Wrap(string text, double size, double width)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && WidthOf(longer) * size > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return lines.ToImmutable();
    }

    /// <summary>Width of a text at font size 1, in points.</summary>
    internal double WidthOf(string text) =>
        text.EnumerateRunes().Sum(rune => Widths[Glyphs.GetValueOrDefault(rune.Value)]) / 1000.0;

    private static string PostScriptName(ReadOnlyMemory<byte> table)
    {
        for (var i = 0; i < FontTables.UInt16(table, 2); i++)
        {
            var entry = 6 + (12 * i);
            var length = FontTables.UInt16(table, entry + 8);
            var start = FontTables.UInt16(table, 4) + FontTables.UInt16(table, entry + 10);
            if (
                FontTables.UInt16(table, entry) == 3
                && FontTables.UInt16(table, entry + 6) == 6
                && start + length <= table.Length
            )
            {
                var name = Encoding.BigEndianUnicode.GetString(table.Span.Slice(start, length));
                return string.Concat(
                    name.Where(static c => char.IsAsciiLetterOrDigit(c) || c == '-')
                );
            }
        }

        return "StampFont";
    }
}
