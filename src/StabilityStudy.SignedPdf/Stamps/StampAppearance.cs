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

    /// <summary>Adds the stamp, made smaller where its lines would not fit into the field.</summary>
    public static PdfReference Add(
        NewObjects objects,
        SignatureStamp stamp,
        double width,
        double height
    )
    {
        var font = EmbeddedFont.Add(objects, stamp.Font);
        var dictionary = PdfDictionary.Of(
            new("Type", new PdfName("XObject")),
            new("Subtype", new PdfName("Form")),
            new("BBox", PdfNumbers.Rectangle(new PageRectangle(0, 0, width, height))),
            new(
                "Resources",
                PdfDictionary.Of(new PdfEntry("Font", PdfDictionary.Of(new PdfEntry("F0", font))))
            )
        );
        return objects.Add(
            StreamRecompression.Compress(
                dictionary,
                Encoding.ASCII.GetBytes(Content(stamp, width, height))
            )
        );
    }

    private static string Content(SignatureStamp stamp, double width, double height)
    {
        var half = FrameWidth / 2;
        var text = new StringBuilder(
            string.Create(
                CultureInfo.InvariantCulture,
                $"1 g 0 0 {Number(width)} {Number(height)} re f\n0 G {Number(FrameWidth)} w {Number(half)} {Number(half)} {Number(width - FrameWidth)} {Number(height - FrameWidth)} re S\n0 g BT\n"
            )
        );
        var scale = ScaleIn(stamp, width, height);
        var top = height - Margin;
        foreach (var line in stamp.Lines)
        {
            var size = line.Size * scale;
            var baseline = top - (size * stamp.Font.Measures.Ascent / 1000.0);
            text.Append(
                CultureInfo.InvariantCulture,
                $"/F0 {Number(size)} Tf 1 0 0 1 {Number(Margin)} {Number(baseline)} Tm <{Codes(stamp.Font, line.Text)}> Tj\n"
            );
            top -= size * LineHeight;
        }

        return text.Append("ET\n").ToString();
    }

    /// <summary>Width of a line of text in a field of a width, points.</summary>
    public static double LineWidth(double width) => width - (2 * Margin);

    /// <summary>By how much the stamp is made smaller in a field of a size; 1 when it fits.</summary>
    public static double ScaleIn(SignatureStamp stamp, double width, double height)
    {
        var room = (Width: LineWidth(width), Height: height - (2 * Margin));
        var widest = stamp.Lines.Select(line => stamp.Font.WidthOf(line.Text) * line.Size).Max();
        var tall = stamp.Lines.Sum(static line => line.Size) * LineHeight;
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
