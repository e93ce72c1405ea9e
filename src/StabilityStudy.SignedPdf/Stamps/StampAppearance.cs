using System.Text;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>Draws a stamp as a form XObject (ISO 32000-1:2008, 8.10 and 12.5.5).</summary>
internal static class StampAppearance
{
    // Points between the frame and the text.
    private const double Margin = 3;
    private const double FrameWidth = 0.5;

    // Distance of base lines in font sizes: room for accents above and descenders below.
    private const double LineHeight = 1.25;

    private const double BarWidth = 1.7;

    /// <summary>Adds the stamp, each part of it made smaller where its lines would not fit.</summary>
    public static PdfReference Add(NewObjects objects, SignatureStamp stamp, PageRectangle field)
    {
        var font = EmbeddedFont.Add(objects, stamp.Font);
        var dictionary = PdfDictionary.Of(
            new("Type", new PdfName("XObject")),
            new("Subtype", new PdfName("Form")),
            new("BBox", PdfNumbers.Rectangle(new PageRectangle(0, 0, field.Width, field.Height))),
            new(
                "Resources",
                PdfDictionary.Of(new PdfEntry("Font", PdfDictionary.Of(new PdfEntry("F0", font))))
            )
        );
        return objects.Add(
            StreamRecompression.Compress(
                dictionary,
                Encoding.ASCII.GetBytes(
                    string.Concat(
                        stamp
                            .Parts.Select(part => Part(stamp.Font, part, field))
                            .Append(Box(stamp, field))
                    )
                )
            )
        );
    }

    private static string Box(SignatureStamp stamp, PageRectangle field)
    {
        var (box, half) = (Inside(stamp.Box ?? field, field), FrameWidth / 2);
        return string.Create(
                CultureInfo.InvariantCulture,
                $"1 g {Number(box.Left)} {Number(box.Bottom)} {Number(box.Width)} {Number(box.Height)} re f\n0 G {Number(FrameWidth)} w {Number(box.Left + half)} {Number(box.Bottom + half)} {Number(box.Width - FrameWidth)} {Number(box.Height - FrameWidth)} re S\n"
            ) + Text(stamp.Font, stamp.Lines, box);
    }

    private static string Part(StampFont font, StampPart part, PageRectangle field)
    {
        var area = Inside(part.Area, field);
        return string.Create(
                CultureInfo.InvariantCulture,
                $"1 g {Number(area.Left)} {Number(area.Bottom)} {Number(area.Width)} {Number(area.Height)} re f\n0 g {Number(area.Left)} {Number(area.Bottom)} {Number(BarWidth)} {Number(area.Height)} re f\n"
            ) + Text(font, part.Lines, area);
    }

    /// <summary>A rectangle of the page in the coordinates of the field.</summary>
    private static PageRectangle Inside(PageRectangle area, PageRectangle field) =>
        new(
            area.Left - field.Left,
            area.Bottom - field.Bottom,
            area.Right - field.Left,
            area.Top - field.Bottom
        );

    private static string Text(StampFont font, ImmutableArray<StampLine> lines, PageRectangle area)
    {
        var text = new StringBuilder("0 g BT\n");
        var scale = ScaleIn(font, lines, area);
        var top = area.Top - Margin;
        foreach (var line in lines)
        {
            var size = line.Size * scale;
            var baseline = top - (size * font.Measures.Ascent / 1000.0);
            text.Append(
                CultureInfo.InvariantCulture,
                $"/F0 {Number(size)} Tf 1 0 0 1 {Number(area.Left + Margin)} {Number(baseline)} Tm <{Codes(font, line.Text)}> Tj\n"
            );
            top -= size * LineHeight;
        }

        return text.Append("ET\n").ToString();
    }

    /// <summary>Width of a line of text in a field of a width, points.</summary>
    public static double LineWidth(double width) => width - (2 * Margin);

    /// <summary>By how much lines are made smaller in an area; 1 when they fit.</summary>
    public static double ScaleIn(
        StampFont font,
        ImmutableArray<StampLine> lines,
        PageRectangle area
    )
    {
        var room = (Width: LineWidth(area.Width), Height: area.Height - (2 * Margin));
        var widest = lines.Select(line => font.WidthOf(line.Text) * line.Size).Max();
        var tall = lines.Sum(static line => line.Size) * LineHeight;
        var fit = Math.Min(
            widest > room.Width ? room.Width / widest : 1,
            tall > room.Height ? room.Height / tall : 1
        );
        return Math.Max(fit, 0);
    }

    private static string Codes(StampFont font, string text) =>
        string.Concat(
            text.EnumerateRunes()
                .Select(rune =>
                    font.Glyphs.GetValueOrDefault(rune.Value)
                        .ToString("X4", CultureInfo.InvariantCulture)
                )
        );

    private static string Number(double value) => PdfNumbers.Text(value);
}
