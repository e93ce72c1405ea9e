using System.Text;
using System.Xml.Linq;
using SkiaSharp;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Charts;

/// <summary>A chart as an SVG element, drawn by the same code as in the PDF.</summary>
internal static class ChartSvg
{
    /// <summary>Width of a figure alone, in points.</summary>
    public const int Width = 480;

    /// <summary>Width of a figure beside others, in points.</summary>
    public const int WidthInRow = 300;

    /// <summary>Begins an attribute that refers to an identifier, closed by a parenthesis.</summary>
    private const string Reference = "url(#";

    private static readonly XNamespace s_link = "http://www.w3.org/1999/xlink";

    /// <summary>Draws a chart.</summary>
    /// <param name="block">The chart with its words.</param>
    /// <param name="widthPoints">Width of the drawing in points.</param>
    /// <param name="prefix">Begins every identifier inside, so that several drawings can stand on one page.</param>
    /// <returns>An svg element that a reader who cannot see it hears as its alternative text.</returns>
    public static XElement Draw(ChartBlock block, int widthPoints, string prefix)
    {
        ReportFonts.Register();
        var asked = new SizedChart(
            block.Chart,
            widthPoints,
            (int)Math.Max(1, PageFrame.Millimeters(block.HeightMillimeters))
        );
        var sized = SizedChart.Level([asked])[0];
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, sized.Width, sized.Height), stream))
        {
            ChartDrawing.Draw(sized, canvas);
        }

        var drawn =
            XDocument.Parse(Encoding.UTF8.GetString(stream.ToArray())).Root
            ?? throw new InvalidOperationException("The plot library drew nothing.");
        MakeOwn(drawn, prefix);
        drawn.SetAttributeValue(
            "viewBox",
            string.Create(CultureInfo.InvariantCulture, $"0 0 {sized.Width} {sized.Height}")
        );
        drawn.SetAttributeValue("role", "img");
        var words = PrintableText.For(ReportFonts.Regular, block.AlternativeText);
        drawn.SetAttributeValue("aria-label", words);
        drawn.AddFirst(new XElement(SvgNames.Svg + "title", words));
        return drawn;
    }

    /// <summary>
    /// Numbers the identifiers by their order, since the plot library numbers them on through a process, and keeps of equal clippings the first only.
    /// </summary>
    private static void MakeOwn(XElement drawn, string prefix)
    {
        var renamed = new Dictionary<string, string>(StringComparer.Ordinal);
        var clippings = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var element in drawn.DescendantsAndSelf().ToList())
        {
            if (element.Attribute("id") is not { } id)
            {
                continue;
            }

            var content = element.Name.LocalName + string.Concat(element.Nodes());
            var own = string.Create(CultureInfo.InvariantCulture, $"{prefix}{renamed.Count + 1}");
            if (element.Name == SvgNames.Svg + "clipPath" && !clippings.TryAdd(content, own))
            {
                renamed[id.Value] = clippings[content];
                element.Remove();
                continue;
            }

            renamed[id.Value] = own;
            id.Value = own;
        }

        foreach (var attribute in drawn.DescendantsAndSelf().Attributes())
        {
            attribute.Value =
                attribute.Name == s_link + "href" && attribute.Value.StartsWith('#')
                    ? "#" + renamed[attribute.Value[1..]]
                : attribute.Value.StartsWith(Reference, StringComparison.Ordinal)
                    ? $"{Reference}{renamed[attribute.Value[Reference.Length..^1]]})"
                : attribute.Value;
        }
    }
}
