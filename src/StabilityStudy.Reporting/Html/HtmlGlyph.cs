using System.Xml.Linq;
using StabilityStudy.Reporting.Charts;

namespace StabilityStudy.Reporting.Html;

/// <summary>The shapes of the conclusions; the word beside says the same, so readers that cannot see them skip them.</summary>
internal static class HtmlGlyph
{
    private const string Ink = "#1a1c20";
    private const string Accent = "#1d4466";

    /// <summary>A shape as tall as the text.</summary>
    public static XElement Of(VerdictShape shape) =>
        new(
            SvgNames.Svg + "svg",
            new XAttribute("class", "glyph"),
            new XAttribute("viewBox", "0 0 100 100"),
            new XAttribute("aria-hidden", "true"),
            Marks(shape)
        );

    private static XElement[] Marks(VerdictShape shape) =>
        shape switch
        {
            VerdictShape.Supported =>
            [
                Filled("M50 2A48 48 0 1 0 50 98A48 48 0 1 0 50 2Z", Accent),
                Stroked("M26 53L44 71L75 33", "#ffffff", 12),
            ],
            VerdictShape.NotSupported =>
            [
                Filled("M6 6H94V94H6Z", Ink),
                Stroked("M30 30L70 70M70 30L30 70", "#ffffff", 12),
            ],
            VerdictShape.ShorterThanToday =>
            [
                Filled("M50 4L98 94H2Z", Ink),
                Stroked("M50 36V64M50 76V82", "#ffffff", 11),
            ],
            VerdictShape.NotReached => [Stroked("M50 10L95 90H5Z", Ink, 9)],
            VerdictShape.NotAssessed =>
            [
                Stroked("M50 7A43 43 0 1 0 50 93A43 43 0 1 0 50 7ZM30 50H70", Ink, 9),
            ],
            VerdictShape.Inconclusive =>
            [
                Filled("M50 2V98L2 50Z", Ink),
                Stroked("M50 4L96 50L50 96L4 50Z", Ink, 9),
            ],
        };

    private static XElement Filled(string path, string color) =>
        new(SvgNames.Svg + "path", new XAttribute("d", path), new XAttribute("fill", color));

    private static XElement Stroked(string path, string color, int width) =>
        new(
            SvgNames.Svg + "path",
            new XAttribute("d", path),
            new XAttribute("fill", "none"),
            new XAttribute("stroke", color),
            new XAttribute("stroke-width", width)
        );
}
